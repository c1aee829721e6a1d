import { describe, expect, test } from 'vitest';
import type { CheckedAnalogy } from '../../src/answer/analogies/model.ts';
import { analogiesHtml } from '../../src/telling/page/analogiesHtml.ts';
import { factsHtml } from '../../src/telling/page/factsHtml.ts';

const leg = {
  say: 'A <leg>.',
  main: true,
  verdict: 'wrong',
  claim: null,
  found: 'It goes down.',
  share: null,
  steepness: null,
  conditions: ['From 1 to 2.'],
  relations: [],
  problem: null,
} as const;

const analogy: CheckedAnalogy = {
  id: 'hose',
  say: 'A <hose>.',
  said: false,
  verdict: 'don’t say',
  stands: [{ this: 'water', for: 'gas', relation: null }],
  legs: [leg],
  holdsFor: 'slow flow',
  breaksWhere: [{ say: 'in fast flow', when: 'x', here: true, problem: null }],
  wording: null,
  why: 'Its point is wrong.',
  problem: null,
  sources: ['[a] B & C'],
};

describe('the page of a package', () => {
  test('tells verdict, legs, bounds and sources of an analogy, hostile words as words', () => {
    const html = analogiesHtml([analogy]);
    for (const part of [
      'don’t say',
      'wrong',
      '(its point)',
      'It holds for slow flow',
      'in fast flow, as in this study',
      'B &amp; C',
    ]) {
      expect(html).toContain(part);
    }
    expect(html).not.toMatch(/<hose>|<leg>/);
    expect(analogiesHtml([])).toBe('');
  });

  test('tells reported facts with their source, and nothing where there are none', () => {
    const fact = {
      id: 'ran',
      say: 'It <ran>.',
      value: null,
      at: 'on the bench',
      sources: ['log'],
      disagree: null,
      path: '',
    };
    const sources = [{ id: 'log', title: 'The log', author: null, year: null, where: null }];
    const html = factsHtml({ facts: [fact], sources });
    expect(html).toContain('It &lt;ran&gt;.');
    expect(html).toContain('Reported, not computed.');
    expect(html).toContain('[log] The log');
    expect(factsHtml({ facts: [], sources })).toBe('');
  });
});

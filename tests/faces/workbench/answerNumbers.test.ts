/** Each number of the short answer leads to what it is worked out from. */

import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { solveStudy } from '../../../src/answer/solve.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { answerParts } from '../../../src/faces/workbench/state/answerNumbers.ts';
import { knownNames } from '../../../src/study/names.ts';
import { readStudy } from '../../../src/study/read.ts';

const shelf = openDataShelf();
const example = new URL('../../../examples/alder-booster/study.yaml', import.meta.url);

async function answerTo(change: (text: string) => string) {
  const text = change(await readFile(example, 'utf8')).replace(/^vehicles:$[\s\S]*?(?=^compare:)/m, '');
  const outcome = readStudy(text.replace(/^(sentences|needs):$[\s\S]*?(?=^sources:)/m, ''), {
    file: 'study.yaml',
    ...knownNames(await shelf.propellants()),
  });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return solveStudy(outcome.study, shelf);
}

describe('the numbers of the short answer', () => {
  it('are those of a pair whose lead changes: differences at both ends, and the ties', async () => {
    const answer = await answerTo((text) => text);
    const parts = answerParts(answer.shortAnswer.text, answer);
    expect(parts.map(({ text, mark }) => text + mark).join('')).toBe(answer.shortAnswer.text);
    const cards = parts.flatMap(({ card }) => card ?? []);
    expect(cards.map(({ expression }) => expression)).toEqual([
      'plug.specificImpulse(pad) - bell.specificImpulse(pad)',
      'plug.specificImpulse(vacuum) - bell.specificImpulse(vacuum)',
      null,
      null,
    ]);
    expect(cards.slice(2).map(({ quantity }) => quantity)).toEqual([
      'comparison.crossing',
      'comparison.crossing',
    ]);
    for (const { text, card } of parts) if (card === null) expect(text).not.toMatch(/\d/);
    for (const { text, card } of answerParts(answer.shortAnswer.verdict, answer))
      if (card === null) expect(text).not.toMatch(/\d/);
  });

  it('are those against a bound, which leads the real engine', async () => {
    const answer = await answerTo((text) => text.replace('other: plug', 'other: adapting'));
    for (const words of [answer.shortAnswer.verdict, answer.shortAnswer.text]) {
      const parts = answerParts(words, answer);
      for (const { text, card } of parts) if (card === null) expect(text).not.toMatch(/\d/);
      expect(parts.flatMap(({ card }) => card?.expression ?? [])[0]).toMatch(
        /^adapting\.specificImpulse\(pad\)/,
      );
    }
  });
});

import { describe, expect, it } from 'vitest';
import type { Study } from '../../../src/study/index.ts';
import type { StarterName } from './holdVerdicts.ts';
import { moves } from './moves.ts';
import { checkedStarter, starterText, studyFrom, textWith } from './openStarter.ts';

const alone = (study: Study, id: string): Study => ({
  ...study,
  sentences: study.sentences.filter((sentence) => sentence.id === id),
});

describe.each(Object.keys(moves) as StarterName[])('in %s', (name) => {
  const { input, from, to, sentence, before, after, why } = moves[name];
  const verdictOf = async (text: string): Promise<string | undefined> =>
    (await checkedStarter(name, alone(studyFrom(text), sentence)))[0]?.verdict;

  it(`${input} from ${from} to ${to} turns “${sentence}”: ${why}`, async () => {
    const text = starterText(name);
    const path = input.startsWith('vehicles.') ? input.split('.') : ['engines', ...input.split('.')];
    const set = (value: string): string => textWith(text, { path, value });
    // What the move starts from is what the study states.
    expect(set(from)).toBe(text);
    expect([await verdictOf(text), await verdictOf(set(to))]).toEqual([before, after]);
  });
});

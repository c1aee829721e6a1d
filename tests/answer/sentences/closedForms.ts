import type { Ask, Told } from '../../../src/answer/asked/model.ts';
import {
  type CheckedSentence,
  type CheckOptions,
  checkSentences,
} from '../../../src/answer/sentences/index.ts';
import { studyOf } from '../solveText.ts';
import { enginesWith, type Fake, fakeCrew, RATIO } from '../spread/fakeCrew.ts';

export interface Sentence {
  readonly say?: string;
  readonly holds?: string;
  readonly said?: boolean;
}

/** Two engines whose mixture ratio is 3.5 ± 0.1, so that {@link z} is standard normal. */
export async function check(
  sentences: readonly Sentence[],
  fake: Fake,
  options: CheckOptions = { flips: false },
  ratio = '3.5 ± 0.1',
): Promise<readonly CheckedSentence[]> {
  const items = sentences.map(({ say = 'So it is.', holds, said }, i) =>
    JSON.stringify({
      id: `s${i}`,
      say,
      ...(holds !== undefined && { holds }),
      ...(said !== undefined && { said }),
    }),
  );
  const study = await studyOf(
    enginesWith(ratio, '100 bar', '100 bar'),
    `sentences:\n${items.map((item) => `  - ${item}`).join('\n')}`,
  );
  return checkSentences(study, fakeCrew(fake), options);
}

export async function checkOne(
  sentence: Sentence,
  fake: Fake,
  options?: CheckOptions,
  ratio?: string,
): Promise<CheckedSentence> {
  const [found] = await check([sentence], fake, options, ratio);
  if (found === undefined) throw new Error('no sentence');
  return found;
}

/** The mixture ratio's distance from its middle value in standard deviations. */
export const z = (point: Readonly<Record<string, number>>): number => ((point[RATIO] ?? 3.5) - 3.5) / 0.05;

export const plain = (value: number): Told => ({ ok: true, value, scatter: [], alternatives: [] });

export const withAlternatives = (value: number, by: Readonly<Record<string, number | null>>): Told => ({
  ok: true,
  value,
  scatter: [],
  alternatives: Object.entries(by).map(([name, other]) => ({
    of: 'separation criterion',
    by: name,
    value: other,
  })),
});

export const isOf = ({ engine, quantity }: Ask, id: string, name = 'massFlow'): boolean =>
  engine === id && quantity === name;

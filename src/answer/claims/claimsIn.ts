/** Claims in a text of somebody else's: found, given a probable meaning, and never counted by themselves. English. */

import type { Study } from '../../study/model.ts';
import { absoluteWordsIn } from '../sentences/absolutes.ts';
import type { NumberInProse } from '../sentences/numbersInWords.ts';
import { passagesIn } from './captions.ts';
import type { Claim, ClaimKind, ClaimsFormat } from './model.ts';
import { NOTHING_BEFORE, namedAfter, pronounsResolved } from './pronouns.ts';
import { proposeTest } from './proposeTest.ts';
import { quantitiesMeant } from './quantitiesMeant.ts';
import { sentencesIn } from './sentencesIn.ts';
import { enginesSaid, type Signs, signsOf, valuesSaid } from './signs.ts';

/** @throws ProblemError where the text is not of that form */
export function claimsIn(
  text: string,
  format: ClaimsFormat,
  study: Pick<Study, 'engines' | 'vehicles'> | null = null,
): readonly Claim[] {
  const found: Claim[] = [];
  let before = NOTHING_BEFORE;
  for (const { text: say, line, time } of sentencesIn(passagesIn(text, format))) {
    const signs = signsOf(say);
    const numbers = valuesSaid(say);
    // “Every second” is a rate.
    const absolutes = absoluteWordsIn(say.replace(/\b(?:every|each) second\b/gi, 'a second'));
    const kind = kindOf(
      say,
      signs,
      numbers,
      absolutes.some(({ claim }) => claim === 'range'),
    );
    const named = quantitiesMeant(say, unitsThatCount(signs, numbers));
    const own = study === null ? [] : enginesSaid(say, study.engines);
    const { engines, quantities, assumed } = pronounsResolved(say, own, named, before);
    before = namedAfter(own, quantities[0] ?? null, before);
    if (kind === null) continue;
    const head = { say, kind, quantities, engines };
    const proposal = proposeTest(head, signs, study);
    found.push({
      ...head,
      number: found.length + 1,
      line,
      time,
      numbers: numbers.map((one) => one.text),
      absolutes: absolutes.map(({ word }) => word),
      ...proposal,
      assumed: proposal.test === null ? [] : [...assumed, ...proposal.assumed],
    });
  }
  return found;
}

/** A value has the dimension of its quantity; a share or a bare number beside a comparison has not. */
function unitsThatCount({ direction, superlative }: Signs, numbers: readonly NumberInProse[]) {
  const withUnit = numbers.filter(({ share, dimension }) => !share && dimension.some((e) => e !== 0));
  return direction !== null || superlative !== null ? [] : withUnit.map(({ dimension }) => dimension);
}

function kindOf(
  say: string,
  { direction, superlative }: Signs,
  numbers: readonly NumberInProse[],
  everywhere: boolean,
): ClaimKind | null {
  if (/\?["”’')\]]*$/.test(say)) return null;
  if (everywhere) return 'absolute';
  if (superlative !== null) return 'superlative';
  if (direction !== null) return 'comparison';
  return numbers.some(({ share, dimension }) => share || dimension.some((e) => e !== 0)) ||
    /\bmach\s+\d/i.test(say)
    ? 'number'
    : null;
}

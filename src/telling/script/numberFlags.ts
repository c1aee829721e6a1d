/** What is to be looked at in the live numbers of a line. */

import type { ToldNumbers } from '../../answer/numbers/index.ts';
import { unitOfNumber } from '../../answer/sentences/sideUnit.ts';
import { spanWords } from '../../answer/sentences/spanWords.ts';
import type { ScriptUnits } from '../../study/script/model.ts';
import { isConverted, isCustomary } from './audienceUnits.ts';
import type { ResolvedLine, ResolvedNumber, ScriptFlag } from './model.ts';
import { resolvedNumbersIn } from './resolveScript.ts';
import { claimsMore } from './rounding.ts';

export function numberFlags(
  line: ResolvedLine,
  told: ToldNumbers,
  audience: ScriptUnits,
): readonly ScriptFlag[] {
  return resolvedNumbersIn(line).flatMap((number) => {
    const { from, to } = number.piece;
    const flag = (kind: ScriptFlag['kind'], fails: boolean, words: string): ScriptFlag => ({
      kind,
      fails,
      line: line.line.id,
      words,
      from,
      to,
    });
    const { problem } = number;
    if (problem !== null)
      return [flag('no value', true, `${number.piece.expression}: ${problem.what} ${problem.mend}`)];
    return [
      ...openSign(number, told).map((words) => flag('sign open', false, words)),
      ...tooExact(number, told).map((words) => flag('too exact', false, words)),
      ...leftAsIs(number, told, audience).map((words) => flag('not converted', false, words)),
    ];
  });
}

function spanOf({ piece, low, high }: ResolvedNumber, told: ToldNumbers): string {
  const {
    quantity = null,
    dimension = [0, 0, 0, 0, 0, 0] as const,
    madeOf = [],
  } = told.get(piece.expression) ?? {};
  return spanWords(low!, high!, unitOfNumber(quantity, dimension, madeOf, [low!, high!])).words;
}

function openSign(number: ResolvedNumber, told: ToldNumbers): readonly string[] {
  const { piece, low, high } = number;
  if (piece.span || low === null || high === null || !(low < 0 && high > 0)) return [];
  return [
    `${piece.expression} is told as ${number.text}, but with what is not known it is ${spanOf(number, told)}: it may be nothing. Say it as a span, or leave it.`,
  ];
}

/** Only where digits are asked for: else they are what the span allows. */
function tooExact(number: ResolvedNumber, told: ToldNumbers): readonly string[] {
  const { piece, value, low, high } = number;
  if (piece.digits === undefined || piece.span || value === null || low === null || high === null) return [];
  if (!claimsMore(value, low, high, piece.digits)) return [];
  return [
    `${number.text} is more exact than what is known of it: ${spanOf(number, told)}. Ask for fewer digits, or for none.`,
  ];
}

function leftAsIs({ piece }: ResolvedNumber, told: ToldNumbers, audience: ScriptUnits): readonly string[] {
  const dimension = told.get(piece.expression)?.dimension;
  if (!piece.bare || dimension === undefined || !isConverted(dimension)) return [];
  const isOwn = isCustomary(piece.unit ?? '') ? audience === 'customary' : audience === 'metric';
  if (isOwn) return [];
  return [
    `${piece.expression} is told bare, with its unit in the words, so it is not told in the units of the audience.`,
  ];
}

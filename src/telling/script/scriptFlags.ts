/** All that is to be looked at in a script, line by line. */

import { quantity } from '../../answer/catalogue.ts';
import { exponentsOf, sameDimension } from '../../answer/expression/dimensions.ts';
import type { ToldNumber, ToldNumbers } from '../../answer/numbers/index.ts';
import type { CheckedSentence, SaidNumber } from '../../answer/sentences/model.ts';
import { type Computed, saidNumbersOf } from '../../answer/sentences/saidNumbers.ts';
import type { Study } from '../../study/model.ts';
import { type HandNumber, wordsAlone } from './handNumbers.ts';
import type { ResolvedLine, ResolvedScript, ScriptFlag } from './model.ts';
import { numberFlags } from './numberFlags.ts';
import { movedSince, type NumbersRecord } from './record.ts';
import { linesOf } from './resolveScript.ts';
import { type Judged, saidFlags } from './saidFlags.ts';

export interface FlagParts {
  readonly told: ToldNumbers;
  readonly study: Study;
  /** Sentences, facts and analogies with their verdicts; empty: not checked yet. */ readonly judged: readonly Judged[];
  /** Hangs on the text alone, so it is found once. */ readonly byHand: readonly HandNumber[];
  /** Null: nothing was recorded. */ readonly record: NumbersRecord | null;
}

/** In the order of the script. */
export function scriptFlags(
  script: ResolvedScript,
  { told, study, judged, byHand, record }: FlagParts,
): readonly ScriptFlag[] {
  const verdicts = new Map(judged.map((one) => [one.id, one]));
  const handOf = byLine(byHand);
  const moved = byLine(record === null ? [] : movedSince(record, script));
  return linesOf(script).flatMap((line) => {
    const { id } = line.line;
    const found = verdicts.get(line.line.says ?? '');
    return [
      ...saidFlags(line.line, verdicts, study),
      ...(moved.get(id) ?? []).map(
        ({ before, after, expression, from, to }): ScriptFlag => ({
          kind: 'moved',
          fails: true,
          line: id,
          words: `${expression} has moved since it was recorded: ${before} → ${after}.`,
          from,
          to,
        }),
      ),
      ...numberFlags(line, told, script.script.units),
      ...handFlags(line, handOf.get(id) ?? [], found, told),
    ];
  });
}

function byLine<T extends { readonly line: string }>(all: readonly T[]): ReadonlyMap<string, readonly T[]> {
  const found = new Map<string, T[]>();
  for (const one of all) found.set(one.line, [...(found.get(one.line) ?? []), one]);
  return found;
}

function handFlags(
  line: ResolvedLine,
  byHand: readonly HandNumber[],
  found: Judged | undefined,
  told: ToldNumbers,
): readonly ScriptFlag[] {
  if (byHand.length === 0) return [];
  const checked =
    found !== undefined && 'numbers' in found ? heldBy(line, byHand, found) : new Map<string, SaidNumber>();
  return byHand.flatMap((hand): readonly ScriptFlag[] => {
    const said = checked.get(hand.text);
    if (said?.agrees === true) return [];
    const against = said?.agrees === false ? ` ${said.words}` : '';
    const { from, to } = hand;
    return [
      {
        kind: 'by hand',
        fails: false,
        line: hand.line,
        words: `${handWords(hand, told)}${against}`,
        from,
        to,
      },
    ];
  });
}

/** The numbers of the line's words by its sentence: one that agrees with what is checked is no stranger. */
function heldBy(
  line: ResolvedLine,
  byHand: readonly HandNumber[],
  sentence: CheckedSentence,
): ReadonlyMap<string, SaidNumber> {
  const own = new Map(sentence.saidNumbers.map((one) => [one.text, one]));
  const here = saidNumbersOf(
    wordsAlone(line.line),
    sentence.holds ?? '',
    sentence.numbers.flatMap(computedOf),
  );
  const held = new Map(here.map((one) => [one.text, one]));
  return new Map(
    byHand.flatMap(({ text }) => {
      const said = own.get(text) ?? held.get(text);
      return said === undefined ? [] : [[text, said] as const];
    }),
  );
}

function computedOf({
  quantity: name,
  low,
  high,
  words,
  expression,
}: CheckedSentence['numbers'][number]): readonly Computed[] {
  const dimension = name === null ? null : exponentsOf(quantity(name).dimension);
  return dimension === null
    ? []
    : [{ words: `${expression} is ${words}.`, band: { low, high }, dimension, isShareMore: false }];
}

function handWords({ text, means, instead, said }: HandNumber, told: ToldNumbers): string {
  const alike = [...told.values()].find((one) => isAlike(one, said));
  const written = alike === undefined ? instead : `{{${alike.expression}}}`;
  const meant = means === null ? '' : ` It probably means ${means}.`;
  const mend = written === null ? '' : ` Write ${written} and it moves with the study.`;
  const stranger = meant === '' && mend === '' ? ' Nothing in the words says which quantity it is.' : '';
  return `“${text}” is typed by hand.${meant}${mend}${stranger}`;
}

/** A live number of the script that it may be: of its kind, and within its span. */
function isAlike({ value, low, high, dimension }: ToldNumber, said: HandNumber['said']): boolean {
  if (said.share || value === null || low === null || high === null) return false;
  const { rounding } = said;
  return (
    sameDimension(dimension, said.dimension) && said.value >= low - rounding && said.value <= high + rounding
  );
}

/** A stated quantity moved to another value, in the words it is written in: `97.5 ± 1 %` to `96 ± 1 %`. */

import type { ParsedQuantity } from './units.ts';
import { findUnit, fromSI } from './units.ts';

/** Not the power in a unit, `kg/m3`. */
const NUMBER = /(?<![A-Za-z^\d.])[-−+]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g;
/** Units of more than one kind in one range. */
const WORDS = /[^\s\d.,±…–+−-]+/g;

/** What the quantity reads in its own unit. */
export function numberInUnit({ unit }: ParsedQuantity, si: number): number {
  const known = unit === '' ? null : findUnit(unit);
  return known === null ? si : Number(fromSI(si, known).toPrecision(12));
}

/**
 * The text with `number` [its unit] in place of its value. A ± stays as it is; the ends of a range move along.
 * Null where a range has several units.
 */
export function movedText(text: string, stated: ParsedQuantity, number: number): string | null {
  if (stated.spread === null)
    return text.replace(/^\s*[-−+]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/, shown(number));
  const units = new Set((text.match(WORDS) ?? []).filter((word) => !/^(to|most|likely)$/.test(word)));
  if (units.size > 1) return null;
  const by = number - numberInUnit(stated, stated.value);
  return text.replace(NUMBER, (one) => shown(Number(one.replace('−', '-')) + by));
}

const shown = (number: number): string => String(Number(number.toPrecision(12)));

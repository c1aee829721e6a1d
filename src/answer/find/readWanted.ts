/** What was typed into the find box, taken apart: where, of which engine, and the words that are left. */

import { HIGHEST_ALTITUDE } from '../../physics/air/index.ts';
import { parseQuantity } from '../../study/units.ts';
import type { AskedAmbient } from '../asked/model.ts';
import { wordsOf } from './words.ts';

export interface Wanted {
  /** Null: nothing is said of where. */ readonly at: AskedAmbient | null;
  /** Ids of the engines named; empty: of all. */ readonly owners: readonly string[];
  /** The rest of the words. */ readonly words: string;
}

export interface Named {
  readonly id: string;
  readonly name: string;
}

const NUMBER_WITH_UNIT =
  /(?:\b(?:at|in|on|from)\s+)?(\d[\d.,]*)\s*(km|m|ft|mi|kft|bar|mbar|kPa|MPa|hPa|Pa|psi|atm)\b/i;
const PLACES: readonly { readonly said: RegExp; readonly at: AskedAmbient }[] = [
  { said: /\b(?:in |at )?(?:the )?(?:vacuum|space)\b/i, at: { kind: 'vacuum' } },
  {
    said: /\b(?:at |on )?(?:the )?(?:sea level|launch pad|pad|ground)\b/i,
    at: { kind: 'altitude', altitude: 0 },
  },
];

export function readWanted(typed: string, owners: readonly Named[]): Wanted {
  const { at, rest } = placeIn(typed);
  const named = owners.filter(({ id, name }) => saysName(rest, id) || saysName(rest, name));
  const words = named.reduce((left, { id, name }) => without(without(left, name), id), rest);
  return { at, owners: named.map(({ id }) => id), words: words.trim() };
}

function placeIn(typed: string): { readonly at: AskedAmbient | null; readonly rest: string } {
  const [written, number = '', unit = ''] = NUMBER_WITH_UNIT.exec(typed) ?? [];
  const at = written === undefined ? null : ambientOf(`${pointed(number, unit)} ${unit}`);
  if (written !== undefined && at !== null) return { at, rest: typed.replace(written, ' ') };
  for (const place of PLACES) {
    if (place.said.test(typed)) return { at: place.at, rest: typed.replace(place.said, ' ') };
  }
  return { at: null, rest: typed };
}

/** A comma between groups of three digits parts thousands where nobody types thousandths of the unit: `35,000 ft`. */
const pointed = (number: string, unit: string): string =>
  /^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d*)?$/.test(number) && /^(?:m|ft|Pa)$/i.test(unit)
    ? number.replaceAll(',', '')
    : number.replace(',', '.');

/** Letters of a unit are often typed small: `10 KM`, `50 kpa`. */
const UNITS_AS_WRITTEN: Readonly<Record<string, string>> = { kpa: 'kPa', mpa: 'MPa', hpa: 'hPa', pa: 'Pa' };

function ambientOf(text: string): AskedAmbient | null {
  const plain = text.toLowerCase().replace(/[a-z]+$/, (unit) => UNITS_AS_WRITTEN[unit] ?? unit);
  const altitude = parseQuantity(plain, 'length');
  if (altitude.ok) {
    return altitude.value.value > HIGHEST_ALTITUDE
      ? null
      : { kind: 'altitude', altitude: altitude.value.value };
  }
  const pressure = parseQuantity(plain, 'pressure');
  return pressure.ok ? { kind: 'pressure', pressure: pressure.value.value } : null;
}

/** Whether what is typed has all words of the name, one after the other. */
export function saysName(typed: string, name: string): boolean {
  const words = wordsOf(name);
  const there = wordsOf(typed);
  return words.length > 0 && there.some((_, i) => words.every((word, k) => there[i + k] === word));
}

function without(typed: string, name: string): string {
  const pattern = name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/\s+/g, '\\s+');
  return typed.replace(
    new RegExp(`(^|[^\\p{L}\\p{N}])${pattern}(?:'?s)?(?=$|[^\\p{L}\\p{N}])`, 'giu'),
    '$1 ',
  );
}

/** Quantities in words: `97.5 ± 1 %` to SI and back. */
import type { Outcome, Problem } from '../numerics/problem.ts';
import type { RangeSpread } from './model.ts';
import { nearestName } from './nearest.ts';
import {
  type Dimension,
  type QuantityKind,
  quantityKinds,
  type Unit,
  unitSpellings,
  unitTable,
} from './unitTable.ts';

export interface ParsedQuantity {
  /** SI */ readonly value: number;
  /** SI, a difference; null where none is stated */ readonly plusMinus: number | null;
  /** SI; null where it is no range */ readonly spread: RangeSpread | null;
  /** Which of the kinds asked for it is. */ readonly kind: QuantityKind;
  /** Unit of the value as understood; empty for a bare number. */ readonly unit: string;
}

const NO_BREAK_SPACE = '\u00a0';
const MINUS = '\u2212';

/** Every kind of space becomes one plain space, every minus sign a plain one, `º` a degree sign. */
function plain(text: string): string {
  return text
    .replace(/[\u2212\ufe63\uff0d]/g, '-')
    .replace(/[\s\u00a0\u2007\u2009\u200a\u202f]+/g, ' ')
    .replace(/\u00ba/g, '°')
    .trim();
}

const quoted = (text: string): string => `“${text.length > 60 ? `${text.slice(0, 57)}…` : text}”`;
const refuse = (code: string, what: string, mend: string): { ok: false; problem: Problem } => ({
  ok: false,
  problem: { code, what, mend },
});

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} or ${names.at(-1)!}`;

const kindsInWords = (kinds: readonly QuantityKind[]): string =>
  listed(kinds.map((k) => quantityKinds[k].name));

const unitsInWords = (kinds: readonly QuantityKind[]): string => {
  const units = kinds.flatMap((k) => quantityKinds[k].usual);
  const bare = kinds.some((k) => quantityKinds[k].bare);
  if (units.length === 0) return 'Write a bare number, without a unit.';
  return `Write it in ${listed(units)}${bare ? ', or as a bare number' : ''}.`;
};

const SUPERSCRIPTS: Readonly<Record<string, string>> = { '⁻': '-', '¹': '1', '²': '2', '³': '3', '⁴': '4' };

/** One factor such as `m`, `cm^3`, `s-1`, `m³`. */
function unitFactor(text: string): Unit | null {
  const ascii = text.replace(/[⁻¹²³⁴]/g, (c) => SUPERSCRIPTS[c]!);
  const match = /^(.*?[^\d^-])\^?(-?[1-4])?$/u.exec(ascii);
  if (match === null) return null;
  const symbol = unitSpellings.get(match[1]!) ?? match[1]!;
  const base = unitTable.get(symbol);
  if (base === undefined) return null;
  if (match[2] === undefined) return base;
  const power = Number(match[2]);
  const [times, over] = power > 0 ? [base.times, base.over] : [base.over, base.times];
  return {
    dimension: base.dimension.map((e) => e * power) as unknown as Dimension,
    times: times ** Math.abs(power),
    over: over ** Math.abs(power),
    ...(base.zero === undefined || power === 1 ? {} : { zero: Number.NaN }),
  };
}

/** A unit as written, simple or compound (`kJ/kg`, `kg/m³`, `N·s`); null where a part is not known. */
export function findUnit(text: string): Unit | null {
  const whole = unitFactor(plain(text));
  if (whole !== null) return whole.zero !== undefined && Number.isNaN(whole.zero) ? null : whole;
  const parts = plain(text).split(/\s*([/·*]|\s)\s*/);
  let product: Unit = { dimension: [0, 0, 0, 0, 0, 0], times: 1, over: 1 };
  for (let i = 0; i < parts.length; i += 2) {
    const factor = unitFactor(parts[i]!);
    if (factor === null || factor.zero !== undefined) return null;
    const inverse = i > 0 && parts[i - 1] === '/';
    product = {
      dimension: product.dimension.map(
        (e, k) => e + (inverse ? -1 : 1) * factor.dimension[k]!,
      ) as unknown as Dimension,
      times: product.times * (inverse ? factor.over : factor.times),
      over: product.over * (inverse ? factor.times : factor.over),
    };
  }
  return product;
}

const sameDimension = (a: Dimension, b: Dimension): boolean => a.every((e, i) => e === b[i]);

/** SI value of `value` in `unit`. */
export const toSI = (value: number, unit: Unit): number =>
  (value * unit.times) / unit.over + (unit.zero ?? 0);
/** SI size of a difference of `value` in `unit`: the zero of the scale does not enter. */
export const differenceToSI = (value: number, unit: Unit): number => (value * unit.times) / unit.over;
/** What the SI `value` reads in `unit`. */
export const fromSI = (value: number, unit: Unit): number =>
  ((value - (unit.zero ?? 0)) * unit.over) / unit.times;

const GAUGE = /^(?:bar|psi|kPa|MPa|mbar|Pa)\s*(?:g|gage|gauge|\(g\)|\(gauge\))$/i;
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/;

interface Amount {
  readonly number: number;
  readonly unit: string;
}

/** Split `100 bar` into its number and the text of its unit. */
function readAmount(text: string, whole: string): Outcome<Amount> {
  const digits = NUMBER.exec(text);
  if (digits === null) {
    return refuse(
      'number-unreadable',
      `${quoted(whole)} does not begin with a number.`,
      'Write a number and its unit, e.g. 100 bar or 3.5 ± 0.1.',
    );
  }
  const rest = text.slice(digits[0].length);
  const marks = /^[+-]?\d+(?:[,'’ ]\d+)+(?:\.\d+)?/.exec(text)?.[0];
  if (marks !== undefined) {
    const joined = marks.replace(/[,'’ ]/g, '');
    const pointed = marks.replace(',', '.');
    const decimals = /^[+-]?\d+,(\d+)$/.exec(marks)?.[1];
    if (decimals !== undefined && decimals.length !== 3) {
      return refuse(
        'decimal-comma',
        `${quoted(whole)} has a comma where a point marks decimals.`,
        `Write ${pointed}, with a point.`,
      );
    }
    return decimals !== undefined
      ? refuse(
          'decimal-comma',
          `In ${quoted(whole)} the comma could mark decimals or thousands.`,
          `Write ${pointed} or ${joined}: a point for decimals, nothing between thousands.`,
        )
      : refuse(
          'thousands-mark',
          `In ${quoted(whole)} the digits are split into groups.`,
          `Write ${joined}: a point for decimals, nothing between thousands.`,
        );
  }
  if (/^[\d.,_]/.test(rest) || /^0\d/.test(digits[0].replace(/^[+-]/, ''))) {
    return refuse(
      'number-unreadable',
      `${quoted(whole)} is not a number as written here.`,
      'Write decimal digits with a point for decimals, e.g. 1450, 0.35 or 1e5.',
    );
  }
  const number = Number(digits[0]);
  if (!Number.isFinite(number)) {
    return refuse('number-not-finite', `${quoted(whole)} is too large a number.`, 'Write a smaller one.');
  }
  return { ok: true, value: { number, unit: rest.trim() } };
}

/** The kind among `kinds` that `unitText` belongs to, with the unit. */
function readUnit(
  unitText: string,
  kinds: readonly QuantityKind[],
  whole: string,
): Outcome<{ readonly unit: Unit; readonly kind: QuantityKind }> {
  if (unitText === '') {
    const bare = kinds.find((k) => quantityKinds[k].bare);
    if (bare !== undefined) {
      return { ok: true, value: { kind: bare, unit: { dimension: [0, 0, 0, 0, 0, 0], times: 1, over: 1 } } };
    }
    return refuse(
      'unit-missing',
      `${quoted(whole)} has no unit; ${kindsInWords(kinds)} is expected.`,
      unitsInWords(kinds),
    );
  }
  if (GAUGE.test(unitText)) {
    return refuse(
      'pressure-gauge',
      `${quoted(whole)} is a gauge pressure, measured above the ambient.`,
      'Pressures are absolute here: add the ambient pressure of the gauge (1.01325 bar or 14.696 psi at sea level) and write bar, MPa or psi.',
    );
  }
  const unit = findUnit(unitText);
  if (unit === null) {
    const allowed = kinds.flatMap((k) => quantityKinds[k].usual);
    const near = nearestName(unitText, allowed) ?? nearestName(unitText, unitTable.keys());
    if (/^-\s*[\d.]/.test(unitText)) {
      return refuse(
        'range-unreadable',
        `In ${quoted(whole)} the minus sign could mean a range.`,
        'Write a range with “to”, e.g. 3.4 to 3.6.',
      );
    }
    const ton = /^(?:short |long |us )?tons?$/i.test(unitText);
    return refuse(
      'unit-unknown',
      `${quoted(unitText)} in ${quoted(whole)} is not a known unit${ton ? ': there are several tons' : ''}.`,
      `${near === null ? '' : `Did you mean ${near}? `}${unitsInWords(kinds)}`,
    );
  }
  // A percentage is a share, never a bare number: `areaRatio: 25 %` is a slip, not 0.25.
  const kind = kinds.find((k) => sameDimension(unit.dimension, quantityKinds[k].dimension) && k !== 'number');
  if (kind === undefined) {
    const other = (Object.keys(quantityKinds) as QuantityKind[]).find(
      (k) => k !== 'number' && sameDimension(unit.dimension, quantityKinds[k].dimension),
    );
    return refuse(
      'unit-of-other-kind',
      `${quoted(whole)} is ${other === undefined ? 'another kind of quantity' : quantityKinds[other].name}; ${kindsInWords(kinds)} is expected.`,
      unitsInWords(kinds),
    );
  }
  return { ok: true, value: { unit, kind } };
}

/** `3.4 to 3.6`, `95–97 %`, with or without a most likely value behind. */
const RANGE = /^(.*?\d[^,]*?)\s*(?:\bto\b|–|…|\.{2,3})\s*([+-]?\.?\d.*?)(?:,?\s*most likely\s*(.*))?$/;

/** A range in SI; `value` is its middle or its peak. The unit of one part counts for those that have none. */
function parseRange(
  whole: string,
  parts: readonly (string | undefined)[],
  kinds: readonly QuantityKind[],
): Outcome<ParsedQuantity> {
  if (/±|\+\/-|\+-/.test(whole)) {
    return refuse(
      'range-unreadable',
      `${quoted(whole)} is a range and has a ± as well.`,
      'Write either 3.5 ± 0.1 or 3.4 to 3.6.',
    );
  }
  const amounts: Amount[] = [];
  for (const part of parts) {
    if (part === undefined) continue;
    const amount = readAmount(part.trim(), whole);
    if (!amount.ok) return amount;
    amounts.push(amount.value);
  }
  const shared = amounts.map(({ unit }) => unit).findLast((unit) => unit !== '') ?? '';
  const found = readUnit(shared, kinds, whole);
  if (!found.ok) return found;
  const { unit, kind } = found.value;
  const values: number[] = [];
  for (const amount of amounts) {
    const own = amount.unit === '' ? found : readUnit(amount.unit, [kind], whole);
    if (!own.ok) return own;
    values.push(toSI(amount.number, amount.unit === '' ? unit : own.value.unit));
  }
  const [low, high, peak] = values as [number, number, number?];
  if (!values.every(Number.isFinite)) {
    return refuse('number-not-finite', `${quoted(whole)} is too large a number.`, 'Write a smaller one.');
  }
  if (!(low < high)) {
    return refuse(
      'range-unreadable',
      `In ${quoted(whole)} the lower end is not below the upper one.`,
      'Write the lower end first, e.g. 3.4 to 3.6.',
    );
  }
  if (peak !== undefined && !(peak >= low && peak <= high)) {
    return refuse(
      'range-unreadable',
      `In ${quoted(whole)} the most likely value lies outside the range.`,
      'Write one between the two ends, e.g. 3.4 to 3.6 most likely 3.5.',
    );
  }
  const spread: RangeSpread =
    peak === undefined ? { kind: 'even', low, high } : { kind: 'triangular', low, high, peak };
  return {
    ok: true,
    value: { value: peak ?? 0.5 * (low + high), plusMinus: null, spread, kind, unit: shared },
  };
}

/**
 * A quantity as a study writes it, in SI.
 *
 * `100 bar`, `3.5`, `97.5 ± 1 %` (the unit counts for both), `97.5 % ± 1 %`, `100 bar ± 2 %` (a share of the
 * value), `3.5 +/- 0.1`; `95 to 97 %`, `3.4–3.6` (anywhere between alike), `3.4 to 3.6 most likely 3.5`. Pressures are
 * absolute. After ± a temperature is a difference: ± 2 °C is ± 2 K.
 */
export function parseQuantity(text: string, ...kinds: readonly QuantityKind[]): Outcome<ParsedQuantity> {
  const whole = plain(text);
  if (whole === '') {
    return refuse(
      'quantity-empty',
      `A value is missing; ${kindsInWords(kinds)} is expected.`,
      unitsInWords(kinds),
    );
  }
  const range = RANGE.exec(whole);
  if (range !== null) return parseRange(whole, range.slice(1), kinds);
  const sides = whole.split(/\s*(?:±|\+\/-|\+-)\s*/);
  if (sides.length > 2) {
    return refuse('plus-minus-unreadable', `${quoted(whole)} has more than one ±.`, 'Write it as 3.5 ± 0.1.');
  }
  const main = readAmount(sides[0]!, whole);
  if (!main.ok) return main;
  const spread = sides[1] === undefined ? null : readAmount(sides[1], whole);
  if (spread !== null && !spread.ok) return spread;
  const sharedUnit = main.value.unit === '' && spread !== null ? spread.value.unit : main.value.unit;
  const found = readUnit(sharedUnit, kinds, whole);
  if (!found.ok) return found;
  const { unit, kind } = found.value;
  const value = toSI(main.value.number, unit);
  let plusMinus: number | null = null;
  if (spread !== null) {
    const relative = spread.value.unit === '%' && main.value.unit !== '' && kind !== 'share';
    if (relative && unit.zero !== undefined) {
      return refuse(
        'plus-minus-unreadable',
        `${quoted(whole)}: a share of a temperature in degrees has no meaning.`,
        'Write the ± in degrees.',
      );
    }
    if (relative) plusMinus = Math.abs(value) * (spread.value.number / 100);
    else {
      const own = readUnit(spread.value.unit === '' ? sharedUnit : spread.value.unit, [kind], whole);
      if (!own.ok) return own;
      plusMinus = differenceToSI(spread.value.number, own.value.unit);
    }
    if (plusMinus < 0) {
      return refuse(
        'plus-minus-unreadable',
        `In ${quoted(whole)} the ± is negative.`,
        'Write it without a sign.',
      );
    }
  }
  if (!Number.isFinite(value) || (plusMinus !== null && !Number.isFinite(plusMinus))) {
    return refuse('number-not-finite', `${quoted(whole)} is too large a number.`, 'Write a smaller one.');
  }
  return { ok: true, value: { value, plusMinus, spread: null, kind, unit: sharedUnit } };
}

/** Digits after the point that show `value` with `digits` significant digits. */
function decimalsFor(value: number, digits: number): number {
  if (value === 0) return 0;
  const exponent = Number(value.toExponential(digits - 1).split('e')[1]);
  return Math.max(0, digits - 1 - exponent);
}

function decimalsOfSpread(spread: number): number {
  const [mantissa, exponent] = spread.toExponential(1).split('e');
  return Math.max(0, (mantissa!.endsWith('0') ? 0 : 1) - Number(exponent));
}

/**
 * An SI value in `unit` for reading, with `digits` significant digits, a true minus and no-break spaces:
 * `97.50 ± 1.00 %`. It shows as many decimals as the ± needs to be told. Reads back with {@link parseQuantity}.
 *
 * @throws RangeError for a value that is not finite or a unit that is not in the table: both are bugs of the caller.
 */
export function formatQuantity(
  value: number,
  unit: string,
  digits: number,
  plusMinus: number | null = null,
): string {
  const known = unit === '' ? { dimension: [0, 0, 0, 0, 0, 0] as const, times: 1, over: 1 } : findUnit(unit);
  if (known === null) throw new RangeError(`no unit ${unit}`);
  if (!Number.isFinite(value)) throw new RangeError(`not a finite value: ${value}`);
  const shown = fromSI(value, known);
  const spread = plusMinus === null ? null : (plusMinus * known.over) / known.times;
  const large = Math.max(Math.abs(shown), spread ?? 0);
  const small = shown === 0 ? large : Math.abs(shown);
  const scientific = large >= 1e15 || (small !== 0 && small < 1e-6);
  const decimals = Math.max(
    decimalsFor(shown, digits),
    spread === null || spread === 0 ? 0 : decimalsOfSpread(spread),
  );
  const write = (x: number): string =>
    (scientific
      ? x.toExponential(digits - 1).replace('e+', 'e')
      : (decimals === 0 ? Number(x.toPrecision(digits)) : x).toFixed(Math.min(100, decimals))
    ).replace(/-/g, MINUS);
  const body =
    spread === null ? write(shown) : `${write(shown)}${NO_BREAK_SPACE}±${NO_BREAK_SPACE}${write(spread)}`;
  return unit === '' ? body : `${body}${unit === '°' ? '' : NO_BREAK_SPACE}${unit}`;
}

/** What may be swept: names, kinds of value, ranges. */

import { coolingFields } from './coolingForm.ts';
import { cycleForms } from './cycleForm.ts';
import {
  altitudeRange,
  ambientPressureRange,
  type ChoiceField,
  chamberFields,
  type Fields,
  frozenFromFields,
  nozzleForms,
  propellantForms,
  type Range,
  shareRange,
  sizeForms,
} from './form.ts';
import { nearestName } from './nearest.ts';
import type { QuantityKind } from './unitTable.ts';
import { payloadField, vehicleForms } from './vehicleForm.ts';

export interface SweptKind {
  readonly kinds: readonly QuantityKind[];
  readonly range: Range;
  readonly example: string;
}

/** What a question sets that no study states as an input. */
export const sweptConditions: Readonly<Record<string, SweptKind>> = {
  altitude: { kinds: ['length'], range: altitudeRange, example: '10 km' },
  ambientPressure: { kinds: ['pressure'], range: ambientPressureRange, example: '0.5 bar' },
  throttle: { kinds: ['share'], range: shareRange, example: '60 %' },
  time: { kinds: ['time'], range: { from: 0, words: '0 s or more' }, example: '60 s' },
};

/**
 * Inputs below an engine or a vehicle, whatever the kinds of its sections; one that several kinds share is read by the
 * widest of them.
 */
const sweptInputs: ReadonlyMap<string, SweptKind> = new Map([
  ...Object.entries(sweptConditions),
  ...below('propellants', Object.values(propellantForms)),
  ...below('chemistry.frozenFrom', [frozenFromFields]),
  ...below('chamber', [chamberFields]),
  ...below('nozzle', Object.values(nozzleForms)),
  ['nozzle.switchAt', { kinds: ['length'], range: altitudeRange, example: '12 km' }],
  ...below('size', Object.values(sizeForms)),
  ...below('cooling', [coolingFields]),
  ...below('cycle', Object.values(cycleForms)),
  ...Object.entries(vehicleForms).flatMap(([section, form]) => below(section, [form])),
  ['payload', payloadField],
]);

function below(section: string, forms: readonly Fields[]): readonly (readonly [string, SweptKind])[] {
  const found = new Map<string, SweptKind>();
  for (const form of forms) {
    for (const [key, field] of Object.entries(form)) {
      if (field.is !== 'quantity') continue;
      const { kinds, example } = field;
      const before = found.get(`${section}.${key}`);
      const range = before === undefined ? field.range : wider(before.range, field.range);
      found.set(`${section}.${key}`, { kinds, range, example });
    }
  }
  return [...found];
}

/** Which of the engine's own ranges counts is known when its nozzle is. */
function wider(one: Range, other: Range): Range {
  const low = (range: Range): number => range.above ?? range.from ?? Number.NEGATIVE_INFINITY;
  const high = (range: Range): number => range.below ?? range.upTo ?? Number.POSITIVE_INFINITY;
  if (low(one) <= low(other) && high(one) >= high(other)) return one;
  if (low(other) <= low(one) && high(other) >= high(one)) return other;
  return { words: 'as the nozzle allows' };
}

/** `engines.bell.chamber.pressure` → `chamber.pressure`, `vehicles.booster.first.dry` → `first.dry`; other names as they are. */
function plainName(over: string): string {
  return over.replace(/^(?:engines|vehicles)\.[^.]+\./, '');
}

/** Null where nothing of that name can be swept. */
export function sweptKindOf(over: string): SweptKind | null {
  const name = plainName(over);
  if (/^propellants\.(oxidiser|oxidizer|fuel|mixture|gas)\.[^.].*$/.test(name)) {
    return { kinds: ['share'], range: shareRange, example: '75 %' };
  }
  return sweptInputs.get(name) ?? null;
}

export function nearestSwept(over: string): string | null {
  const name = plainName(over);
  const depth = (each: string): number => each.split('.').length;
  const names = [...sweptInputs.keys()].sort((a, b) => depth(a) - depth(b));
  const last = (each: string): string => each.split('.').at(-1)!;
  if (name.includes('.')) return nearestName(name, names);
  const tail = nearestName(name, names.map(last));
  return names.find((each) => last(each) === tail) ?? null;
}

export const stepsField = {
  is: 'choice',
  options: ['even', 'ratios'],
  meaning:
    'Even steps, or each step by the same ratio. Absent: ratios where the end is twenty times the beginning or more.',
} as const satisfies ChoiceField;

export const sweptKeys = ['over', 'from', 'to', 'steps'] as const;
export const sweepKeys = ['id', 'title', 'of', ...sweptKeys, 'engines', 'points'] as const;
export const needKeys = ['id', 'title', 'so', 'over', 'from', 'to', 'steps', 'engines'] as const;
export const mapKeys = ['id', 'title', 'of', 'across', 'up', 'engines', 'points'] as const;

/** Least and most points of a sweep, and along each side of a map. */
export const sweepPoints = { least: 5, most: 201 } as const;
export const mapPoints = { least: 3, most: 41 } as const;

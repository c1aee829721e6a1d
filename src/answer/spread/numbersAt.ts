/** What was told at a set of points, sorted into numbers that can be followed from point to point. */

import type { Told } from '../asked/model.ts';
import type { ValuesAtPoints } from './surfaces.ts';

/** One ask over all points. */
export interface AskNumbers {
  readonly value: ValuesAtPoints;
  /** By the name of a model's error: how far its ends lie from the value [SI]; 0 where it has no part in it. */
  readonly scatter: ReadonlyMap<string, { readonly low: ValuesAtPoints; readonly high: ValuesAtPoints }>;
  /** By what they are alternatives for, then by model. */
  readonly alternatives: ReadonlyMap<string, ReadonlyMap<string, ValuesAtPoints>>;
}

/** @param told by point, then by ask */
export function askNumbers(told: readonly (readonly Told[])[], ask: number): AskNumbers {
  const own = told.map((row) => row[ask]!);
  const names = new Set(own.flatMap((one) => (one.ok ? one.scatter.map(({ name }) => name) : [])));
  const scatter = new Map(
    [...names].map((name) => {
      const end = (which: 'low' | 'high'): ValuesAtPoints =>
        own.map((one) => {
          if (!one.ok) return null;
          const found = one.scatter.find((each) => each.name === name);
          return found === undefined ? 0 : found[which] - one.value;
        });
      return [name, { low: end('low'), high: end('high') }] as const;
    }),
  );
  const alternatives = new Map<string, Map<string, ValuesAtPoints>>();
  for (const one of own) {
    for (const { of, by } of one.ok ? one.alternatives : []) {
      const family = alternatives.get(of) ?? new Map<string, ValuesAtPoints>();
      alternatives.set(of, family);
      if (family.has(by)) continue;
      family.set(
        by,
        own.map((each) => {
          if (!each.ok) return null;
          const found = each.alternatives.find((other) => other.of === of && other.by === by);
          // Where the models do not part, the value is that of all.
          return found === undefined ? each.value : found.value;
        }),
      );
    }
  }
  return { value: own.map((one) => (one.ok ? one.value : null)), scatter, alternatives };
}

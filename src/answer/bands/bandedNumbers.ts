/** The numbers of an answer that get a band: where they stand, and what to ask for them. */

import type { Ask, AskedAmbient } from '../asked/model.ts';
import { plainAsk } from '../asked/plainAsk.ts';
import { findQuantity } from '../catalogue.ts';
import type { Comparison, EngineAnswer } from '../model.ts';

/** One number of an engine's answer. */
export interface BandedNumber {
  /** Path inside the engine, e.g. `altitudes[3].thrust`. */ readonly path: string;
  readonly value: number;
  readonly ask: Ask;
}

const FIGURES = ['thrust', 'specificImpulse'] as const;
const SINGLE = [
  'characteristicVelocity',
  'massFlow',
  'chamber.temperature',
  'throat.diameter',
  'exit.diameter',
  'exit.pressure',
  'exit.velocity',
  'contour.totalLength',
  'matched.altitude',
  'losses.delivered',
  'cycle.dumpShare',
  'cycle.impulseLost',
  'cycle.pumpPower',
  'cycle.tankMass',
  'mass.engine',
] as const;

/** Thrust and specific impulse everywhere, and what an engine has once. */
export function bandedNumbers(engine: EngineAnswer): readonly BandedNumber[] {
  const ask = (quantity: string, ambient: AskedAmbient | null): Ask => plainAsk(engine.id, quantity, ambient);
  const figures = (
    path: string,
    row: { readonly thrust: number | null; readonly specificImpulse: number | null },
    ambient: AskedAmbient,
    of = '',
  ): readonly BandedNumber[] =>
    FIGURES.flatMap((key) => {
      const value = row[key];
      return value === null ? [] : [{ path: `${path}.${key}`, value, ask: ask(`${of}${key}`, ambient) }];
    });
  return [
    ...figures('vacuum', engine.vacuum, { kind: 'vacuum' }),
    ...figures('seaLevel', engine.seaLevel, { kind: 'altitude', altitude: 0 }),
    ...engine.altitudes.flatMap((row, i) =>
      figures(`altitudes[${i}]`, row, { kind: 'altitude', altitude: row.altitude ?? 0 }),
    ),
    ...engine.ambients.flatMap((row, i) =>
      figures(`ambients[${i}]`, row, { kind: 'pressure', pressure: row.ambientPressure }),
    ),
    ...(engine.cycle === undefined
      ? []
      : [
          ...figures('cycle.vacuum', engine.cycle.vacuum, { kind: 'vacuum' }, 'cycle.'),
          ...figures('cycle.seaLevel', engine.cycle.seaLevel, { kind: 'altitude', altitude: 0 }, 'cycle.'),
        ]),
    ...SINGLE.flatMap((quantity) => {
      const value = valueAt(engine, quantity);
      return value === null ? [] : [{ path: quantity, value, ask: ask(quantity, null) }];
    }),
  ];
}

function valueAt(engine: EngineAnswer, path: string): number | null {
  let part: unknown = engine;
  for (const key of path.split('.')) {
    if (typeof part !== 'object' || part === null) return null;
    part = (part as Readonly<Record<string, unknown>>)[key];
  }
  return typeof part === 'number' ? part : null;
}

/** Both sides of each compared number that can be drawn. */
export function comparedAsks({
  base,
  other,
  quantities,
}: Comparison): readonly { readonly row: number; readonly base: Ask; readonly other: Ask }[] {
  return quantities.flatMap(({ quantity, altitude, base: left, other: right }, row) => {
    if (left === null || right === null) return [];
    const placed = findQuantity(quantity)?.place === 'altitude';
    const inVacuum = quantity.startsWith('vacuum.') || (placed && altitude === null);
    const isFigure = altitude !== null || inVacuum;
    const ambient: AskedAmbient | null = inVacuum
      ? { kind: 'vacuum' }
      : isFigure
        ? { kind: 'altitude', altitude: altitude ?? 0 }
        : null;
    const ask = (engine: string): Ask => plainAsk(engine, quantity.replace(/^vacuum\./, ''), ambient);
    return [{ row, base: ask(base), other: ask(other) }];
  });
}

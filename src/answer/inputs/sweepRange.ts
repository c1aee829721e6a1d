/** Over which values an input is worth looking at, when nobody says. Common practice, no source. */

import type { Range } from '../../study/form.ts';
import type { SweepRange } from './model.ts';

/** By the catalogue's name, where the range round the present value would not tell the story [SI]. */
const TOLD: Readonly<Record<string, readonly [from: number, to: number]>> = {
  areaRatio: [5, 100],
  'chamber.pressure': [10e5, 300e5],
  'chamber.efficiency': [0.9, 1],
  'chamber.contractionRatio': [2, 8],
  'propellants.share': [0.02, 0.98],
  'propellants.gamma': [1.1, 1.67],
  'propellants.equivalenceRatio': [0.5, 2],
  'chemistry.areaRatio': [1, 30],
  'chemistry.pressure': [1e4, 100e5],
  'nozzle.shortAreaRatio': [5, 50],
  'nozzle.insertAreaRatio': [5, 50],
  'nozzle.baseAreaRatio': [5, 50],
  'nozzle.designMach': [3, 6],
  'nozzle.innerMach': [1, 4],
  'nozzle.aspectRatio': [0.5, 10],
  'nozzle.modules': [6, 60],
  'nozzle.machOne': [4_000, 15_000],
  'nozzle.kept': [0.05, 1],
  'nozzle.pressureRise': [0, 0.5],
  'change.altitude': [0, 30_000],
  'throat.diameter': [0.05, 0.5],
  'exit.diameter': [0.3, 3],
  'size.thrust': [1e4, 3e6],
};

/** From this ratio of the ends on, equal ratios tell more than equal steps. */
const WIDE = 20;

/** @param now the present value [SI]; null where there is none */
export function sweepRangeOf(range: Range, now: number | null, quantity: string): SweepRange {
  const told = TOLD[quantity];
  const [from, to] = told ?? around(range, now);
  const low = now === null || told === undefined ? from : Math.min(from, now);
  const high = now === null || told === undefined ? to : Math.max(to, now);
  return { from: low, to: high, spacing: low > 0 && high / low >= WIDE ? 'in equal ratios' : 'even' };
}

/** The whole allowed range where it has two ends that are not far apart, else from half to twice the value. */
function around(range: Range, now: number | null): readonly [number, number] {
  const lowest = range.from ?? range.above;
  const highest = range.upTo ?? range.below;
  if (lowest !== undefined && highest !== undefined && (now === null || highest - lowest < 3 * now)) {
    const margin = (highest - lowest) / 50;
    return [range.from ?? lowest + margin, range.upTo ?? highest - margin];
  }
  const middle = now ?? 1;
  return [
    Math.max(middle / 2, range.from ?? Number.NEGATIVE_INFINITY),
    Math.min(middle * 2, range.upTo ?? Number.POSITIVE_INFINITY),
  ];
}

import { ProblemError } from '../../numerics/problem.ts';
import type { Expansion } from '../gas/flow.ts';
import type { BellAngles } from './bellAngles.ts';
import { BELL_ANGLE_ROWS } from './bellAngleTable.ts';

/** γ taken where the gas is not known, that of most exhausts. */
export const USUAL_GAMMA = 1.2;

const gammas = valuesOf(0);
const lengths = valuesOf(1);
const areaRatios = valuesOf(2);

/** Area ratios over which the best angles are tabulated. */
export const TABULATED_AREA_RATIOS = {
  lowest: areaRatios[0]!,
  highest: areaRatios[areaRatios.length - 1]!,
};

/**
 * Wall angles [rad] of the parabolic bell with the greatest vacuum thrust in the computed field.
 *
 * From the table: linear in γ, in length and in ln ε. Beyond the table's γ, 1.1 to 1.4, the nearest: half a degree there
 * changes the thrust by less than a part in ten thousand.
 *
 * @param areaRatio ε [–], 3 … 400
 * @param length share of the 15° cone's length [–], 0.6 … 1
 * @throws ProblemError `bell-angles-not-tabulated` outside that range of ε
 * Source: this program's own field, scripts/bell-angles.mjs; the chart after G. V. R. Rao is a check, see bellAngles.ts.
 */
export function tabulatedBellAngles(areaRatio: number, length: number, gamma = USUAL_GAMMA): BellAngles {
  const { lowest, highest } = TABULATED_AREA_RATIOS;
  if (!(areaRatio >= lowest && areaRatio <= highest)) throw notTabulated(areaRatio, lowest, highest);
  const at = (column: 3 | 4): number => {
    const overAreaRatio = (g: number, l: number): number =>
      along(areaRatios.map(Math.log), Math.log(areaRatio), (e) => valueAt(g, l, e, column));
    const overLength = (g: number): number => along(lengths, length, (l) => overAreaRatio(g, l));
    return (along(gammas, gamma, overLength) * Math.PI) / 180;
  };
  return { throatAngle: at(3), lipAngle: at(4) };
}

/** Mean isentropic exponent from the throat to an exit, ln(p_t/p_e)/ln(ρ_t/ρ_e) [–]: the γ under which angles are looked up. */
export function meanExponent({ throat }: Expansion, exit: { pressure: number; density: number }): number {
  return Math.log(throat.pressure / exit.pressure) / Math.log(throat.density / exit.density);
}

function valuesOf(column: 0 | 1 | 2): readonly number[] {
  return [...new Set(BELL_ANGLE_ROWS.map((row) => row[column]))].sort((a, b) => a - b);
}

/** Rows are ordered by γ, then length, then area ratio. */
function valueAt(gamma: number, length: number, areaRatio: number, column: 3 | 4): number {
  const row = (gamma * lengths.length + length) * areaRatios.length + areaRatio;
  return BELL_ANGLE_ROWS[row]![column];
}

/** Linear between the values at the knots' numbers; the nearest beyond them. */
function along(knots: readonly number[], x: number, value: (number: number) => number): number {
  let i = 0;
  while (i < knots.length - 2 && x > knots[i + 1]!) i++;
  const share = Math.min(Math.max((x - knots[i]!) / (knots[i + 1]! - knots[i]!), 0), 1);
  return value(i) + (share === 0 ? 0 : share * (value(i + 1) - value(i)));
}

function notTabulated(areaRatio: number, lowest: number, highest: number): ProblemError {
  return new ProblemError({
    code: 'bell-angles-not-tabulated',
    what: `The best wall angles of a bell are known for area ratios of ${lowest} to ${highest}, not ${areaRatio}.`,
    why: 'Below, the parabola has hardly any length to turn in; above, no nozzle of the kind has been built.',
    mend: 'State both wall angles, throatAngle behind the throat and lipAngle at the lip, or choose an area ratio inside that range.',
    where: 'nozzle.areaRatio',
    facts: { areaRatio, lowest, highest },
  });
}

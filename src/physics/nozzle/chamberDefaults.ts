import { ProblemError } from '../../numerics/problem.ts';
import type { ChamberShape } from './model.ts';

/** Usual characteristic lengths L* [m] of a propellant pair. */
export interface CharacteristicLengthRow {
  readonly pair: string;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

const SP_125 = 'D. K. Huzel, D. H. Huang, NASA SP-125, 2nd ed., 1971, ch. 4 (from memory; inches converted)';

export const CHARACTERISTIC_LENGTHS: readonly CharacteristicLengthRow[] = [
  { pair: 'liquid oxygen and kerosene', low: 1.02, high: 1.27, source: SP_125 },
  { pair: 'liquid oxygen and gaseous hydrogen', low: 0.56, high: 0.71, source: SP_125 },
  { pair: 'liquid oxygen and liquid hydrogen', low: 0.76, high: 1.02, source: SP_125 },
  { pair: 'liquid oxygen and ammonia', low: 0.76, high: 1.02, source: SP_125 },
  { pair: 'nitrogen tetroxide and hydrazine fuels', low: 0.76, high: 0.89, source: SP_125 },
  { pair: 'hydrogen peroxide and kerosene', low: 1.52, high: 1.78, source: SP_125 },
];

/** L* [m] taken where nothing is stated: within or near the range of each pair above but peroxide. */
const DEFAULT_CHARACTERISTIC_LENGTH = 1;
/** [rad] half-angle of the converging cone: 30°, in the middle of the usual 20–45° (SP-125, from memory). */
const DEFAULT_CONVERGING_ANGLE = Math.PI / 6;
/** Chamber area over throat area where nothing is stated: SP-125 has 1.3–2.5 for pumps, 2–5 without (from memory). */
export const DEFAULT_CONTRACTION_RATIO = 3;
/** [m] throat diameters the fit below is used for. */
const FITTED_THROAT = { low: 0.002, high: 2 };

/**
 * Chamber area over throat area [–] usual for a throat diameter.
 *
 *   A_c/A_t = 8 d^−0.6 + 1.25,   d in cm
 *
 * @param throatDiameter [m], 2 mm … 2 m
 * @throws ProblemError `throat-outside-contraction-fit`
 * Source: R. Humble, G. Henry, W. Larson, Space Propulsion Analysis and Design, McGraw-Hill 1995, ch. 5 (from memory):
 * a fit to the chart of built chambers in SP-125.
 * Check: d = 63 cm → 1.92.
 */
export function usualContractionRatio(throatDiameter: number): number {
  const { low, high } = FITTED_THROAT;
  if (!(throatDiameter >= low && throatDiameter <= high)) {
    throw new ProblemError({
      code: 'throat-outside-contraction-fit',
      what: `The usual contraction ratio is known for throats of 2 mm to 2 m, not ${throatDiameter} m.`,
      mend: 'State the contraction ratio (chamber area over throat area).',
      where: 'chamber.contractionRatio',
      facts: { throatDiameter, low, high },
    });
  }
  return 8 * (100 * throatDiameter) ** -0.6 + 1.25;
}

/**
 * Chamber shape taken where the study states none.
 *
 * @param throatDiameter [m]; with it the contraction ratio is the one usual for that size, without it 3
 */
export function defaultChamberShape(throatDiameter?: number): ChamberShape {
  return {
    contractionRatio:
      throatDiameter === undefined ? DEFAULT_CONTRACTION_RATIO : usualContractionRatio(throatDiameter),
    characteristicLength: DEFAULT_CHARACTERISTIC_LENGTH,
    convergingAngle: DEFAULT_CONVERGING_ANGLE,
  };
}

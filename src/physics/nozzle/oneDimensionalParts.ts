import type { Expansion, FlowState } from '../gas/flow.ts';
import { CHAMBER_SURFACE, type ThrustPart } from './model.ts';

// Eight-point Gauss–Legendre rule on [−1, 1], positive half (Abramowitz & Stegun, table 25.4).
const GAUSS_X = [0.18343464249565, 0.525532409916329, 0.796666477413627, 0.960289856497536];
const GAUSS_W = [0.362683783378362, 0.313706645877887, 0.222381034453374, 0.10122853629038];
/** Pieces of the integral; with eight points each its error is far below 1e-6. */
const PIECES = 4;

/**
 * Push of one-dimensional flow on chamber and nozzle wall in vacuum, over p0 A_t.
 *
 *   ahead of the throat:  [p_t + (ρu²)_t] / p0         (momentum of all that goes through the throat)
 *   nozzle wall:          ∫ p d(A/A_t) / p0 = { [p A/A_t]_t^e + ∫ A/A_t (−dp) } / p0
 *
 * The wall's integral is taken over w, p = p_t exp(−w²), in which the area is smooth at the throat.
 */
export function oneDimensionalParts(expansion: Expansion, exit: FlowState): readonly ThrustPart[] {
  const { chamber, throat } = expansion;
  const wMax = Math.sqrt(Math.log(throat.pressure / exit.pressure));
  const areaAt = (pressure: number): number => throat.massFlux / expansion.atPressure(pressure).massFlux;
  let integral = 0;
  for (let piece = 0; piece < PIECES; piece++) {
    const half = wMax / (2 * PIECES);
    const middle = (2 * piece + 1) * half;
    GAUSS_X.forEach((x, i) => {
      for (const w of [middle - half * x, middle + half * x]) {
        const pressure = throat.pressure * Math.exp(-w * w);
        integral += GAUSS_W[i]! * half * areaAt(pressure) * 2 * w * pressure;
      }
    });
  }
  const ends = exit.pressure * (throat.massFlux / exit.massFlux) - throat.pressure;
  return [
    {
      surface: CHAMBER_SURFACE,
      coefficient: (throat.pressure + throat.massFlux * throat.velocity) / chamber.pressure,
    },
    { surface: 'nozzle wall', coefficient: (ends + integral) / chamber.pressure },
  ];
}

/** Parts in vacuum less the ambient pressure on what each shows to the front: A_t ahead of the throat, A_e − A_t behind. */
export function partsAtAmbient(
  inVacuum: readonly ThrustPart[],
  expansion: Expansion,
  areaRatio: number,
  ambientPressure: number,
): readonly ThrustPart[] {
  return inVacuum.map(({ surface, coefficient }) => ({
    surface,
    coefficient:
      coefficient -
      ((surface === CHAMBER_SURFACE ? 1 : areaRatio - 1) * ambientPressure) / expansion.chamber.pressure,
  }));
}

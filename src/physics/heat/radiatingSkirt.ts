/**
 * A wall that only radiates: it takes the temperature at which it sends out what arrives.
 *
 *   h_g (T_aw − T_w) + q_radiation = ε σ T_w⁴
 *
 * To the outside alone, into the cold; the inside sends as much to the opposite wall as it gets from there. Nothing is conducted along it.
 */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import { sentOut } from './gasRadiation.ts';
import { gasCoefficient, type HotPoint, radiationTo } from './gasSide.ts';

/** T_w [K] @param emissivity ε [–] */
export function radiatingTemperature(point: HotPoint, emissivity: number): number {
  const left = (wall: number): number =>
    gasCoefficient(point, wall) * (point.recovery - wall) +
    radiationTo(point, wall) -
    sentOut(emissivity, wall);
  const scale = gasCoefficient(point, point.recovery) * point.recovery;
  const { root } = findBracketedRoot(left, 3, point.stagnation, {
    valueTolerance: 1e-9 * scale,
    widthTolerance: 1e-6,
  });
  return root;
}

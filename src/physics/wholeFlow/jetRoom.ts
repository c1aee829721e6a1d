/** Where the jet behind a lip is to be expected, so that the mesh has its cells there. What the flow does is not read from it. */

import { attempt } from '../../numerics/problem.ts';
import type { Expansion } from '../gas/index.ts';
import { cellLengthOverDiameter, machDiskOfNozzle } from '../plume/index.ts';
import type { JetRoom } from './roundMesh.ts';

export interface LipState {
  /** [m] */ readonly radius: number;
  /** over the throat's area [–] */ readonly areaRatio: number;
  /** [rad] of the wall */ readonly angle: number;
}

/** Lip radii that are seen in full at most, and at least. */
const LONGEST = 24;
const SHORTEST = 6;
/** The jet swells beyond its fully expanded radius by about so much. */
const SWELL = 1.25;

/** @param ambientPressure [Pa] above 0 */
export function jetRoom(expansion: Expansion, lip: LipState, ambientPressure: number): JetRoom {
  const exit = expansion.atAreaRatio(lip.areaRatio, 'supersonic');
  const { radius } = lip;
  const throat = radius / Math.sqrt(lip.areaRatio);
  const full = attempt(() => expansion.atPressure(Math.max(ambientPressure, expansion.lowestPressure)));
  const fullArea =
    full.ok && full.value.pressure < expansion.throat.pressure ? full.value.areaRatio : lip.areaRatio;
  const fullRadius = throat * Math.sqrt(fullArea);
  const fullMach = (full.ok ? full.value.mach : null) ?? 1.5;
  const cell = 2 * fullRadius * cellLengthOverDiameter(Math.max(1.1, fullMach));
  const under = exit.pressure / ambientPressure;
  const disk =
    under > 1.2
      ? 2 *
        radius *
        machDiskOfNozzle(Math.max(1, exit.mach ?? 1), exit.isentropicExponent ?? exit.gammaFrozen, under)
      : cell;
  const fine =
    Math.min(LONGEST, Math.max(SHORTEST, (1.35 * Math.max(disk, Math.min(cell, 2 * disk))) / radius)) *
    radius;
  const widest = Math.max(radius, Math.min(SWELL * fullRadius, 0.6 * fine));
  const slope =
    widest > radius ? Math.min(1, (4 * (widest - radius)) / fine + Math.tan(Math.max(0, lip.angle))) : 0;
  const grown = widest - radius;
  return {
    edge: (behind) => (grown > 0 ? radius + grown * (1 - Math.exp((-behind * slope) / grown)) : radius),
    fine,
    long: 2.2 * fine + 4 * radius,
    wide: Math.max(5 * radius, 2.5 * widest, 0.9 * fine),
  };
}

/**
 * Temperatures through the wall at one place.
 *
 *   q = h_g (T_aw − T_wg) + q_rad = (k/t)(T_wg − T_wc) = h_eff (T_wc − T_c)
 *
 * Plane wall, thin against its radius; k at the mean of its two faces.
 */

import { findBracketedRoot } from '../../numerics/bracketedRoot.ts';
import type { WallMaterialRecord } from './coolantRecords.ts';
import { type GasModel, gasCoefficient, type HotPoint, radiationTo } from './gasSide.ts';
import { wallConductivity } from './wallMaterial.ts';

export interface WallMetal {
  readonly material: WallMaterialRecord;
  /** [m] */ readonly thickness: number;
}

/** What the coolant takes per area of the hot wall and kelvin, at a temperature of its side of the wall [W/(m² K)]. */
export type CoolantSide = (coldSide: number) => number;

export interface WallState {
  readonly hotSide: number;
  readonly coldSide: number;
  readonly flux: number;
  readonly radiation: number;
}

export function arriving(point: HotPoint, wall: number, by: GasModel): number {
  return gasCoefficient(point, wall, by) * (point.recovery - wall) + radiationTo(point, wall);
}

export function wallBalance(
  point: HotPoint,
  { material, thickness }: WallMetal,
  coolant: number,
  side: CoolantSide,
  by: GasModel = 'bartz',
): WallState {
  const through = (hot: number, flux: number): number => {
    const first = wallConductivity(material, hot);
    const middle = hot - (flux * thickness) / (2 * first);
    return hot - (flux * thickness) / wallConductivity(material, middle);
  };
  const left = (hot: number): number => {
    const flux = arriving(point, hot, by);
    const cold = through(hot, flux);
    return flux - side(Math.max(cold, coolant)) * (cold - coolant);
  };
  const low = Math.min(coolant, point.recovery);
  const high = Math.max(coolant, point.stagnation);
  const scale = Math.abs(arriving(point, low, by)) + 1;
  const { root } = findBracketedRoot(left, low, high, {
    valueTolerance: 1e-7 * scale,
    widthTolerance: 1e-5,
  });
  const flux = arriving(point, root, by);
  return { hotSide: root, coldSide: through(root, flux), flux, radiation: radiationTo(point, root) };
}

/**
 * Heat that can pass [W/m²] where neither face is hotter than it may be.
 * @param hotLimit [K] @param coldLimit [K]; Infinity: none
 */
export function passing(
  { material, thickness }: WallMetal,
  coolant: number,
  side: CoolantSide,
  hotLimit: number,
  coldLimit: number,
): number {
  const most = Math.min(hotLimit, coldLimit);
  if (coolant >= most) return 0;
  const left = (cold: number): number => {
    const conductivity = wallConductivity(material, (hotLimit + cold) / 2);
    return (conductivity / thickness) * (hotLimit - cold) - side(cold) * (cold - coolant);
  };
  // Where the coolant's side is at its own limit and could pass more, that limit decides.
  if (coldLimit < hotLimit && left(coldLimit) > 0) return side(coldLimit) * (coldLimit - coolant);
  const { root } = findBracketedRoot(left, coolant, hotLimit, { valueTolerance: 1, widthTolerance: 1e-4 });
  return side(root) * (root - coolant);
}

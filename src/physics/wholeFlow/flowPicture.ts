/** A settled field as it is looked at: the state of the gas at the cells of each block. */

import { type GasPair, type MeshSymmetry, mixedTangent, type Tangent } from '../euler/index.ts';
import type { BlockFlow } from './averages.ts';
import type { Beginning } from './carried.ts';
import type { Thermometer } from './thermometer.ts';

export interface PictureBlock {
  /** `flat`: of a linear plug, above its middle plane. */ readonly symmetry: MeshSymmetry;
  readonly ni: number;
  readonly nj: number;
  /** Nodes [m], (ni + 1)(nj + 1), axial from the throat plane; i running. */ readonly axial: Float32Array;
  readonly radius: Float32Array;
  /** Cells, ni nj, i running [Pa], [–], [kg/m³], [–]. */ readonly pressure: Float32Array;
  readonly mach: Float32Array;
  readonly density: Float32Array;
  /** [K] */ readonly temperature: Float32Array;
  /** [m/s] along the axis, and away from it */ readonly along: Float32Array;
  readonly away: Float32Array;
  /** Of the mass that is exhaust. */ readonly share: Float32Array;
}

export function pictureOf(
  blocks: readonly BlockFlow[],
  { inner, outer }: GasPair,
  temperatureAt: Thermometer,
): readonly PictureBlock[] {
  const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
  return blocks.map(({ mesh, density, u, v, pressure, share }) => ({
    symmetry: mesh.symmetry,
    ni: mesh.ni,
    nj: mesh.nj,
    axial: Float32Array.from(mesh.x),
    radius: Float32Array.from(mesh.y),
    pressure: Float32Array.from(pressure),
    density: Float32Array.from(density),
    share: Float32Array.from(share),
    along: Float32Array.from(u),
    away: Float32Array.from(v),
    temperature: Float32Array.from(density, (rho, cell) => temperatureAt(share[cell]!, rho, pressure[cell]!)),
    mach: Float32Array.from(density, (rho, cell) => {
      mixedTangent(inner, outer, share[cell]!, rho, pressure[cell]!, tangent);
      const { kappa, zeta } = tangent;
      return (
        Math.hypot(u[cell]!, v[cell]!) / Math.sqrt(((kappa + 1) * pressure[cell]! + zeta) / (kappa * rho))
      );
    }),
  }));
}

/** A picture as a field to begin another from: what is kept and what has just been computed begin the same one. */
export function beginningOf(blocks: readonly PictureBlock[]): readonly Beginning[] {
  return blocks.map(({ ni, nj, density, along, away, pressure, share }) => ({
    mesh: { ni, nj },
    density,
    u: along,
    v: away,
    pressure,
    share,
  }));
}

/** Middle of a cell [m]. */
export function middleIn(
  { ni, axial, radius }: PictureBlock,
  i: number,
  j: number,
): readonly [number, number] {
  const a = j * (ni + 1) + i;
  const d = a + ni + 1;
  return [
    (axial[a]! + axial[a + 1]! + axial[d]! + axial[d + 1]!) / 4,
    (radius[a]! + radius[a + 1]! + radius[d]! + radius[d + 1]!) / 4,
  ];
}

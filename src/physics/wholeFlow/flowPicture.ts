/** A settled field as it is looked at: pressure, Mach number, density and share of exhaust at the cells of each block. */

import { type GasPair, mixedTangent, type Tangent } from '../euler/index.ts';
import type { BlockFlow } from './averages.ts';

export interface PictureBlock {
  readonly ni: number;
  readonly nj: number;
  /** Nodes [m], (ni + 1)(nj + 1), axial from the throat plane; i running. */ readonly axial: Float32Array;
  readonly radius: Float32Array;
  /** Cells, ni nj, i running [Pa], [–], [kg/m³], [–]. */ readonly pressure: Float32Array;
  readonly mach: Float32Array;
  readonly density: Float32Array;
  /** Of the mass that is exhaust. */ readonly share: Float32Array;
}

export function pictureOf(blocks: readonly BlockFlow[], { inner, outer }: GasPair): readonly PictureBlock[] {
  const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
  return blocks.map(({ mesh, density, u, v, pressure, share }) => ({
    ni: mesh.ni,
    nj: mesh.nj,
    axial: Float32Array.from(mesh.x),
    radius: Float32Array.from(mesh.y),
    pressure: Float32Array.from(pressure),
    density: Float32Array.from(density),
    share: Float32Array.from(share),
    mach: Float32Array.from(density, (rho, cell) => {
      mixedTangent(inner, outer, share[cell]!, rho, pressure[cell]!, tangent);
      const { kappa, zeta } = tangent;
      return (
        Math.hypot(u[cell]!, v[cell]!) / Math.sqrt(((kappa + 1) * pressure[cell]! + zeta) / (kappa * rho))
      );
    }),
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

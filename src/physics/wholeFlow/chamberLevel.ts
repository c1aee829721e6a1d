/** A chamber that is fed more or less in time: so much gas comes in, at the pressure that it finds there. */

import { cellAt, type Flow, type SideKind } from '../euler/index.ts';

export interface ChamberLevel {
  /** What is to be fed now over the full feed; less comes in while the chamber is nearly empty [–] */ share: number;
  /** The full feed [kg/(m² s)]: see {@link feedOf} */ readonly full: number;
}

/** The gas comes in no faster than from its rest to this share of its pressure: not faster than sound. Where that is too little, less comes in. */
const FASTEST = 0.6;
const BISECTIONS = 24;

/**
 * At the pressure p of the cell inside, the state of the chamber's expansion at s p₀ brought to p, so that
 *
 *   (p/(s p₀)) ρ(s p₀) V(s p₀) = share · full,      s from 1 down to 0.6
 *
 * which keeps the total enthalpy where the composition is held.
 */
export function fedChamber(side: SideKind, level: ChamberLevel): SideKind {
  if (side.is !== 'reservoir') return side;
  const { at, highest, share } = side;
  return {
    is: 'reservoir',
    share,
    highest: Number.POSITIVE_INFINITY,
    at(pressure) {
      const wanted = level.share * level.full;
      const stateAt = (s: number) => {
        const { density, speed } = at(s * highest);
        return { density: (density * pressure) / (s * highest), speed };
      };
      let [low, high] = [FASTEST, 1];
      for (let n = 0; n < BISECTIONS; n++) {
        const middle = (low + high) / 2;
        const { density, speed } = stateAt(middle);
        if (density * speed > wanted) low = middle;
        else high = middle;
      }
      return stateAt(wanted > 0 ? high : 1);
    },
  };
}

/** What comes in through the first block's first side, for each square metre [kg/(m² s)]. */
export function feedOf(flow: Flow): number {
  const { mesh } = flow.fields[0]!;
  const { mass } = flow.through(0, { side: 'iLow', from: 0, to: mesh.nj });
  let area = 0;
  for (let j = 0; j < mesh.nj; j++)
    area += Math.hypot(mesh.iFaceX[j * (mesh.ni + 1)]!, mesh.iFaceY[j * (mesh.ni + 1)]!);
  return -mass / (mesh.symmetry === 'round' ? 2 * Math.PI * area : area);
}

/** Mean pressure where the gas comes in [Pa]. */
export function inletPressureOf({ fields }: Flow): number {
  const { mesh, pressure } = fields[0]!;
  let sum = 0;
  for (let j = 0; j < mesh.nj; j++) sum += pressure[cellAt(mesh, 0, j)]!;
  return sum / mesh.nj;
}

/** A chamber whose pressure changes in time: its gas comes in with the same total enthalpy, at a share of its full pressure. */

import type { SideKind } from '../euler/index.ts';

export interface ChamberLevel {
  /** Chamber pressure now over the full one [–] */ share: number;
}

/** ρ(p) = f ρ_full(p/f), V(p) = V_full(p/f), f the share: exact where the composition is held. */
export function levelledChamber(side: SideKind, level: ChamberLevel): SideKind {
  if (side.is !== 'reservoir') return side;
  return {
    is: 'reservoir',
    share: side.share,
    get highest() {
      return side.highest * level.share;
    },
    at(pressure) {
      const { density, speed } = side.at(pressure / level.share);
      return { density: density * level.share, speed };
    },
  };
}

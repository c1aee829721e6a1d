/**
 * The one altitude scale that every view shares: upward, linear from 0 to 40 km, then a break and vacuum.
 * Inside the break the place follows the air that is left, exp(−(z − 40 km)/7 km), so that every altitude
 * has its place and the top is vacuum.
 */

import type { Altitude } from './options.ts';

/** [m] end of the linear part */ export const LINEAR_TOP = 40_000;
/** [m] over which the air thins by a factor e up there (common practice, a round figure) */
const THINNING = 7_000;

export interface AltitudeAxis {
  /** y of vacuum. */ readonly top: number;
  /** y of 0 km. */ readonly bottom: number;
  /** y of 40 km, where the scale breaks. */ readonly breakAt: number;
  /** y of an altitude [m] from 0 up; below 0 it goes on linearly. */ y(altitude: Altitude): number;
  /** Altitude at a y; 'vacuum' near the top and above it, 0 below the bottom. */ altitudeAt(
    y: number,
  ): Altitude;
}

/** `breakHeight` is the room from 40 km to vacuum; at least the height of a label. */
export function altitudeAxis(
  top: number,
  bottom: number,
  breakHeight: number = 0.07 * (bottom - top),
): AltitudeAxis {
  const breakAt = top + breakHeight;
  return {
    top,
    bottom,
    breakAt,
    y(altitude) {
      if (altitude === 'vacuum') return top;
      if (altitude <= LINEAR_TOP) return bottom - (altitude / LINEAR_TOP) * (bottom - breakAt);
      return top + breakHeight * Math.exp(-(altitude - LINEAR_TOP) / THINNING);
    },
    altitudeAt(y) {
      if (y >= bottom) return 0;
      if (y >= breakAt) return ((bottom - y) / (bottom - breakAt)) * LINEAR_TOP;
      const left = (y - top) / breakHeight;
      return left <= 0.04 ? 'vacuum' : LINEAR_TOP - THINNING * Math.log(left);
    },
  };
}

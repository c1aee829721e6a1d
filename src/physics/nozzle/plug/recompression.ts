import type { PlugWallState, Recompression } from './geometry.ts';

/** Rises of less than this share are the march's own grain, not waves. */
const LEAST_RISE = 0.03;

/** Every rise of the wall pressure: where it begins, the Mach number ahead, pressure at its top over that at its foot. */
export function recompressionsOn(stations: readonly PlugWallState[]): Recompression[] {
  const found: Recompression[] = [];
  let foot = stations[0];
  let top = stations[0];
  for (const station of stations) {
    if (foot === undefined || top === undefined) break;
    if (station.pressure > top.pressure) top = station;
    // A fall of some share of the rise ends it.
    const over = station.pressure < top.pressure * (1 - 0.5 * LEAST_RISE);
    if (over || station.pressure < foot.pressure) {
      if (top.pressure > foot.pressure * (1 + LEAST_RISE)) found.push(riseFrom(foot, top));
      foot = station;
      top = station;
    }
  }
  if (foot !== undefined && top !== undefined && top.pressure > foot.pressure * (1 + LEAST_RISE)) {
    found.push(riseFrom(foot, top));
  }
  return found;
}

function riseFrom(foot: PlugWallState, top: PlugWallState): Recompression {
  return { axial: foot.axial, mach: foot.mach, pressureRatio: top.pressure / foot.pressure };
}

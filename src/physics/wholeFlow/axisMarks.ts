/** Shocks found in a field along its axis, behind the lip. */

import { middleIn, type PictureBlock } from './flowPicture.ts';

export interface AxisShock {
  /** [m] behind the lip */ readonly behind: number;
  /** Greatest on the axis since the shock before. */ readonly machAhead: number;
  /** Over the shock [–] */ readonly pressureRise: number;
  /** The flow turns subsonic in it: a Mach disk. */ readonly disk: boolean;
}

/** A rise of the pressure from its lowest to its highest by this factor counts as a shock. */
const LEAST_RISE = 1.3;

/**
 * Stretches of rising pressure on the axis; each stands where the pressure rises most from one cell to the next.
 * @param upTo [m] behind the lip: coarser cells are not looked at
 */
export function axisShocks(block: PictureBlock, lip: number, upTo: number): readonly AxisShock[] {
  const found: AxisShock[] = [];
  const { pressure, mach, ni } = block;
  let fastest = 0;
  let i = 0;
  while (i + 1 < ni && middleIn(block, i + 1, 0)[0] - lip < upTo) {
    fastest = Math.max(fastest, mach[i]!);
    if (pressure[i + 1]! <= pressure[i]!) {
      i += 1;
      continue;
    }
    const from = i;
    let [steepest, most] = [i, 0];
    while (i + 1 < ni && pressure[i + 1]! > pressure[i]!) {
      const rise = Math.log(pressure[i + 1]! / pressure[i]!);
      if (rise > most) [steepest, most] = [i, rise];
      fastest = Math.max(fastest, mach[i]!);
      i += 1;
    }
    const pressureRise = pressure[i]! / pressure[from]!;
    if (pressureRise < LEAST_RISE) continue;
    const [a] = middleIn(block, steepest, 0);
    const [b] = middleIn(block, steepest + 1, 0);
    const slowest = Math.min(...mach.subarray(from, Math.min(ni, i + 2)));
    found.push({ behind: (a + b) / 2 - lip, machAhead: fastest, pressureRise, disk: slowest < 1 });
    fastest = 0;
  }
  return found;
}

/** A shock of the jet raises the pressure by more than the nozzle’s own, which meets the axis whatever the air outside. */
const JET_RISE = 2.5;

/** Of shocks that are about as strong the first is that of the jet: this share of the strongest is enough. */
const AS_STRONG = 0.5;

/** The first strong one, where there is one of the jet. */
export function mainShock(shocks: readonly AxisShock[]): AxisShock | null {
  const strongest = Math.max(0, ...shocks.map(({ pressureRise }) => pressureRise));
  const enough = Math.max(JET_RISE, AS_STRONG * strongest);
  return shocks.find(({ pressureRise }) => pressureRise >= enough) ?? null;
}

/**
 * Length of the first shock cell [m]: the axis pressure, first on one side of the air’s, is on the same side again and at its
 * farthest from it. Null where that does not happen within `upTo` [m] of the lip.
 */
export function firstCell(block: PictureBlock, lip: number, ambient: number, upTo: number): number | null {
  const aside: number[] = [];
  const places: number[] = [];
  for (let i = 0; i < block.ni; i++) {
    const behind = middleIn(block, i, 0)[0] - lip;
    if (behind > upTo) break;
    places.push(behind);
    aside.push(Math.log(block.pressure[i]! / ambient));
  }
  const side = Math.sign(aside[0] ?? 0);
  const gone = aside.findIndex((value) => value * side < 0);
  const back = aside.findIndex((value, i) => gone >= 0 && i > gone && value * side > 0);
  if (back < 0) return null;
  let far = back;
  while (far + 1 < aside.length && aside[far + 1]! * side > aside[far]! * side) far += 1;
  return far + 1 < aside.length ? places[far]! : null;
}

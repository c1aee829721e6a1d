/** The way from the pad to vacuum as one length, as the altitude scale of the figures is drawn. */

import { type AltitudeAxis, altitudeAxis } from '../figures/altitudeAxis.ts';
import type { Altitude } from '../figures/options.ts';

/** A scale one long: the figures' own, with the break that they have. */
const SCALE: AltitudeAxis = altitudeAxis(0, 1);

/** Altitude at share `share` of the way between two altitudes: even on the scale, whole metres. */
export function altitudeBetween(from: Altitude, to: Altitude, share: number): Altitude {
  if (share <= 0) return from;
  if (share >= 1) return to;
  const at = SCALE.altitudeAt(SCALE.y(from) + share * (SCALE.y(to) - SCALE.y(from)));
  return at === 'vacuum' ? at : Math.round(at);
}

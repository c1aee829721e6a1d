/** What the gas is beyond a side through which it flows: from a chamber, out against a pressure, to and from the far air. */

import { type Field, type FlowPoint, soundSpeedAt } from './field.ts';
import type { SideKind } from './sides.ts';

type Normal = readonly [number, number];

/**
 * The gas has expanded on its way in to the pressure p at which the wave that comes out of the cell inside meets it,
 *
 *   p − ρc V(p) = p_in − ρc V_in
 *
 * V inwards; above the highest it stands still. Taken from the cell as it is, the pressure would ring: of slow gas the speed hangs on it
 * more stiffly than any wave, by c/V. Where the feed is given, and there is no highest, it does not.
 */
export function reservoirPoint(
  field: Field,
  inside: number,
  { at, highest, share }: Extract<SideKind, { is: 'reservoir' }>,
  [nx, ny]: Normal,
): FlowPoint {
  const found = field.pressure[inside]!;
  const stiff = field.density[inside]! * soundSpeedAt(field, inside);
  const inwards = -field.u[inside]! * nx - field.v[inside]! * ny;
  const pressure =
    highest === Number.POSITIVE_INFINITY ? found : metBy(at, highest, stiff, found - stiff * inwards);
  if (pressure >= highest) return { ...at(highest), u: 0, v: 0, pressure: highest, share };
  const { density, speed } = at(pressure);
  return { density, u: -speed * nx, v: -speed * ny, pressure, share };
}

/** Halvings between the highest pressure and this share of it, slower than sound: to a ten-millionth. */
const HALVINGS = 22;
export const LOWEST_SHARE = 0.5;

/** The pressure p with p − stiff V(p) as the wave brings it; it rises with p. */
function metBy(
  at: Extract<SideKind, { is: 'reservoir' }>['at'],
  highest: number,
  stiff: number,
  brought: number,
): number {
  let [low, high] = [LOWEST_SHARE * highest, highest];
  if (high <= brought) return highest;
  for (let n = 0; n < HALVINGS; n++) {
    const middle = (low + high) / 2;
    if (middle - stiff * at(middle).speed < brought) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** One-dimensional characteristics across the side: what leaves is from inside, what comes is of the far air. */
export function farPoint(field: Field, inside: number, air: FlowPoint, [nx, ny]: Normal): FlowPoint {
  const density = field.density[inside]!;
  const pressure = field.pressure[inside]!;
  const { u, v, share } = { u: field.u[inside]!, v: field.v[inside]!, share: field.share[inside]! };
  const own: FlowPoint = { density, u, v, pressure, share };
  const sound = soundSpeedAt(field, inside);
  const out = u * nx + v * ny;
  if (out >= sound) return own;
  if (out <= -sound) return air;
  const farOut = air.u * nx + air.v * ny;
  const stiff = density * sound;
  const met = (pressure + air.pressure + stiff * (out - farOut)) / 2;
  const speed = out + (pressure - met) / stiff;
  const from = out >= 0 ? own : air;
  const along = from.v * nx - from.u * ny;
  const there = from.density + (met - from.pressure) / (sound * sound);
  if (!(met > 0) || !(there > 0)) return { ...from, pressure: air.pressure };
  return {
    density: there,
    pressure: met,
    u: speed * nx - along * ny,
    v: speed * ny + along * nx,
    share: from.share,
  };
}

/** Against a pressure, slower than sound; null: faster, the pressure has no say. */
export function pressedPoint(
  field: Field,
  inside: number,
  pressure: number,
  [nx, ny]: Normal,
): FlowPoint | null {
  const [u, v] = [field.u[inside]!, field.v[inside]!];
  if (u * nx + v * ny >= soundSpeedAt(field, inside)) return null;
  return { density: field.density[inside]!, u, v, pressure, share: field.share[inside]! };
}

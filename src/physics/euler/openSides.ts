/** What the gas is beyond a side through which it flows: from a chamber, out against a pressure, to and from the far air. */

import { type Field, type FlowPoint, soundSpeedAt } from './field.ts';
import type { SideKind } from './sides.ts';

type Normal = readonly [number, number];

/** The pressure of the cell inside says how far the gas has expanded on its way in; above the highest it stands still. */
export function reservoirPoint(
  field: Field,
  inside: number,
  { at, highest, share }: Extract<SideKind, { is: 'reservoir' }>,
  [nx, ny]: Normal,
): FlowPoint {
  const pressure = field.pressure[inside]!;
  if (pressure >= highest) return { ...at(highest), u: 0, v: 0, pressure: highest, share };
  const { density, speed } = at(pressure);
  return { density, u: -speed * nx, v: -speed * ny, pressure, share };
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

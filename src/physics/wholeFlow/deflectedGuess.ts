/** The flow to begin with in an expansion–deflection nozzle. */

import type { FlowPoint } from '../euler/index.ts';
import type { DeflectedSize } from './deflectedLayout.ts';
import { type DeflectedMesh, WAKE_OF_PINTLE } from './deflectedMesh.ts';
import type { PreparedDeflected } from './deflectedShape.ts';
import { BEHIND, NOZZLE } from './roundMesh.ts';

/** Exhaust at rest behind the base: this share of the air’s pressure, or of the full nozzle’s where the air is thinner. */
const IN_WAKE = 0.6;

/** One-dimensional flow along the lines of the mesh, gas (in an open wake: air) at rest behind the base, air outside. */
export function deflectedGuess(
  { engine, lip }: PreparedDeflected,
  blocks: DeflectedMesh['blocks'],
  air: FlowPoint,
  size: DeflectedSize,
  isOpen: boolean,
) {
  const { expansion, throatRadius } = engine;
  const { chamber } = expansion;
  const exit = expansion.atAreaRatio(lip.areaRatio, 'supersonic');
  const resting = (pressure: number): FlowPoint => ({
    density: (pressure * chamber.density) / chamber.pressure,
    u: 0,
    v: 0,
    pressure,
    share: 1,
  });
  const wake = isOpen ? { ...air, u: 0 } : resting(IN_WAKE * Math.max(air.pressure, exit.pressure));
  /** From the state of an area along the line from one place to the next. */
  const moving = (block: number, i: number, low: number, high: number, floor: number): FlowPoint => {
    const { x, y, ni } = blocks[block]!.mesh;
    const [a, b] = [low * (ni + 1) + i, high * (ni + 1) + i];
    const area = Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!) * (y[a]! + y[b]!);
    const ratio = Math.max(1.0001, area / (throatRadius * throatRadius));
    const state = expansion.atAreaRatio(ratio, block === NOZZLE && i < size.duct ? 'subsonic' : 'supersonic');
    const pressure = Math.max(floor, state.pressure);
    const [dx, dy] = [x[a + 1]! + x[b + 1]! - x[a]! - x[b]!, y[a + 1]! + y[b + 1]! - y[a]! - y[b]!];
    const length = Math.hypot(dx, dy);
    return {
      density: state.density * (pressure / state.pressure) ** 0.8,
      u: (state.velocity * dx) / length,
      v: (state.velocity * dy) / length,
      pressure,
      share: 1,
    };
  };
  const columns = new Map<number, FlowPoint>();
  /** Of the gas between wake and wall or air. */
  const column = (block: number, i: number): FlowPoint => {
    const key = 2 * i + block;
    const [low, high] = block === BEHIND ? [size.wake, size.wake + size.across] : [0, size.across];
    const isAhead = block === NOZZLE && i < size.duct;
    const known = columns.get(key) ?? moving(block, i, low, high, isAhead ? 0 : wake.pressure);
    columns.set(key, known);
    return known;
  };
  return (_x: number, _y: number, block: number, i: number, j: number): FlowPoint => {
    if (block === NOZZLE) return column(block, i);
    // A closed wake ends on the way to the lip.
    if (block === WAKE_OF_PINTLE)
      return isOpen || i < size.free / 2 ? wake : column(NOZZLE, size.duct + size.edge + i);
    if (block !== BEHIND || i > 0.6 * size.fine || j >= size.wake + size.across) return air;
    return isOpen && j < size.wake ? air : column(block, i);
  };
}

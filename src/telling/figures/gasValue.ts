/** What a flow is drawn by at a pressure: the pressure itself, or what the gas of this engine has there. */

import type { EngineAnswer, WallPoint } from '../../answer/model.ts';
import type { Tint } from '../look/flowRamps.ts';

/**
 * Mach number, temperature or speed of the gas at a pressure [Pa].
 *
 * Without shocks all of the gas comes from one chamber by one expansion, so that pressure alone says its state: it is read between the
 * states along the wall, linear in ln p; past the lowest of them the last stretch goes on (for temperature in ln T).
 */
export function gasValue(engine: EngineAnswer, tint: Tint): (pressure: number) => number {
  if (tint === 'pressure') return (pressure) => pressure;
  const ways = known.get(engine) ?? new Map<Tint, (pressure: number) => number>();
  known.set(engine, ways);
  const before = ways.get(tint);
  if (before !== undefined) return before;
  const way = courseOf(statesOf(engine.wall, tint), tint === 'temperature');
  ways.set(tint, way);
  return way;
}

const known = new WeakMap<EngineAnswer, Map<Tint, (pressure: number) => number>>();

interface State {
  /** ln p */ readonly at: number;
  readonly value: number;
}

/** Falling pressure; a place where it does not fall says nothing new. */
function statesOf(wall: readonly WallPoint[], tint: Exclude<Tint, 'pressure'>): readonly State[] {
  const states: State[] = [];
  for (const point of wall) {
    const at = Math.log(point.pressure);
    const value = tint === 'mach' ? point.mach : tint === 'speed' ? point.velocity : point.temperature;
    if (value === null) continue;
    const last = states.at(-1);
    if (last === undefined || at < last.at - 1e-9) states.push({ at, value });
  }
  return states;
}

function courseOf(states: readonly State[], isLog: boolean): (pressure: number) => number {
  const [first] = states;
  if (first === undefined) return () => 0;
  if (states.length === 1) return () => first.value;
  return (pressure) => {
    const at = Math.log(Math.max(pressure, 1e-3));
    if (at >= first.at) return first.value;
    const found = states.findIndex((state) => state.at <= at);
    const next = found < 0 ? states.length - 1 : found;
    const [a, b] = [states[next - 1] ?? first, states[next] ?? first];
    const share = (a.at - at) / (a.at - b.at);
    if (isLog && found < 0) return a.value * (b.value / a.value) ** share;
    return a.value + share * (b.value - a.value);
  };
}

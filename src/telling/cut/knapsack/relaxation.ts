/**
 * A bound from above by giving prices to what is asked: λ for a unit of time, u for each need not met.
 *
 *   D(λ, u) = λ T + Σ_g V_g,   r_i = w_i − Σ_{i→j} u_ij + Σ_{k→i} u_ki − λ t_i
 *   V_g = b_g + Σ r_i⁺ where some r_i > 0, else max(0, b_g + max r_i)
 *
 * For all prices ≥ 0, D is at least the greatest weight that fits; prices are sought by steps down a subgradient
 * with Polyak's length. Source: M. L. Fisher, Management Science 27 (1981) 1–18 (from memory).
 */

export interface Arc {
  /** Needs … */ readonly from: number;
  /** … this one. */ readonly to: number;
}

export interface Relaxed {
  readonly room: number;
  readonly times: Float64Array;
  readonly weights: Float64Array;
  /** First item of each group, and one behind the last. */ readonly starts: readonly number[];
  readonly bonuses: readonly number[];
  readonly arcs: readonly Arc[];
}

export interface Prices {
  /** λ */ readonly time: number;
  /** u, of each arc. */ readonly needs: Float64Array;
  /** Weight of each item with the prices of its needs. */ readonly priced: Float64Array;
  /** The same less the price of its time: r. */ readonly reduced: Float64Array;
  readonly bound: number;
}

const STEPS = 12_000;
/** Steps without a better bound, after which they are halved. */
const PATIENCE = 120;
const SMALLEST_STEP = 1e-4;
/** A need weighs as much as so much time, so that both kinds of prices move alike. */
const NEED_SCALE = 900;

/** @param reached a weight that fits, to aim at; @param known prices to begin with */
export function findPrices(relaxed: Relaxed, reached: number, known: Prices | null = null): Prices {
  const { room, times, arcs } = relaxed;
  const needs = known === null ? new Float64Array(arcs.length) : Float64Array.from(known.needs);
  const priced = new Float64Array(times.length);
  const reduced = new Float64Array(times.length);
  const taken = new Uint8Array(times.length);
  pricedInto(priced, relaxed, needs);
  let time = known === null ? bestTimePrice(relaxed, priced) : known.time;
  let best = { time, bound: Number.POSITIVE_INFINITY, needs: Float64Array.from(needs) };
  let [length, idle] = [1, 0];
  for (let step = 0; step < STEPS && length > SMALLEST_STEP; step++) {
    pricedInto(priced, relaxed, needs);
    reducedInto(reduced, relaxed, priced, time);
    const bound = boundOf(relaxed, time, reduced);
    if (bound < best.bound - 1e-9 * Math.abs(bound)) {
      best = { time, bound, needs: Float64Array.from(needs) };
      idle = 0;
    } else if (++idle > PATIENCE) {
      [length, idle, time] = [length / 2, 0, best.time];
      needs.set(best.needs);
      continue;
    }
    const slack = room - takenInto(taken, relaxed, reduced);
    let square = slack * slack;
    for (const { from, to } of arcs) if (taken[from] !== taken[to]) square += NEED_SCALE;
    if (square === 0) break;
    const stride = (length * Math.max(bound - reached, 1e-6)) / square;
    time = Math.max(0, time - stride * slack);
    for (let i = 0; i < arcs.length; i++) {
      const slope = taken[arcs[i]!.to]! - taken[arcs[i]!.from]!;
      if (slope !== 0) needs[i] = Math.max(0, needs[i]! - stride * NEED_SCALE * slope);
    }
  }
  return pricesOf(relaxed, best.needs, best.time);
}

/** With the better of the time's price as it came and that of the least bound. */
function pricesOf(relaxed: Relaxed, needs: Float64Array, time: number): Prices {
  const priced = new Float64Array(relaxed.times.length);
  pricedInto(priced, relaxed, needs);
  const [here, best] = [time, bestTimePrice(relaxed, priced)].map((price): Prices => {
    const reduced = new Float64Array(relaxed.times.length);
    reducedInto(reduced, relaxed, priced, price);
    return { time: price, needs, priced, reduced, bound: boundOf(relaxed, price, reduced) };
  });
  return best!.bound < here!.bound ? best! : here!;
}

function pricedInto(out: Float64Array, { weights, arcs }: Relaxed, needs: Float64Array): void {
  out.set(weights);
  for (let i = 0; i < arcs.length; i++) {
    const { from, to } = arcs[i]!;
    out[from]! -= needs[i]!;
    out[to]! += needs[i]!;
  }
}

function reducedInto(out: Float64Array, { times }: Relaxed, priced: Float64Array, time: number): void {
  for (let i = 0; i < out.length; i++) out[i] = priced[i]! - time * times[i]!;
}

function boundOf({ room, starts, bonuses }: Relaxed, time: number, reduced: Float64Array): number {
  let sum = time * room;
  for (let g = 0; g < bonuses.length; g++)
    sum += groupValue(reduced, starts[g]!, starts[g + 1]!, bonuses[g]!);
  return sum;
}

/** V of the items from `from` up to `to`. */
export function groupValue(reduced: Float64Array, from: number, to: number, bonus: number): number {
  let [sum, best] = [0, Number.NEGATIVE_INFINITY];
  for (let i = from; i < to; i++) {
    const value = reduced[i]!;
    if (value > 0) sum += value;
    if (value > best) best = value;
  }
  return best > 0 ? bonus + sum : Math.max(0, bonus + best);
}

/** What the bound takes; returns its time. */
function takenInto(out: Uint8Array, { starts, bonuses, times }: Relaxed, reduced: Float64Array): number {
  let time = 0;
  for (let g = 0; g < bonuses.length; g++) {
    let best = starts[g]!;
    for (let i = starts[g]!; i < starts[g + 1]!; i++) {
      out[i] = reduced[i]! > 0 ? 1 : 0;
      if (reduced[i]! > reduced[best]!) best = i;
    }
    if (starts[g]! < starts[g + 1]! && reduced[best]! <= 0 && bonuses[g]! + reduced[best]! > 0) out[best] = 1;
    for (let i = starts[g]!; i < starts[g + 1]!; i++) if (out[i] === 1) time += times[i]!;
  }
  return time;
}

/** The λ of the least bound at given prices of needs: the bound is convex in it. */
function bestTimePrice(relaxed: Relaxed, priced: Float64Array): number {
  const reduced = new Float64Array(priced.length);
  const value = (time: number): number => {
    reducedInto(reduced, relaxed, priced, time);
    return boundOf(relaxed, time, reduced);
  };
  let [low, high] = [0, 1];
  while (value(2 * high) < value(high) && high < 1e12) high *= 2;
  high *= 2;
  for (let i = 0; i < 80; i++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (value(a) <= value(b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}

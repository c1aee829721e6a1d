/** A beginning: the first items decided, and what that leaves open for the others. */

import { type Bits, type Closures, eachBit, hasBit } from './closures.ts';
import type { Rows } from './completions.ts';
import type { Setting } from './setting.ts';

export interface Beginning {
  readonly time: number;
  readonly weight: number;
  /** Weight with the prices of needs. */ readonly priced: number;
  /** Open items that must be taken, that must be left. */ readonly forced: Bits;
  readonly barred: Bits;
  /** Time of the forced ones. */ readonly reserved: number;
  /** An item of the group that is being decided is taken. */ readonly isOpen: boolean;
  readonly before: Beginning | null;
  readonly isTaken: boolean;
  readonly bound: number;
  /** The same by the price of time alone, which feels what is forced and barred. */ readonly rank: number;
}

/** The item that is decided next. */
export interface Step {
  readonly i: number;
  readonly group: number;
  /** The last of its group. */ readonly isLast: boolean;
  readonly rows: Rows | null;
}

/** The next item taken or left; null where that breaks a need or the time. */
export function continued(
  beginning: Beginning,
  { i, group, isLast, rows }: Step,
  isTaken: boolean,
  setting: Setting,
): Beginning | null {
  const { relaxed, closures, prices, isAlone } = setting;
  const isForced = hasBit(beginning.forced, i);
  if (isTaken ? hasBit(beginning.barred, i) : isForced) return null;
  const bonus = isTaken && !beginning.isOpen ? relaxed.bonuses[group]! : 0;
  const time = isTaken ? beginning.time + relaxed.times[i]! : beginning.time;
  let { forced, barred, reserved } = beginning;
  if (!isAlone[i]) {
    const opened = openedBy(beginning, i, isTaken, closures, relaxed.times);
    if (opened === null) return null;
    ({ forced, barred, reserved } = opened);
  }
  if (time + reserved > relaxed.room) return null;
  const isOpen = beginning.isOpen || isTaken;
  const child = {
    time,
    weight: beginning.weight + (isTaken ? relaxed.weights[i]! + bonus : 0),
    priced: beginning.priced + (isTaken ? prices.priced[i]! + bonus : 0),
    forced,
    barred,
    reserved,
    isOpen: isLast ? false : isOpen,
    before: beginning,
    isTaken,
  };
  const bound = boundOf(child, i + 1, isOpen, group, setting);
  if (rows === null) return { ...child, bound, rank: bound };
  const row = (isOpen ? rows.open : rows.closed)[i + 1 - relaxed.starts[group]!]!;
  return { ...child, rank: bound, bound: Math.min(bound, child.priced + row[relaxed.room - time]!) };
}

interface Opened {
  readonly forced: Bits;
  readonly barred: Bits;
  readonly reserved: number;
}

/** What is forced and barred once an item is decided; null where both meet. */
function openedBy(
  { forced, barred, reserved }: Beginning,
  i: number,
  isTaken: boolean,
  { below, above }: Closures,
  times: Float64Array,
): Opened | null {
  const [more, into, other] = isTaken ? [below[i]!, forced, barred] : [above[i]!, barred, forced];
  const next = Uint32Array.from(into);
  let added = hasBit(forced, i) ? -times[i]! : 0;
  const [word, bit] = [i >>> 5, 1 << (i & 31)];
  for (let k = word; k < next.length; k++) {
    // What is decided already keeps to its needs by what it forced and barred.
    let rest = more[k]!;
    if (k === word) rest &= ~(bit | (bit - 1));
    if ((rest & other[k]!) !== 0) return null;
    if (isTaken) {
      let fresh = rest & ~next[k]!;
      while (fresh !== 0) {
        const low = fresh & -fresh;
        added += times[(k << 5) + 31 - Math.clz32(low)]!;
        fresh ^= low;
      }
    }
    next[k]! |= rest;
  }
  next[word]! &= ~bit;
  let same = other;
  if (hasBit(other, i)) {
    same = Uint32Array.from(other);
    same[word]! &= ~bit;
  }
  return isTaken
    ? { forced: next, barred: same, reserved: reserved + added }
    : { forced: same, barred: next, reserved };
}

/** From above, what a beginning may come to. */
function boundOf(
  beginning: Omit<Beginning, 'bound' | 'rank'>,
  from: number,
  isOpen: boolean,
  group: number,
  { relaxed, prices, later, ifForced, ifBarred }: Setting,
): number {
  const { starts, bonuses, room } = relaxed;
  const end = starts[group + 1]!;
  let [sum, best, mustBeIn] = [0, Number.NEGATIVE_INFINITY, false];
  for (let i = from; i < end; i++) {
    if (hasBit(beginning.barred, i)) continue;
    const value = prices.reduced[i]!;
    if (hasBit(beginning.forced, i)) {
      sum += value;
      mustBeIn = true;
    } else {
      if (value > 0) sum += value;
      if (value > best) best = value;
    }
  }
  const bonus = isOpen ? 0 : bonuses[group]!;
  const here =
    isOpen || mustBeIn || best > 0 ? sum + (mustBeIn || best > 0 ? bonus : 0) : Math.max(0, bonus + best);
  let change = 0;
  const beyond = (bits: Bits, by: Float64Array): void =>
    eachBit(bits, (i) => {
      if (i >= end) change += by[i]!;
    });
  beyond(beginning.forced, ifForced);
  beyond(beginning.barred, ifBarred);
  return beginning.priced + prices.time * (room - beginning.time) + here + later[group + 1]! + change;
}

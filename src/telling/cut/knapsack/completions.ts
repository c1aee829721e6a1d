/**
 * The greatest priced weight of all that is still open, for every time left: needs priced, times whole and exact.
 *
 *   O_k(t) = max( O_{k+1}(t), O_{k+1}(t − t_k) + p_k ),   C_k(t) = max( C_{k+1}(t), O_{k+1}(t − t_k) + p_k + b )
 *
 * O where the group's bonus is had, C where it is not; behind a group's last item both are C of the next group's first.
 */

import type { Relaxed } from './relaxation.ts';

export interface Rows {
  /** By item of the group, and one behind its last. */ readonly open: readonly Float64Array[];
  readonly closed: readonly Float64Array[];
}

export interface Completions {
  /** Of the whole problem. */ readonly bound: number;
  rowsOf(group: number): Rows;
}

/** Numbers kept at a time; 8 bytes each. */
const MOST_KEPT = 5e6;

/** @returns null where the time is too long to tell every tenth of it apart */
export function completionsOf(relaxed: Relaxed, priced: Float64Array): Completions | null {
  const { room, bonuses } = relaxed;
  if ((room + 1) * (bonuses.length + 1) > MOST_KEPT) return null;
  const heads: Float64Array[] = [];
  heads[bonuses.length] = new Float64Array(room + 1);
  for (let g = bonuses.length - 1; g >= 0; g--) {
    const rows = rowsAt(relaxed, priced, g, heads[g + 1]!);
    heads[g] = rows.closed[0]!;
  }
  return { bound: heads[0]![room]!, rowsOf: (g) => rowsAt(relaxed, priced, g, heads[g + 1]!) };
}

function rowsAt(
  { starts, times, bonuses }: Relaxed,
  priced: Float64Array,
  group: number,
  behind: Float64Array,
): Rows {
  const [first, end] = [starts[group]!, starts[group + 1]!];
  const open: Float64Array[] = [];
  const closed: Float64Array[] = [];
  open[end - first] = behind;
  closed[end - first] = behind;
  for (let i = end - 1; i >= first; i--) {
    const [nextOpen, nextClosed] = [open[i - first + 1]!, closed[i - first + 1]!];
    const [ownOpen, ownClosed] = [Float64Array.from(nextOpen), Float64Array.from(nextClosed)];
    const [time, value] = [times[i]!, priced[i]!];
    const withBonus = value + bonuses[group]!;
    for (let t = time; t < behind.length; t++) {
      const before = nextOpen[t - time]!;
      if (before + value > ownOpen[t]!) ownOpen[t] = before + value;
      if (before + withBonus > ownClosed[t]!) ownClosed[t] = before + withBonus;
    }
    open[i - first] = ownOpen;
    closed[i - first] = ownClosed;
  }
  return { open, closed };
}

/** The tables of a plug cut anew, read. */

import type { EngineBasis, Recut } from './model.ts';

/** Of its ends: what rounding may lie beyond them. */
const SLACK = 1e-9;

/** Straight between its places; null where there is no value, or beyond its ends. */
export function recutAt({ share }: Recut, values: readonly (number | null)[], wanted: number): number | null {
  const [first, last] = [share[0] ?? 0, share.at(-1) ?? 0];
  if (wanted < first * (1 - SLACK) || wanted > last * (1 + SLACK)) return null;
  const next = share.findIndex((each) => each >= wanted);
  const to = next < 0 ? share.length - 1 : Math.max(1, next);
  const [low, high] = [values[to - 1] ?? null, values[to] ?? null];
  if (low === null || high === null) return null;
  const [from, end] = [share[to - 1] ?? 0, share[to] ?? 0];
  const part = Math.min(1, Math.max(0, (wanted - from) / (end - from)));
  return low + part * (high - low);
}

/** What a recut adds to the thrust coefficient [–] at a share p_a/p0; null where its flow cannot be computed. */
export const addedByRecut = ({ recut }: EngineBasis, share: number): number | null =>
  recut === undefined ? 0 : recutAt(recut, recut.added, share);

import { NODE } from './points.ts';

/** Where characteristics of one family run together inside the flow: an internal shock. */
export interface ShockTrace {
  /** Where it begins [m]. */ readonly axial: number;
  readonly radius: number;
  /** Largest jump of the flow angle across it [rad]: how strong it gets. */ readonly strongestTurn: number;
}

/** Characteristics that meet within this many steps have met. */
const STEPS_TO_MEETING = 1.5;
/** A jump of the flow angle below this [rad] is a weak wave, not told as a shock. */
const LEAST_TURN = 0.01;

/**
 * Look along one line for neighbouring characteristics of one family that meet within the next step, and for the turn
 * across such a run of nodes; `known` is what the lines before had.
 * @param step [m] from line to line
 */
export function traceShock(
  known: ShockTrace | null,
  nodes: Float64Array,
  first: number,
  count: number,
  step: number,
): ShockTrace | null {
  const minus = strongestRun(nodes, first, count, step, -1);
  const plus = strongestRun(nodes, first, count, step, 1);
  const found = minus.turn > plus.turn ? minus : plus;
  if (found.turn < LEAST_TURN) return known;
  if (known === null) {
    return { axial: nodes[found.at]!, radius: nodes[found.at + 1]!, strongestTurn: found.turn };
  }
  return found.turn > known.strongestTurn ? { ...known, strongestTurn: found.turn } : known;
}

/** The run of nodes, wall to axis, across which characteristics of one family converge and the flow turns most. */
function strongestRun(
  nodes: Float64Array,
  first: number,
  count: number,
  step: number,
  family: -1 | 1,
): { readonly turn: number; readonly at: number } {
  let best = 0;
  let bestAt = first;
  let run = 0;
  let runAt = first;
  for (let at = first; at < first + (count - 1) * NODE; at += NODE) {
    const next = at + NODE;
    const upper = nodes[at + 2]! + family * nodes[at + 4]!;
    const lower = nodes[next + 2]! + family * nodes[next + 4]!;
    const middle = 0.5 * (upper + lower);
    const apart =
      (nodes[at + 1]! - nodes[next + 1]!) * Math.cos(middle) - (nodes[at]! - nodes[next]!) * Math.sin(middle);
    if ((lower - upper) * STEPS_TO_MEETING * step > apart) {
      if (run === 0) runAt = at;
      run += Math.abs(nodes[next + 2]! - nodes[at + 2]!);
      if (run > best) {
        best = run;
        bestAt = runAt;
      }
    } else run = 0;
  }
  return { turn: best, at: bestAt };
}

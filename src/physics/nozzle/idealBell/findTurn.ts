import { attempt, type Problem, type ProblemError } from '../../../numerics/problem.ts';

/** Accuracy of the turn [rad]. */
const ACCURACY = 1e-7;
const SCAN = 12;

/**
 * The turn of the arc at which an increasing function is 0, by a scan from below and then bisection with secants.
 *
 * A turn at which the function cannot be had (characteristics run together) ends the range from above.
 *
 * @throws what `none` makes of it where the function has no zero in the range
 */
export function findTurn(
  at: (turn: number) => number,
  range: { readonly least: number; readonly most: number },
  none: (problem?: Problem) => ProblemError,
): number {
  let low = range.least;
  let fLow = at(low);
  if (fLow > 0) throw none();
  for (let i = 1; i <= SCAN; i++) {
    // Denser at the start, where small turns change much.
    const turn = range.least + (range.most - range.least) * (i / SCAN) ** 2;
    const value = attempt(() => at(turn));
    if (!value.ok) throw none(value.problem);
    if (value.value >= 0) return between(at, low, fLow, turn, value.value);
    low = turn;
    fLow = value.value;
  }
  throw none();
}

function between(at: (turn: number) => number, from: number, fFrom: number, to: number, fTo: number): number {
  let [low, fLow, high, fHigh] = [from, fFrom, to, fTo];
  for (let i = 0; i < 60 && high - low > ACCURACY; i++) {
    const secant = low - (fLow * (high - low)) / (fHigh - fLow);
    const margin = 0.02 * (high - low);
    const inside = Math.min(Math.max(secant, low + margin), high - margin);
    const turn = i % 4 === 3 ? 0.5 * (low + high) : inside;
    const value = at(turn);
    if (value === 0) return turn;
    if (value < 0) {
      low = turn;
      fLow = value;
    } else {
      high = turn;
      fHigh = value;
    }
  }
  return 0.5 * (low + high);
}

/** What an input would have to be so that one expression reaches another: both followed over the range, crossings placed. */

import { ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import { compileTest, scopeOf } from '../expression/index.ts';
import { followedOf } from '../sweeps/followed.ts';
import type { Sweep, SweepOptions } from '../sweeps/model.ts';
import { moverOf } from '../sweeps/mover.ts';
import { sweep } from '../sweeps/sweep.ts';
import { type Goal, goalOf } from './goal.ts';
import type { Need, NeededValue, NeedRequest, Stretch } from './model.ts';
import { neededBand } from './neededBand.ts';

/** Points that look for crossings; a pair closer together than two of them may be missed. */
const POINTS = 25;

export interface NeedOptions extends Pick<SweepOptions<Need>, 'signal' | 'onProgress'> {
  /** False: no bands. */ readonly bands?: boolean;
}

/**
 * @throws ProblemError where the goal is no comparison of two numbers of one dimension, or the range is none; what the crew throws
 */
export async function findNeed(
  study: Study,
  crew: Crew,
  request: NeedRequest,
  { bands = true, ...options }: NeedOptions = {},
): Promise<Need> {
  const goal = goalOf(request.so);
  requireAlike(study, request.so);
  const of = [goal.left, goal.right];
  const { range, engines } = request;
  const found = await sweep(
    study,
    crew,
    { id: request.id, title: null, of, range, engines, points: POINTS },
    options,
  );
  const followed = followedOf(study, of, [range]);
  const mover = moverOf(study, range, engines, followed.engines);
  const [left, right] = found.curves;
  const difference = left!.points.map(({ x, y }, i) => {
    const other = right!.points[i]!.y;
    return { x, y: y === null || other === null ? null : y - other };
  });
  const values = await Promise.all(
    found.crossings.map(async ({ x, y, curves, jump }): Promise<NeededValue> => {
      // The first of the pair is the higher one before.
      const leftAboveBefore = curves[0] === 0;
      const band =
        bands && !jump ? await neededBand(study, crew, followed, mover, x, difference, options.signal) : null;
      return {
        x,
        holdsAbove: leftAboveBefore !== goal.leftAbove,
        isOpen: band !== null,
        low: band?.low ?? null,
        high: band?.high ?? null,
        value: jump ? null : y,
      };
    }),
  );
  const stretches = stretchesOf(found, goal);
  return {
    request,
    range: found.range,
    found: values,
    stretches,
    nearest: stretches.some(({ holds }) => holds === true) ? null : nearestOf(found, goal),
    sweep: found,
    held: found.held,
  };
}

const LEFT_OPEN: ReadonlySet<string> = new Set(['ambient-missing', 'time-missing']);

/** Both sides are of one dimension; a place that they leave open is the sweep's affair. */
function requireAlike(study: Study, so: string): void {
  const compiled = compileTest(so, scopeOf(study));
  if (compiled.ok || LEFT_OPEN.has(compiled.problem.code)) return;
  const { start, end, ...problem } = compiled.problem;
  throw new ProblemError({ ...problem, where: so, facts: { ...problem.facts, start, end } });
}

/** By how much the comparison is missed; null where a side has no value. */
function missing({ curves: [left, right] }: Sweep, { leftAbove }: Goal, point: number): number | null {
  const [l, r] = [left?.points[point]?.y ?? null, right?.points[point]?.y ?? null];
  return l === null || r === null ? null : leftAbove ? r - l : l - r;
}

/** From point to point; neighbours that say the same are one stretch, and crossings are where one ends. */
function stretchesOf(sweep: Sweep, goal: Goal): readonly Stretch[] {
  const xs = sweep.curves[0]!.points.map(({ x }) => x);
  const edges = sweep.crossings.map(({ x }) => x);
  const stretches: Stretch[] = [];
  xs.forEach((x, i) => {
    const miss = missing(sweep, goal, i);
    if (edges.includes(x)) return;
    const holds = miss === null ? null : miss <= 0;
    const before = stretches.at(-1);
    if (before?.holds === holds) stretches[stretches.length - 1] = { ...before, to: x };
    else {
      const edge = edges.find((at) => before !== undefined && at > before.to && at < x);
      const from = before === undefined ? x : (edge ?? x);
      if (before !== undefined && edge !== undefined)
        stretches[stretches.length - 1] = { ...before, to: edge };
      stretches.push({ from, to: x, holds });
    }
  });
  return stretches;
}

function nearestOf(sweep: Sweep, goal: Goal): Need['nearest'] {
  let best: Need['nearest'] = null;
  sweep.curves[0]!.points.forEach(({ x }, i) => {
    const miss = missing(sweep, goal, i);
    if (miss !== null && (best === null || miss < best.missing)) best = { x, missing: miss };
  });
  return best;
}

/** A leg that says how a quantity goes with an input, held against the followed curve. */

import { ProblemError } from '../../numerics/problem.ts';
import type { LegCourse, LegInput, Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import { findQuantity } from '../catalogue.ts';
import { showStated } from '../display.ts';
import { type Sweep, sweep } from '../sweeps/index.ts';
import { courseFound } from './courseFound.ts';
import { legRange } from './legRange.ts';
import type { CheckedLeg, Relation } from './model.ts';

/** Enough to see a turn; a finer one hides between two of them. */
const POINTS = 11;

/** @throws what the crew throws, an abort among it */
export async function followedLeg(
  study: Study,
  crew: Crew,
  { say, main }: LegInput,
  course: LegCourse,
  where: string,
  signal?: AbortSignal,
): Promise<CheckedLeg> {
  const head = { say, main, claim: claimOf(course), share: null };
  try {
    const range = legRange(study, course, enginesIn(study, course.of));
    const request = { id: null, title: null, of: [course.of], range, engines: null, points: POINTS };
    const found = await sweep(study, crew, request, signal ? { signal } : {});
    const places = found.curves[0]!.points.flatMap(({ x, y }) => (y === null ? [] : [{ x, y }]));
    const { verdict, words, steepness } = courseFound(places, course.goes);
    const holes = found.curves[0]!.holes.map(({ problem }) => `Not everywhere: ${problem.what}`);
    return {
      ...head,
      verdict,
      found: words,
      steepness,
      conditions: [...conditionsOf(found, places.length), ...holes],
      relations: relationsOf(found),
      problem: null,
    };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    const problem = { ...error.problem, where: `${where}.as` };
    const none = { steepness: null, conditions: [], relations: [] };
    return { ...head, verdict: 'can’t tell', found: problem.what, ...none, problem };
  }
}

const claimOf = ({ of, over, goes }: LegCourse): string => `${of} goes ${goes.text} with ${over}`;

/** Ids that the expression names; all where it names none. */
function enginesIn({ engines }: Study, of: string): readonly string[] {
  const words = new Set(of.match(/[\p{L}\p{N}_-]+(?=\.)/gu));
  const named = engines.map(({ id }) => id).filter((id) => words.has(id));
  return named.length > 0 ? named : engines.map(({ id }) => id);
}

function conditionsOf({ range, held }: Sweep, count: number): readonly string[] {
  const { label, quantity, from, to } = range;
  const [low, high] = [from, to].map((value) => showStated(quantity, value).text);
  return [`${label} from ${low} to ${high}, ${count} values.`, ...(held.short === '' ? [] : [held.short])];
}

function relationsOf({ curves: [curve] }: Sweep): readonly Relation[] {
  const entry = curve?.quantity ? findQuantity(curve.quantity) : undefined;
  if (entry === undefined) return [];
  const { name, label, equation, source } = entry;
  return [{ quantity: name, label, equation, source }];
}

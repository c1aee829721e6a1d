/** The sweeps and maps of a study as requests: what it leaves open is filled with what is worth looking over. */

import type { MapInput, Study, SweepInput, SweptInput } from '../../study/model.ts';
import { ownersOf } from '../../study/owners.ts';
import { settableConditions } from '../inputs/conditions.ts';
import type { SweepRange } from '../inputs/model.ts';
import { settableInputs } from '../inputs/settableInputs.ts';
import type { MapRequest, Spacing, SweepRequest, SweptRange } from './model.ts';

/** Points of a sweep, and along each side of a map, where the study does not say. */
export const USUAL_POINTS = { sweep: 33, map: 17 } as const;
/** From this ratio of the ends on, equal ratios tell more than even steps. */
const WIDE = 20;

export function sweepRequestOf(
  study: Study,
  { id, title, of, range, engines, points }: SweepInput,
): SweepRequest {
  return {
    id,
    title,
    of,
    range: sweptRangeOf(study, range, engines),
    engines,
    points: points ?? USUAL_POINTS.sweep,
  };
}

export function mapRequestOf(
  study: Study,
  { id, title, of, across, up, engines, points }: MapInput,
): MapRequest {
  return {
    id,
    title,
    of,
    across: sweptRangeOf(study, across, engines),
    up: sweptRangeOf(study, up, engines),
    engines,
    points: points ?? USUAL_POINTS.map,
  };
}

export function sweptRangeOf(
  study: Study,
  { over, from, to, steps }: SweptInput,
  engines: readonly string[] | null,
): SweptRange {
  const usual = usualRange(study, over, engines);
  const ends = { from: from?.value ?? usual.from, to: to?.value ?? usual.to };
  return { over, ...ends, spacing: spacingOf(steps, ends) };
}

function spacingOf(
  steps: SweptInput['steps'],
  { from, to }: { readonly from: number; readonly to: number },
): Spacing {
  if (steps !== null) return steps === 'even' ? 'even' : 'in equal ratios';
  return from > 0 && to / from >= WIDE ? 'in equal ratios' : 'even';
}

/** Of the first engine that has this input; a range of nothing, to be refused with the input's name, where none has. */
function usualRange(study: Study, over: string, named: readonly string[] | null): SweepRange {
  const condition = settableConditions.find(({ name }) => name === over);
  if (condition !== undefined) return condition.sweep;
  const [, owner, rest] = /^(?:engines|vehicles)\.([^.]+)\.(.+)$/.exec(over) ?? [];
  const input = rest ?? over;
  const engines = ownersOf(study).filter(({ id }) =>
    owner === undefined ? (named?.includes(id) ?? true) : id === owner,
  );
  const entries = engines.flatMap((engine) => settableInputs(engine).filter(({ name }) => name === input));
  return entries[0]?.sweep ?? { from: 0, to: 1, spacing: 'even' };
}

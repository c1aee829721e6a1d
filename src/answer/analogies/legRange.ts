/** Over which values the input of a leg moves. */

import { ProblemError } from '../../numerics/problem.ts';
import type { LegCourse, Study } from '../../study/model.ts';
import { isVehicle, ownersOf } from '../../study/owners.ts';
import { parseQuantity } from '../../study/units.ts';
import { type QuantityKind, quantityKinds } from '../../study/unitTable.ts';
import { quantity } from '../catalogue.ts';
import { exponentsOf, sameDimension } from '../expression/dimensions.ts';
import type { Exponents } from '../expression/model.ts';
import { settableConditions, settableInputs } from '../inputs/index.ts';
import type { SweepRange } from '../inputs/model.ts';
import type { SweptRange } from '../sweeps/index.ts';

interface Movable {
  readonly over: string;
  readonly dimension: Exponents | null;
  readonly sweep: SweepRange;
}

/**
 * The range that the leg states, or the one worth looking at.
 *
 * @param engines of the leg's expression
 * @throws ProblemError where an end cannot be read
 */
export function legRange(
  study: Study,
  { over, from, to }: LegCourse,
  engines: readonly string[],
): SweptRange {
  const moves = movable(study, over, engines);
  if (moves === null) return { over, from: 1, to: 2, spacing: 'even' };
  const { sweep, dimension } = moves;
  const [low, high] = [endAt(from, dimension, sweep.from), endAt(to, dimension, sweep.to)];
  const spacing = low > 0 && high / low >= WIDE ? 'in equal ratios' : 'even';
  return { over: moves.over, from: low, to: high, spacing };
}

/** From this ratio of its ends on a range is followed in equal ratios. */
const WIDE = 3;

/** Null where there is no such input: the sweep then says so. */
function movable(study: Study, over: string, engines: readonly string[]): Movable | null {
  const condition = settableConditions.find(({ name }) => name === over);
  if (condition !== undefined) {
    const { dimension } = quantity(condition.quantity);
    return { over, dimension: exponentsOf(dimension), sweep: condition.sweep };
  }
  const owners = ownersOf(study);
  const ids = owners.map(({ id }) => id);
  const path = over.replace(/^(engines|vehicles)\./, '').split('.');
  const named = ids.includes(path[0] ?? '') ? path[0]! : null;
  const input = named === null ? over : path.slice(1).join('.');
  for (const id of named === null ? engines : [named]) {
    const engine = owners.find((one) => one.id === id);
    const entry = engine && settableInputs(engine).find(({ name }) => name === input);
    if (entry === undefined) continue;
    return {
      over:
        named === null ? over : `${engine && isVehicle(engine) ? 'vehicles' : 'engines'}.${named}.${input}`,
      dimension: entry.dimension,
      sweep: entry.sweep,
    };
  }
  return null;
}

function endAt(text: string | null, dimension: Exponents | null, otherwise: number): number {
  if (text === null) return otherwise;
  const kinds = (Object.keys(quantityKinds) as QuantityKind[]).filter(
    (kind) => dimension === null || sameDimension(quantityKinds[kind].dimension, dimension),
  );
  const read = parseQuantity(text, ...kinds);
  if (!read.ok) throw new ProblemError(read.problem);
  return read.value.value;
}

/** What the models' errors make of the size, where it follows from a thrust. */

import type { Size } from '../../study/model.ts';
import type { EngineSolution } from '../solution.ts';
import { errorsAt } from './errorsAt.ts';
import type { SizeError } from './model.ts';

/**
 * A stated thrust is met whatever the losses are: greater losses make the throat larger, A_t ∝ 1/(C_F − ΔC_F). One that is
 * taken over from another engine passes that engine's errors on.
 *
 * @param sizedAt ambient pressure of that thrust [Pa]; unused where no thrust is stated
 */
export function sizeErrors(
  solution: EngineSolution,
  size: Size,
  sizedAt: number | null,
  others: ReadonlyMap<string, EngineSolution>,
): readonly SizeError[] {
  if (size.by === 'same') {
    const other = others.get(size.as);
    if (other === undefined) return [];
    if (size.what !== 'thrust' || sizedAt === null) return other.sizeErrors();
    return productOf(thrustFactors(other, sizedAt), inverseOf(coefficientFactors(solution, sizedAt)));
  }
  return size.by === 'thrust' && sizedAt !== null ? inverseOf(coefficientFactors(solution, sizedAt)) : [];
}

/** Factors of the thrust at a place, size included. */
function thrustFactors(solution: EngineSolution, sizedAt: number): readonly SizeError[] {
  return productOf(coefficientFactors(solution, sizedAt), solution.sizeErrors());
}

function coefficientFactors(solution: EngineSolution, sizedAt: number): readonly SizeError[] {
  const found = errorsAt(solution, solution.nozzle.at(sizedAt), null, 'thrustCoefficient');
  if (found === null) return [];
  const { coefficient, errors } = found;
  return errors.flatMap(({ name, source, low, high }) =>
    low.coefficient === 0 && high.coefficient === 0
      ? []
      : [
          {
            name,
            source,
            low: 1 + low.coefficient / coefficient,
            high: 1 + high.coefficient / coefficient,
          },
        ],
  );
}

function inverseOf(factors: readonly SizeError[]): readonly SizeError[] {
  return factors.map((factor) => ({ ...factor, low: 1 / factor.low, high: 1 / factor.high }));
}

function productOf(a: readonly SizeError[], b: readonly SizeError[]): readonly SizeError[] {
  const alone = b.filter(({ name }) => !a.some((one) => one.name === name));
  return [
    ...a.map((one) => {
      const other = b.find(({ name }) => name === one.name);
      return other === undefined ? one : { ...one, low: one.low * other.low, high: one.high * other.high };
    }),
    ...alone,
  ];
}

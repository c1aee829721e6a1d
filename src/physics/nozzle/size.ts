import { ProblemError } from '../../numerics/problem.ts';
import type { NozzleModel } from './model.ts';

/** What fixes the engine's size. */
export type NozzleSize =
  | { readonly by: 'throat' /** [m] */; readonly diameter: number }
  | { readonly by: 'exit' /** [m] */; readonly diameter: number }
  | {
      readonly by: 'thrust';
      /** [N] */ readonly thrust: number;
      /** [Pa] ambient at which it is meant */ readonly ambientPressure: number;
    };

/**
 * Throat area [m²] that gives a size.
 *
 *   by throat:  A_t = π d²/4
 *   by exit:    A_t = π d²/(4 ε)
 *   by thrust:  A_t = F / ((C_F − ΔC_F) p0)
 *
 * @param coefficientLost ΔC_F [–]: what friction and slow chemistry take of the model's thrust
 * @throws ProblemError `size-not-positive`, `no-thrust-to-size-by`
 */
export function throatAreaFor(size: NozzleSize, model: NozzleModel, coefficientLost = 0): number {
  switch (size.by) {
    case 'throat':
      requirePositive(size.diameter, 'The throat diameter', 'm', 'size.throat');
      return circle(size.diameter);
    case 'exit':
      requirePositive(size.diameter, 'The exit diameter', 'm', 'size.exit');
      return circle(size.diameter) / model.spec.areaRatio;
    case 'thrust':
      requirePositive(size.thrust, 'The thrust', 'N', 'size.thrust');
      return (
        size.thrust /
        (coefficientToSizeBy(size.ambientPressure, model, coefficientLost) * model.expansion.chamber.pressure)
      );
  }
}

function coefficientToSizeBy(ambientPressure: number, model: NozzleModel, coefficientLost: number): number {
  const at = model.at(ambientPressure);
  const left = at.thrustCoefficient === null ? 0 : at.thrustCoefficient - coefficientLost;
  if (left > 0) return left;
  throw new ProblemError({
    code: 'no-thrust-to-size-by',
    what: `The model has no thrust at ${Math.round(ambientPressure)} Pa to size the engine by.`,
    why:
      at.absent ?? 'The surroundings press harder on the exit than the gas pushes: the full flow would pull.',
    mend: 'State the thrust in vacuum or at a higher altitude, give the throat diameter, or lower the area ratio.',
    where: 'size.thrust',
    facts: { ambientPressure, thrustCoefficientIfFull: at.thrustCoefficientIfFull, flow: at.flow.state },
  });
}

function circle(diameter: number): number {
  return (Math.PI * diameter * diameter) / 4;
}

function requirePositive(value: number, what: string, unit: string, where: string): void {
  if (value > 0 && Number.isFinite(value)) return;
  throw new ProblemError({
    code: 'size-not-positive',
    what: `${what} is ${value} ${unit}; it has to be above 0.`,
    mend: `Give a positive value.`,
    where,
    facts: { value },
  });
}

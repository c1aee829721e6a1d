/** The published scatter of the figures of an engine, error by error. */

import type { ThrustAt } from '../../physics/nozzle/model.ts';
import type { Scatter } from '../asked/model.ts';
import type { ThrustFigures } from '../model.ts';
import type { EngineSolution } from '../solution.ts';
import { errorsAt } from './errorsAt.ts';
import { lossErrors } from './lossErrors.ts';
import type { ErrorEffect } from './model.ts';

/** Factors by which one error moves an engine as a whole. */
interface Moved extends ErrorEffect {
  /** Times the throat's area [–]. */ readonly area: number;
}

type End = 'low' | 'high';

/**
 * Scatter of one figure at a place:
 *
 *   F = (C_F + δC_F) p₀ A_t k      I_sp = F e / (ṁ s k g₀)      k: size, e: efficiency, each as the error moves it
 *
 * @param value at best [SI], as figuresAt gives it
 */
export function figureScatter(
  solution: EngineSolution,
  at: ThrustAt,
  altitude: number | null,
  figure: keyof ThrustFigures,
  value: number,
): readonly Scatter[] {
  const key = figure === 'thrustIfFull' ? 'thrustCoefficientIfFull' : 'thrustCoefficient';
  const found = errorsAt(solution, at, altitude, key);
  if (found === null || found.coefficient === 0) return [];
  const times = ({ coefficient, efficiency, area }: Moved): number => {
    const thrust = 1 + coefficient / found.coefficient;
    if (figure === 'thrustCoefficient') return thrust;
    return figure === 'specificImpulse' ? thrust * efficiency : thrust * area;
  };
  return scatterOf(solution, found.errors, value, times);
}

/**
 * Scatter of a number that hangs on size and efficiency alone.
 *
 * @param power of the throat's area and of the efficiency in it, e.g. 1 and −1 for the mass flow, ½ and 0 for a length
 */
export function sizeScatter(
  solution: EngineSolution,
  value: number,
  power: { readonly area: number; readonly efficiency: number },
): readonly Scatter[] {
  const times = ({ efficiency, area }: Moved): number => area ** power.area * efficiency ** power.efficiency;
  const errors = power.efficiency === 0 ? [] : lossErrors(solution, 1);
  return scatterOf(solution, errors, value, times, power.area !== 0);
}

function scatterOf(
  solution: EngineSolution,
  errors: readonly {
    readonly name: string;
    readonly source: string;
    readonly low: ErrorEffect;
    readonly high: ErrorEffect;
  }[],
  value: number,
  times: (moved: Moved) => number,
  sized = true,
): readonly Scatter[] {
  const sizes = sized ? solution.sizeErrors() : [];
  const names = [...new Set([...errors, ...sizes].map(({ name }) => name))];
  return names.flatMap((name) => {
    const error = errors.find((one) => one.name === name);
    const size = sizes.find((one) => one.name === name);
    const end = (which: End): number =>
      value * times({ ...(error?.[which] ?? UNMOVED), area: size?.[which] ?? 1 });
    const [low, high] = [end('low'), end('high')];
    const still = (x: number): boolean => Math.abs(x - value) <= 1e-12 * Math.abs(value);
    return still(low) && still(high) ? [] : [{ name, low, high, source: (error ?? size)!.source }];
  });
}

const UNMOVED: ErrorEffect = { coefficient: 0, efficiency: 1 };

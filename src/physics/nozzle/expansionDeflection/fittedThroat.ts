import { findBracketedRoot } from '../../../numerics/bracketedRoot.ts';
import { ProblemError } from '../../../numerics/problem.ts';
import { nuAtMach, type SupersonicTable, tableStateAt } from '../../flow/gasTable.ts';
import type { ExpansionDeflectionSpec } from '../model.ts';
import { type DeflectionShape, deflectionShape } from './shape.ts';
import { requireBore, throatAhead } from './throatAhead.ts';

/** Least Mach number on the throat line [–]: just past sonic, so that the flow can be marched. */
export const LEAST_LINE_MACH = 1.03;
/** Beyond all that `fits` lets through. */
const HIGHEST_LINE_MACH = 2;
/** Share of the line’s area to which it is fitted, within at most so many rounds: each leaves a sixth of the last one’s miss, or less. */
const FITTED_TO = 1e-7;
const ROUNDS = 30;

/** A shape whose narrowest passage is one throat area, and the flow on its throat line. */
export interface FittedThroat {
  readonly shape: DeflectionShape;
  /** ν on the throat line [rad] */ readonly lineNu: number;
}

/**
 * The passage is narrowest ahead of the throat line, and that is the throat: the line is as much wider as it must be, and the
 * flow there as much faster than sound, but no slower than Mach 1.03.
 *
 * @throws ProblemError `pintle-too-small`, `throat-does-not-fit`, `pintle-too-wide`, `deflection-walls-do-not-join`
 */
export function fittedThroat(spec: ExpansionDeflectionSpec, table: SupersonicTable): FittedThroat {
  requireBore(spec.pintleAreaRatio, spec.throatAngle);
  const leastNu = nuAtMach(table, LEAST_LINE_MACH);
  const least = areaRatioAt(table, leastNu);
  let ratio = least;
  for (let round = 0; round < ROUNDS; round++) {
    const shape = deflectionShape(spec, ratio);
    const next = Math.max(least, ratio / throatAhead(shape).narrowest);
    if (Math.abs(next / ratio - 1) < FITTED_TO)
      return { shape, lineNu: ratio === least ? leastNu : nuAtAreaRatio(table, ratio, leastNu) };
    ratio = next;
  }
  throw notFitted(spec);
}

/** Area over the sonic area at a Prandtl–Meyer angle [–]. */
export function areaRatioAt(table: SupersonicTable, nu: number): number {
  const { density, speed } = tableStateAt(table, nu);
  return table.sonicMassFlux / (density * speed);
}

function nuAtAreaRatio(table: SupersonicTable, ratio: number, from: number): number {
  return findBracketedRoot((nu) => areaRatioAt(table, nu) - ratio, from, nuAtMach(table, HIGHEST_LINE_MACH), {
    valueTolerance: 1e-12,
    widthTolerance: 1e-12,
  }).root;
}

function notFitted({ pintleAreaRatio }: ExpansionDeflectionSpec): ProblemError {
  return new ProblemError({
    code: 'throat-does-not-fit',
    what: `Round a pintle of ${pintleAreaRatio} throat areas no walls were found whose narrowest passage is the throat.`,
    mend: 'Give a larger pintle, or a flatter throat angle.',
    where: 'nozzle.pintleAreaRatio',
    facts: { pintleAreaRatio },
  });
}

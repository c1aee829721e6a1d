/** How single numbers are read off a solved engine: what a reader is handed, and what it hands back. */

import { ProblemError } from '../../numerics/problem.ts';
import type { Absence } from '../absences.ts';
import type { EngineSolution } from '../solution.ts';
import type { Alternative, Ask, AskedStation, Scatter } from './model.ts';
import type { Surroundings } from './surroundings.ts';

/** One question at one engine, its places made out. */
export interface Asked {
  readonly solution: EngineSolution;
  readonly quantity: string;
  /** Read by quantities of a place only. */ readonly around: Surroundings;
  /** Read by quantities along a wall only. */ readonly station: AskedStation;
  readonly part: string | null;
  readonly ask: Ask;
}

export interface Read {
  readonly value: number;
  readonly scatter?: readonly Scatter[];
  readonly alternatives?: readonly Alternative[];
}

/** @throws ProblemError where there is no value */
export type Reader = (asked: Asked) => Read | number;

/** Readers by the name of the quantity. */
export type Readers = Readonly<Record<string, Reader>>;

/** Stops reading: there is no value, for a reason that the answer would give. */
export function absent({ quantity }: Asked, { why, mend }: Absence): never {
  throw new ProblemError({ code: 'no-value', what: why, mend, where: quantity });
}

/** The value, or the reason why there is none. */
export function orAbsent(asked: Asked, value: number | null | undefined, absence: () => Absence): number {
  return value ?? absent(asked, absence());
}

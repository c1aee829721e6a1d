/** The printed answer of a cycle; what is not there has its reason. */

import { attempt, type Problem } from '../../numerics/problem.ts';
import { STANDARD_ATMOSPHERE } from '../../physics/constants.ts';
import type { EngineSolution } from '../solution.ts';
import { type CycleFigure, cycleFigures, engineFiguresAt } from './cycleFigures.ts';
import { massFigures, massOf } from './massFigures.ts';
import type { CycleAnswer, CycleNumbers, EngineFigures, MassAnswer } from './model.ts';

export interface CycleTold {
  readonly cycle: CycleAnswer;
  readonly mass: MassAnswer | null;
  readonly absences: readonly { readonly path: string; readonly why: string; readonly mend: string }[];
}

export function cycleAnswer(solution: EngineSolution): CycleTold {
  const absences: { path: string; why: string; mend: string }[] = [];
  const orReason = <T>(path: string, compute: () => T): T | null => {
    const outcome = attempt(compute);
    if (outcome.ok) return outcome.value;
    absences.push({ path, ...inTwoParts(outcome.problem) });
    return null;
  };
  const numbers = Object.fromEntries(
    (Object.keys(cycleFigures) as CycleFigure[]).map((key) => [
      key,
      orReason(`cycle.${key}`, () => cycleFigures[key](solution)),
    ]),
  ) as unknown as CycleNumbers;
  const figures = (
    place: 'vacuum' | 'seaLevel',
    pressure: number,
    altitude: number | null,
  ): EngineFigures => {
    const at = attempt(() => engineFiguresAt(solution, pressure, altitude));
    const of = (key: keyof EngineFigures): number | null =>
      at.ok
        ? at.value[key]
        : orReason(`cycle.${place}.${key}`, () => engineFiguresAt(solution, pressure, altitude)[key]);
    return { thrust: of('thrust'), specificImpulse: of('specificImpulse') };
  };
  const reach = attempt(() => solution.cycle().reach().setBy);
  const mass = orReason('mass', (): MassAnswer => {
    const { low, high, relations, value } = massOf(solution);
    return { engine: value, low, high, thrustToWeight: massFigures.thrustToWeight(solution), relations };
  });
  const cycle: CycleAnswer = {
    kind: solution.input.cycle!.kind,
    vacuum: figures('vacuum', 0, null),
    seaLevel: figures('seaLevel', STANDARD_ATMOSPHERE, 0),
    ...numbers,
    reachSetBy: reach.ok ? reach.value : null,
  };
  if (!reach.ok) absences.push({ path: 'cycle.reachSetBy', ...inTwoParts(reach.problem) });
  return { cycle, mass, absences };
}

function inTwoParts({ what, why, mend }: Problem): { why: string; mend: string } {
  return { why: why === undefined ? what : `${what} ${why}`, mend };
}

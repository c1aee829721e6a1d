/** The solved engines behind a clip: rows and plumes at any altitude, each found once. */

import { rowAt } from '../../answer/conditions.ts';
import type { ConditionRow, EngineAnswer, StudyAnswer } from '../../answer/model.ts';
import { plumeAt } from '../../answer/plume.ts';
import type { EngineSolution } from '../../answer/solution.ts';
import type { SolvedStudy } from '../../answer/solve.ts';
import { ambientAt } from '../figures/conditions.ts';
import type { Altitude } from '../figures/options.ts';

export interface LiveEngines {
  /** By engine id. */ rowsAt(altitude: Altitude): Readonly<Record<string, ConditionRow>>;
  /** The answer, the plume of each engine computed for exactly this altitude. */
  answerAt(altitude: Altitude): StudyAnswer;
}

/** Altitudes kept: there and back shows each one twice, held ends often. */
const KEPT = 4096;

export function liveEngines({ answer, solutions }: SolvedStudy): LiveEngines {
  const rows = new Map<Altitude, Readonly<Record<string, ConditionRow>>>();
  const answers = new Map<Altitude, StudyAnswer>();
  return {
    rowsAt: (altitude) =>
      kept(rows, altitude, () => ofAll(solutions, (solution) => rowIn(solution, altitude))),
    answerAt: (altitude) =>
      kept(answers, altitude, () => ({
        ...answer,
        engines: Object.fromEntries(
          Object.entries(answer.engines).map(([id, engine]) => [
            id,
            withPlume(engine, solutions.get(id), altitude),
          ]),
        ),
      })),
  };
}

function kept<T>(map: Map<Altitude, T>, altitude: Altitude, find: () => T): T {
  const known = map.get(altitude);
  if (known !== undefined) return known;
  const found = find();
  if (map.size >= KEPT) map.clear();
  map.set(altitude, found);
  return found;
}

function ofAll<T>(
  solutions: ReadonlyMap<string, EngineSolution>,
  read: (solution: EngineSolution) => T,
): Readonly<Record<string, T>> {
  return Object.fromEntries([...solutions].map(([id, solution]) => [id, read(solution)]));
}

const rowIn = (solution: EngineSolution, altitude: Altitude): ConditionRow =>
  rowAt(solution, ambientAt(altitude), altitude === 'vacuum' ? null : altitude);

function withPlume(
  engine: EngineAnswer,
  solution: EngineSolution | undefined,
  altitude: Altitude,
): EngineAnswer {
  if (solution === undefined || altitude === 'vacuum') return engine;
  const here = { altitude, ...plumeAt(solution, ambientAt(altitude)) };
  return { ...engine, plume: { ...engine.plume, altitudes: [here] } };
}

/** The engines of a study at part throttle, each step solved once, when it is first shown. */

import { type EngineStates, engineStates } from '../../answer/asked/engineStates.ts';
import { rowAt } from '../../answer/conditions.ts';
import { engineAnswer } from '../../answer/engineAnswer.ts';
import type { Materials } from '../../answer/materials.ts';
import type { ConditionRow, EngineAnswer, StudyAnswer } from '../../answer/model.ts';
import { plumeAt } from '../../answer/plume.ts';
import type { SolvedStudy } from '../../answer/solve.ts';
import { ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import { ambientAt } from '../figures/conditions.ts';
import type { Altitude } from '../figures/options.ts';

/** What is needed to solve an engine anew. */
export interface Anew {
  readonly study: Study;
  readonly materials: Materials;
}

export interface Throttled {
  /** The answer with these engines at that throttle. */ readonly answer: StudyAnswer;
  readonly rows: Readonly<Record<string, ConditionRow>>;
}

/** By throttle, chamber pressure over the stated one [–]. */
export function throttledEngines(
  { answer }: SolvedStudy,
  { study, materials }: Anew,
  ids: readonly string[],
  altitude: Altitude,
): (throttle: number) => Throttled {
  const states = engineStates(materials);
  const known = new Map<number, Throttled>();
  return (throttle) => {
    const before = known.get(throttle);
    if (before !== undefined) return before;
    const engines: Record<string, EngineAnswer> = { ...answer.engines };
    const rows: Record<string, ConditionRow> = {};
    for (const id of ids) {
      const { engine, row } = engineAt(states, study, id, throttle, altitude);
      engines[id] = engine;
      rows[id] = row;
    }
    const found = { answer: { ...answer, engines }, rows };
    known.set(throttle, found);
    return found;
  };
}

function engineAt(
  states: EngineStates,
  study: Study,
  id: string,
  throttle: number,
  altitude: Altitude,
): { readonly engine: EngineAnswer; readonly row: ConditionRow } {
  const outcome = states.at(study, id, { inputs: [], throttle });
  if (!outcome.ok) throw new ProblemError(outcome.problem);
  const solution = outcome.value;
  const ambient = ambientAt(altitude);
  const engine = engineAnswer(solution, { altitudes: [], ambients: [] }, study.sources);
  const row = rowAt(solution, ambient, altitude === 'vacuum' ? null : altitude);
  if (altitude === 'vacuum') return { engine, row };
  const here = { altitude, ...plumeAt(solution, ambient) };
  return { engine: { ...engine, plume: { ...engine.plume, altitudes: [here] } }, row };
}

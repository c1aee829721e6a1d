/** What a study solved before has in common with one to be solved. */

import type { EngineInput, Study } from '../study/model.ts';
import type { Wanted } from './engineAnswer.ts';
import type { VehicleAnswer } from './flight/model.ts';
import type { EngineAnswer, EnginesAnswer } from './model.ts';
import type { EngineSolution } from './solution.ts';

export interface SolvedBefore {
  readonly study: Study;
  readonly answer: EnginesAnswer;
  /** Its vehicles as flown; null where they are not. */ readonly vehicles: readonly VehicleAnswer[] | null;
  /** Without one that is at hand no more an engine is solved again, its answer taken over all the same. */
  readonly solutions: ReadonlyMap<string, EngineSolution>;
  /** Conditions that its rows were asked at. */ readonly wanted: Wanted;
}

export interface Reused {
  /** Null: it is to be solved. */ solutionOf(id: string): EngineSolution | null;
  /** Null: it is to be answered. */ answerOf(id: string, wanted: Wanted): EngineAnswer | null;
  /** Null: they are to be flown. */ vehicles(
    solutions: ReadonlyMap<string, EngineSolution>,
  ): readonly VehicleAnswer[] | null;
}

const NOTHING: Reused = { solutionOf: () => null, answerOf: () => null, vehicles: () => null };

/** Word for word the same, texts and places in the study included: the answer tells of them. */
const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

export function reusedFrom(before: SolvedBefore | undefined, study: Study): Reused {
  if (before === undefined) return NOTHING;
  const { answer, solutions } = before;
  const was = new Map(before.study.engines.map((engine) => [engine.id, engine]));
  const now = new Map(study.engines.map((engine) => [engine.id, engine]));
  const kept = new Map<string, boolean>();
  const isKept = (id: string): boolean => {
    const known = kept.get(id);
    if (known !== undefined) return known;
    // Engines that take their size from each other in a circle are not kept.
    kept.set(id, false);
    const source = sizedBy(now.get(id));
    const found = isSame(was.get(id), now.get(id)) && (source === null || isKept(source));
    kept.set(id, found);
    return found;
  };
  const solutionOf = (id: string): EngineSolution | null => (isKept(id) ? (solutions.get(id) ?? null) : null);
  const sourcesAreSame = isSame(before.study.sources, study.sources);
  return {
    solutionOf,
    answerOf(id, wanted) {
      const isAsked = sourcesAreSame && isSame(before.wanted, wanted);
      return isAsked && isKept(id) ? (answer.engines[id] ?? null) : null;
    },
    vehicles(solved) {
      const areSame =
        isSame([before.study.vehicles, before.study.compare], [study.vehicles, study.compare]) &&
        isSame([...was.keys()], [...now.keys()]) &&
        isSame(Object.keys(answer.failed), []) &&
        [...solved.keys()].every(isKept) &&
        solved.size === now.size;
      return areSame ? before.vehicles : null;
    },
  };
}

function sizedBy(engine: EngineInput | undefined): string | null {
  return engine?.size.by === 'same' ? engine.size.as : null;
}

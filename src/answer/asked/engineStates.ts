/** Engines of a study at other values of their inputs and at part throttle, each distinct state solved once and kept. */

import { attempt, type Outcome, ProblemError } from '../../numerics/problem.ts';
import type { NozzleModel } from '../../physics/nozzle/index.ts';
import type { EngineInput, Quantity, Study } from '../../study/model.ts';
import { otherCycle } from '../cycle/otherCycle.ts';
import { withInputs } from '../inputs/withInputs.ts';
import type { Materials } from '../materials.ts';
import { solvePublished } from '../published/solvePublished.ts';
import { diameterOf, type EngineSolution } from '../solution.ts';
import { solveEngine } from '../solveEngine.ts';
import { type WorkingGas, workingGas } from '../workingGas.ts';
import { keptLately } from './keptLately.ts';
import type { Ask } from './model.ts';
import { chamberKey, nozzleKey, stateKey } from './stateKey.ts';

/** What an ask says of the state of its engine. */
export type AskedState = Pick<Ask, 'inputs' | 'throttle'>;

export interface EngineStates {
  /** An engine of `study` in the asked state; a failure is kept as well. */
  at(study: Study, id: string, state: AskedState): Outcome<EngineSolution>;
}

const KEPT_SOLUTIONS = 96;
const KEPT_GASES = 96;
const KEPT_NOZZLES = 96;

/**
 * At part throttle the engine keeps its throat, and its chamber pressure is the stated one times the throttle; the gas is
 * burnt anew at that pressure.
 */
export function engineStates(materials: Materials): EngineStates {
  const solutions = keptLately<Outcome<EngineSolution>>(KEPT_SOLUTIONS);
  const chambers = keptLately<Outcome<EngineSolution>>(KEPT_SOLUTIONS);
  const gases = keptLately<WorkingGas>(KEPT_GASES);
  const nozzles = keptLately<NozzleModel>(KEPT_NOZZLES);

  function solved(input: EngineInput, others: ReadonlyMap<string, EngineSolution>): EngineSolution {
    if (input.published?.solveFor) return solvePublished(input, materials, others);
    const gas = gases(chamberKey(input), () => workingGas(input, materials));
    const key = nozzleKey(input);
    const nozzle = nozzles.peek(key);
    const solution = solveEngine(input, materials, others, { gas, nozzle });
    if (nozzle === undefined) nozzles(key, () => solution.nozzle);
    return solution;
  }

  /** What drives the pumps changes nothing of the chamber, whose size and losses cost most. */
  function inAnyCycle(
    study: Study,
    input: EngineInput,
    others: ReadonlyMap<string, EngineSolution>,
  ): EngineSolution {
    if (input.cycle === null) return solved(input, others);
    const chamber = chambers(keyOf(study, { ...input, cycle: null }), () =>
      attempt(() => solved(input, others)),
    );
    if (!chamber.ok) throw new ProblemError(chamber.problem);
    return otherCycle(chamber.value, input);
  }

  /** The engines that this one takes its size from, itself last. */
  function full(study: Study, input: EngineInput, seen: readonly string[]): Outcome<EngineSolution> {
    return attempt(() => {
      const others = new Map<string, EngineSolution>();
      const { size } = input;
      if (size.by === 'same') {
        if (seen.includes(size.as)) throw sizeCircle([...seen, size.as]);
        const other = full(study, engineOf(study, size.as), [...seen, size.as]);
        if (!other.ok) throw new ProblemError(other.problem);
        others.set(size.as, other.value);
      }
      const outcome = solutions(keyOf(study, input), () => attempt(() => inAnyCycle(study, input, others)));
      if (!outcome.ok) throw new ProblemError(outcome.problem);
      return outcome.value;
    });
  }

  return {
    at(study, id, { inputs, throttle }) {
      const wanted = attempt(() => withInputs(engineOf(study, id), inputs));
      if (!wanted.ok) return wanted;
      const atFull = full(study, wanted.value, [id]);
      if (!atFull.ok || throttle === null || throttle === 1) return atFull;
      const throttled = attempt(() => throttledInput(atFull.value, throttle));
      return throttled.ok ? full(study, throttled.value, [id]) : throttled;
    },
  };
}

/** Of an engine and of those that it takes its size from; these are known to stand in no circle. */
function keyOf(study: Study, input: EngineInput): string {
  const { size } = input;
  return stateKey(input) + (size.by === 'same' ? keyOf(study, engineOf(study, size.as)) : '');
}

function throttledInput({ input, throatArea }: EngineSolution, throttle: number): EngineInput {
  if (!(throttle > 0 && throttle <= MOST_THROTTLE)) {
    throw new ProblemError({
      code: 'throttle-out-of-range',
      what: `A throttle of ${throttle * 100} % cannot be asked for.`,
      mend: `Ask for more than 0 % and up to ${MOST_THROTTLE * 100} % of the stated chamber pressure.`,
      where: `engines.${input.id}`,
    });
  }
  const { pressure } = input.chamber;
  const diameter: Quantity = {
    ...pressure,
    value: diameterOf(throatArea),
    path: `engines.${input.id}.size.throat`,
  };
  return {
    ...input,
    chamber: { ...input.chamber, pressure: { ...pressure, value: pressure.value * throttle } },
    size: { by: 'throat', diameter },
  };
}

/** Engines have been run at a little more than their rated chamber pressure, not at much more. Common practice, no source. */
const MOST_THROTTLE = 1.5;

function engineOf(study: Study, id: string): EngineInput {
  const engine = study.engines.find((each) => each.id === id);
  if (engine !== undefined) return engine;
  throw new ProblemError({
    code: 'engine-not-in-study',
    what: `The study has no engine “${id}”.`,
    mend: `Name one of ${study.engines.map((each) => each.id).join(', ')}.`,
  });
}

function sizeCircle(ids: readonly string[]): ProblemError {
  return new ProblemError({
    code: 'size-circle',
    what: `The engines ${[...new Set(ids)].join(', ')} take their size from each other in a circle.`,
    mend: 'Give one of them a throat, an exit or a thrust.',
    where: `engines.${ids[0]}.size`,
  });
}

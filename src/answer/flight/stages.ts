/** Stages of a vehicle as the physics takes them: their engines, and what they weigh. */

import { ProblemError } from '../../numerics/problem.ts';
import type { Stage, StagePropulsion } from '../../physics/flight/index.ts';
import type { StageInput, VehicleInput } from '../../study/model.ts';
import { massOf } from '../cycle/massFigures.ts';
import type { EngineSolution } from '../solution.ts';
import { enginePropulsion, statedPropulsion } from './propulsion.ts';

/** Solved engines by id. @throws ProblemError where one could not be solved */
export type SolutionOf = (engine: string) => EngineSolution;

/** By how much thrust and drag are moved, for slopes. */
export interface Moved {
  /** Times the thrust of one engine at every pressure, the flow held. */
  readonly thrust?: { readonly engine: string; readonly times: number };
  /** Times the estimated mass of one engine, where a stage takes it. */
  readonly engineMass?: { readonly engine: string; readonly times: number };
  /** Times thrust and flow of whole stages, by their place from the ground up. */
  readonly stage?: { readonly at: number; readonly thrust: number; readonly flow: number };
}

/** What the engines of a stage do, and how much larger than solved they are built [–]. */
interface StageEngines {
  readonly propulsion: StagePropulsion;
  readonly scale: number;
}

/** @throws ProblemError where an engine has no thrust, or no mass that it is asked for */
export function stageOf(
  stage: StageInput,
  at: number,
  { held }: Pick<VehicleInput, 'held'>,
  solutionOf: SolutionOf,
  padPressure: number,
  exchangedFor: string | null,
  moved: Moved,
): Stage {
  const { propulsion, scale } = enginesOf(
    stage,
    solutionOf,
    padPressure,
    at === 0 ? exchangedFor : null,
    held,
    moved,
  );
  return {
    propulsion: stageMoved(propulsion, moved.stage?.at === at ? moved.stage : null),
    dryMass: stage.dry.value + estimatedEngines(stage, solutionOf, scale, moved),
    propellantMass: stage.propellant.value,
    coastBefore: stage.coast?.value ?? 0,
  };
}

/** [kg] of all engines of a stage, running or not; 0 where its dry mass includes them. */
function estimatedEngines(
  { push, count, engineMass }: StageInput,
  solutionOf: SolutionOf,
  scale: number,
  { engineMass: moved }: Moved,
): number {
  if (engineMass === 'included' || push.by === 'figures') return 0;
  const times = moved?.engine === push.engine ? moved.times : 1;
  return count.value * massOf(solutionOf(push.engine), scale).value * times;
}

function stageMoved(own: StagePropulsion, moved: Moved['stage'] | null): StagePropulsion {
  if (!moved) return own;
  return {
    ...own,
    thrust: (pressure, mach) => moved.thrust * own.thrust(pressure, mach),
    vacuumThrust: moved.thrust * own.vacuumThrust,
    massFlow: moved.flow * own.massFlow,
  };
}

function enginesOf(
  stage: StageInput,
  solutionOf: SolutionOf,
  padPressure: number,
  exchangedFor: string | null,
  held: VehicleInput['held'],
  { thrust: moved }: Moved,
): StageEngines {
  const { push } = stage;
  if (push.by === 'figures') {
    return { propulsion: statedPropulsion(push.thrust.value, push.specificImpulse.value, stage), scale: 1 };
  }
  const of = (engine: string, scale?: number): StagePropulsion =>
    enginePropulsion(solutionOf(engine), stage, padPressure, scale);
  const scale = scaleOf(push.engine, exchangedFor, held, of, padPressure);
  const own = of(push.engine, scale);
  if (moved === undefined || moved.engine !== push.engine) return { propulsion: own, scale };
  const propulsion = {
    ...own,
    thrust: (pressure: number, mach: number) => moved.times * own.thrust(pressure, mach),
    vacuumThrust: moved.times * own.vacuumThrust,
  };
  return { propulsion, scale };
}

/** How much larger the engine that stands in is built, so that what the study holds is held [–]. */
function scaleOf(
  engine: string,
  exchangedFor: string | null,
  held: VehicleInput['held'],
  of: (engine: string) => StagePropulsion,
  padPressure: number,
): number {
  if (exchangedFor === null || exchangedFor === engine || held === 'engines') return 1;
  const [own, other] = [of(exchangedFor), of(engine)];
  const scale =
    held === 'massFlow'
      ? own.massFlow / other.massFlow
      : own.thrust(padPressure, 0) / other.thrust(padPressure, 0);
  if (scale > 0 && Number.isFinite(scale)) return scale;
  throw new ProblemError({
    code: 'exchange-impossible',
    what: `No size of ${engine} gives the thrust of ${exchangedFor} at lift-off.`,
    mend: 'Hold the number of engines or the mass flow instead.',
  });
}

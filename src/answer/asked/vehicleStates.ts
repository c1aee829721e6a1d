/** Vehicles of a study at other values of inputs, theirs or their engines', each distinct flight flown once and kept. */

import { attempt, type Outcome, ProblemError } from '../../numerics/problem.ts';
import type { Study, VehicleInput } from '../../study/model.ts';
import { enginesOfVehicle, withEngine } from '../../study/owners.ts';
import { type Flown, firstEngine, fly, type SolutionOf } from '../flight/index.ts';
import { type Slopes, slopesOf } from '../flight/slopes.ts';
import { withVehicleInputs } from '../inputs/withInputs.ts';
import type { EngineSolution } from '../solution.ts';
import type { EngineStates } from './engineStates.ts';
import { keptLately } from './keptLately.ts';
import type { Ask, ChangedInput } from './model.ts';
import { engineKey, textOf } from './stateKey.ts';

/** One flight, with what is needed to tell of its errors. */
export interface VehicleState {
  readonly flown: Flown;
  readonly solutionOf: SolutionOf;
  /** At the study's middle values; found when first asked for. */ slopes(): Slopes;
}

export interface VehicleStates {
  /** @param there the study at a point; its middle values are those of the study the states were made for */
  at(there: Study, ask: Pick<Ask, 'engine' | 'inputs' | 'part'>): Outcome<VehicleState>;
}

const KEPT_FLIGHTS = 96;

/**
 * Every flight is looked for from the one at the study's middle values, whatever was asked before, so that the same question has
 * the same answer in every thread.
 */
export function vehicleStates(study: Study, engines: EngineStates): VehicleStates {
  const flights = keptLately<Outcome<Flown>>(KEPT_FLIGHTS);
  const slopes = keptLately<Slopes>(KEPT_FLIGHTS);

  /** @param middle null: this is the flight at the middle values itself */
  function flown(
    there: Study,
    vehicle: VehicleInput,
    own: string,
    set: EngineInputs,
    near: Flown | null,
  ): Outcome<Flown> {
    const key = textOf([
      vehicle,
      own,
      enginesOfVehicle(vehicle)
        .concat(own)
        .map((id) => engineKey(there, id, set.get(id) ?? [])),
    ]);
    return flights(key, () =>
      attempt(() =>
        fly(vehicle, solutionFrom(there, set), exchangedFor(vehicle, own), near?.toOrbit ?? null),
      ),
    );
  }

  function solutionFrom(there: Study, set: EngineInputs): SolutionOf {
    return (id): EngineSolution => {
      const found = engines.at(there, id, { inputs: set.get(id) ?? [], throttle: null });
      if (found.ok) return found.value;
      throw new ProblemError(found.problem);
    };
  }

  /** At the study's middle values, with its own engine or another. */
  function middle(id: string, engine: string): Outcome<Flown> {
    const vehicle = vehicleOf(study, id);
    const own = firstEngine(vehicle);
    const atOwn = flown(study, vehicle, own, NOTHING_SET, null);
    if (engine === own) return atOwn;
    return flown(study, withEngine(vehicle, engine), own, NOTHING_SET, atOwn.ok ? atOwn.value : null);
  }

  return {
    at(there, { engine: id, inputs, part }) {
      return attempt(() => {
        const stated = vehicleOf(there, id!);
        const own = firstEngine(stated);
        const engine = part === undefined ? own : engineNamed(there, part);
        const { ofVehicle, ofEngines } = sorted(there, inputs);
        const vehicle = withVehicleInputs(engine === own ? stated : withEngine(stated, engine), ofVehicle);
        const near = middle(stated.id, engine);
        const found = flown(there, vehicle, own, ofEngines, near.ok ? near.value : null);
        if (!found.ok) throw new ProblemError(found.problem);
        return {
          flown: found.value,
          solutionOf: solutionFrom(there, ofEngines),
          slopes: () =>
            slopes(`${stated.id} ${engine}`, () => {
              const at = near.ok ? near.value : found.value;
              const study_ = near.ok ? study : there;
              return slopesOf(
                at,
                solutionFrom(study_, near.ok ? NOTHING_SET : ofEngines),
                exchangedFor(at.input, own),
              );
            }),
        };
      });
    },
  };
}

type EngineInputs = ReadonlyMap<string, readonly ChangedInput[]>;
const NOTHING_SET: EngineInputs = new Map();

function exchangedFor(vehicle: VehicleInput, own: string): string | null {
  return firstEngine(vehicle) === own ? null : own;
}

/** `first.dry` is set on the vehicle, `bell.nozzle.areaRatio` on that engine. */
function sorted(
  { engines }: Study,
  inputs: readonly ChangedInput[],
): { readonly ofVehicle: readonly ChangedInput[]; readonly ofEngines: EngineInputs } {
  const ofVehicle: ChangedInput[] = [];
  const ofEngines = new Map<string, ChangedInput[]>();
  for (const { input, value } of inputs) {
    const dot = input.indexOf('.');
    const owner = input.slice(0, Math.max(dot, 0));
    if (!engines.some(({ id }) => id === owner)) ofVehicle.push({ input, value });
    else ofEngines.set(owner, [...(ofEngines.get(owner) ?? []), { input: input.slice(dot + 1), value }]);
  }
  return { ofVehicle, ofEngines };
}

function vehicleOf({ vehicles }: Study, id: string): VehicleInput {
  const found = vehicles.find((vehicle) => vehicle.id === id);
  if (found !== undefined) return found;
  throw new ProblemError({
    code: 'vehicle-not-in-study',
    what: `The study has no vehicle “${id}”.`,
    mend:
      vehicles.length === 0
        ? 'State one under vehicles.'
        : `Name one of ${vehicles.map((vehicle) => vehicle.id).join(', ')}.`,
  });
}

function engineNamed({ engines }: Study, part: string): string {
  if (engines.some(({ id }) => id === part)) return part;
  throw new ProblemError({
    code: 'part-unknown',
    what: `The study has no engine “${part}” to put below the vehicle.`,
    mend: `Name one of ${engines.map(({ id }) => id).join(', ')}.`,
  });
}

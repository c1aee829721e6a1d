/** The engines of a stage, from a solved engine: its thrust tabulated once over the air's pressure. */

import { STANDARD_GRAVITY } from '../../physics/constants.ts';
import {
  noThrust,
  type StagePropulsion,
  type ThrustOrWhy,
  tabulatedThrust,
} from '../../physics/flight/index.ts';
import { feltAmbient } from '../../physics/nozzle/index.ts';
import type { StageInput } from '../../study/model.ts';
import { figuresOf } from '../conditions.ts';
import { dumpThrustAt, engineFlow } from '../cycle/cycleFigures.ts';
import type { EngineSolution } from '../solution.ts';

type Thrust = (pressure: number) => number;

interface OfEngine {
  /** From the model itself. */ readonly direct: Thrust;
  /** Up to a pressure, tabulated when first asked for. */ readonly upTo: (top: number) => Thrust;
}

const known = new WeakMap<EngineSolution, OfEngine>();

function thrustOf(solution: EngineSolution): OfEngine {
  const found = known.get(solution) ?? newThrustOf(solution);
  known.set(solution, found);
  return found;
}

function newThrustOf(solution: EngineSolution): OfEngine {
  const tables = new Map<number, Thrust>();
  const values = new Map<number, ThrustOrWhy>();
  const at = (pressure: number): ThrustOrWhy => {
    const before = values.get(pressure);
    if (before !== undefined) return before;
    const state = solution.nozzle.at(pressure, 0);
    const { thrust } = figuresOf(solution, state);
    const value = thrust === null ? { absent: state.absent ?? 'The model has no value here.' } : { thrust };
    values.set(pressure, value);
    return value;
  };
  return {
    direct(pressure) {
      const value = at(pressure);
      if ('thrust' in value) return value.thrust;
      throw noThrust(pressure, value.absent);
    },
    upTo(top) {
      const table = tables.get(top) ?? tabulatedThrust(at, top);
      tables.set(top, table);
      return table;
    },
  };
}

/** The pressure is a little higher just below the pad, where a flight that falls back ends. */
const ROOM = 1.01;

/**
 * A plug feels its slipstream: F(p, M) = F(p_felt) − (p − p_felt) A_e, as its model has it. Throttled deep in thick air, an engine
 * works as in thicker air still: those pressures, slow to compute, are tabulated only if a flight meets them.
 *
 * @param padPressure [Pa] @param scale [–] of the engine: throat, thrust, flow and exit by the same factor
 * @throws ProblemError `no-thrust-there` where it has none in vacuum
 */
export function enginePropulsion(
  solution: EngineSolution,
  { count, stopped, lowestThrottle }: Pick<StageInput, 'count' | 'stopped' | 'lowestThrottle'>,
  padPressure: number,
  scale = 1,
): StagePropulsion {
  const times = (count.value - stopped.value) * scale;
  const { direct, upTo } = thrustOf(solution);
  const top = ROOM * padPressure;
  let table: Thrust | null = null;
  const fullThrust = (pressure: number): number => {
    if (pressure === padPressure) return direct(pressure);
    if (pressure > top) return upTo(top / lowestThrottle.value)(pressure);
    table ??= upTo(top);
    return table(pressure);
  };
  const { exitArea } = solution;
  const { massFlow, dumpThrust } = throughCycle(solution);
  const isPlug = solution.nozzle.spec.kind === 'plug';
  return {
    thrust(pressure, mach) {
      if (!isPlug) return times * (fullThrust(pressure) + dumpThrust(pressure));
      const felt = feltAmbient(pressure, mach).pressure;
      return times * (fullThrust(felt) - (pressure - felt) * exitArea + dumpThrust(pressure));
    },
    massFlow: times * massFlow,
    vacuumThrust: times * (direct(0) + dumpThrust(0)),
    lowestThrottle: lowestThrottle.value,
    exitArea: times * exitArea,
  };
}

/**
 * Flow out of the tanks [kg/s], and thrust of what the cycle dumps [N] at an ambient pressure [Pa]: the flight is that of the whole
 * engine where the study says how its propellants are pumped, else that of its thrust chamber.
 */
function throughCycle(solution: EngineSolution): {
  readonly massFlow: number;
  readonly dumpThrust: (pressure: number) => number;
} {
  if (solution.input.cycle === null) return { massFlow: solution.massFlow, dumpThrust: () => 0 };
  return {
    massFlow: engineFlow(solution),
    dumpThrust: (pressure) => dumpThrustAt(solution.cycle(), pressure),
  };
}

/** A stage given by figures in vacuum: it works where there is hardly any air. */
export function statedPropulsion(
  thrust: number,
  specificImpulse: number,
  { count, stopped, lowestThrottle }: Pick<StageInput, 'count' | 'stopped' | 'lowestThrottle'>,
): StagePropulsion {
  const running = thrust * (1 - stopped.value / count.value);
  return {
    thrust: () => running,
    massFlow: running / (specificImpulse * STANDARD_GRAVITY),
    vacuumThrust: running,
    lowestThrottle: lowestThrottle.value,
    exitArea: 0,
  };
}

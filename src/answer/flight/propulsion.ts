/** The engines of a stage, from a solved engine: its thrust tabulated once over the air's pressure. */

import { STANDARD_GRAVITY } from '../../physics/constants.ts';
import { type StagePropulsion, tabulatedThrust } from '../../physics/flight/index.ts';
import { feltAmbient } from '../../physics/nozzle/index.ts';
import type { StageInput } from '../../study/model.ts';
import { figuresOf } from '../conditions.ts';
import { dumpThrustAt, engineFlow } from '../cycle/cycleFigures.ts';
import type { EngineSolution } from '../solution.ts';

type Table = (pressure: number) => number;

const tables = new WeakMap<EngineSolution, Map<number, Table>>();

/** @param top [Pa] highest pressure that is asked for */
function tableOf(solution: EngineSolution, top: number): Table {
  const own = tables.get(solution) ?? new Map<number, Table>();
  tables.set(solution, own);
  const known = own.get(top);
  if (known !== undefined) return known;
  const table = tabulatedThrust((pressure) => {
    const at = solution.nozzle.at(pressure, 0);
    const { thrust } = figuresOf(solution, at);
    return thrust === null ? { absent: at.absent ?? 'The model has no value here.' } : { thrust };
  }, top);
  own.set(top, table);
  return table;
}

/** The pressure is a little higher just below the pad, where a flight that falls back ends. */
const ROOM = 1.01;

/**
 * A plug feels its slipstream: F(p, M) = F(p_felt) − (p − p_felt) A_e, as its model has it.
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
  const table = tableOf(solution, (ROOM * padPressure) / lowestThrottle.value);
  const { exitArea } = solution;
  const { massFlow, dumpThrust } = throughCycle(solution);
  const isPlug = solution.nozzle.spec.kind === 'plug';
  return {
    thrust(pressure, mach) {
      if (!isPlug) return times * (table(pressure) + dumpThrust(pressure));
      const felt = feltAmbient(pressure, mach).pressure;
      return times * (table(felt) - (pressure - felt) * exitArea + dumpThrust(pressure));
    },
    massFlow: times * massFlow,
    vacuumThrust: times * (table(0) + dumpThrust(0)),
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

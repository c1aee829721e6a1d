/** How high a chamber pressure a stated cycle can reach, the chamber’s flow and the shares of the drops held. */

import { attempt, ProblemError } from '../../numerics/problem.ts';
import {
  closedMargin,
  type Limit,
  pressureBehindPump,
  pumpPressureLimit,
  type Reach,
  reachOf,
  type TurbineGas,
  workLeft,
} from '../../physics/cycle/index.ts';
import { balanceOf, closedCycle, type GasForTurbine, isClosed, isOpen, openCycle } from './asStated.ts';
import { turbineGasFor } from './turbineGasFor.ts';

/** @throws ProblemError */
export function cycleReach(needs: GasForTurbine, gas: TurbineGas | null): Reach {
  const { stated, pumped } = needs;
  if (stated.kind === 'pressureFed') {
    const { tankPressure } = stated;
    if (tankPressure === null) throw anyPressure();
    const { injector, lines, jacket } = pumped.drops;
    return {
      pressure: tankPressure.value / pressureBehindPump(1, injector, lines, jacket),
      setBy: 'the pressure in the tanks, less what injector, lines and cooling channels lose',
    };
  }
  const gasAt = (pressure: number): TurbineGas | null =>
    byWalls(needs) ? turbineGasFor(needs, pressure) : gas;
  const at = (pressure: number) => ({ ...pumped, chamberPressure: pressure });
  const power: Limit = {
    words: byWalls(needs)
      ? 'the power of the turbine: the walls’ heat is all it has'
      : 'the power of the turbine',
    marginAt(pressure) {
      const there = attempt(() => gasAt(pressure));
      if (!there.ok) {
        if (there.problem.code === 'expander-too-cold') return -1;
        throw new ProblemError(there.problem);
      }
      if (isClosed(stated)) return closedMargin(closedCycle(stated, at(pressure), there.value!));
      if (!isOpen(stated)) return 1;
      const { work, own } = workLeft(openCycle(stated, at(pressure), there.value!));
      return 1 - own / work;
    },
  };
  return reachOf([
    power,
    pumpPressureLimit(
      (pressure) => balanceOf(stated, at(pressure), gasAt(pressure)),
      pumped.pumpPressureLimit,
    ),
  ]);
}

function byWalls({ stated }: GasForTurbine): boolean {
  return (
    (stated.kind === 'closedExpander' || stated.kind === 'bleedExpander') &&
    stated.turbineInletTemperature === null
  );
}

function anyPressure(): ProblemError {
  return new ProblemError({
    code: 'no-value',
    what: 'No tank pressure is stated: the tanks are taken as strong as the chamber needs them.',
    mend: 'State tankPressure in the cycle to see which chamber pressure it allows.',
    where: 'cycle.tankPressure',
  });
}

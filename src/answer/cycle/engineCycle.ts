/** The cycle of one solved engine: what it needs of the chamber, and its parts, each worked out when first asked for. */

import { onceOrProblem } from '../../numerics/once.ts';
import { ProblemError } from '../../numerics/problem.ts';
import {
  type Balance,
  type Exhaust,
  exhaustOf,
  type Pumped,
  type Reach,
  type TurbineGas,
} from '../../physics/cycle/index.ts';
import type { Cycle, EngineInput } from '../../study/model.ts';
import { balanceOf, type ChamberNeeds, type GasForTurbine, isOpen, openCycle } from './asStated.ts';
import { cycleReach } from './cycleReach.ts';
import { turbineGasFor } from './turbineGasFor.ts';

export interface EngineCycle {
  readonly stated: Cycle;
  readonly pumped: Pumped;
  /** @throws ProblemError where the pumps cannot be driven so */ readonly balance: () => Balance;
  /** @throws ProblemError where nothing limits it, or nothing is reached */ readonly reach: () => Reach;
  /** Null where there is no turbine. @throws ProblemError */ readonly gas: () => TurbineGas | null;
  /** Null where nothing is dumped. @throws ProblemError */ readonly exhaust: () => Exhaust | null;
  /** The same cycle with the same chamber flow at another chamber pressure [Pa]. @throws ProblemError */
  readonly balanceAt: (chamberPressure: number) => Balance;
}

/** @throws ProblemError `cycle-not-stated`, `cycle-without-two-propellants`, `cycle-density-unknown` */
export function engineCycle(needs: ChamberNeeds): EngineCycle {
  const stated = statedCycle(needs.input);
  const pumped = pumpedOf(needs, stated);
  const gasFor: GasForTurbine = { ...needs, stated, pumped };
  const gas = onceOrProblem(() => turbineGasFor(gasFor, pumped.chamberPressure));
  const balanceAt = (chamberPressure: number, gasThere = gas()): Balance =>
    balanceOf(stated, { ...pumped, chamberPressure }, gasThere);
  return {
    stated,
    pumped,
    gas,
    balance: onceOrProblem(() => balanceAt(pumped.chamberPressure)),
    balanceAt,
    reach: onceOrProblem(() => cycleReach(gasFor, gas())),
    exhaust: onceOrProblem(() => {
      const turbineGas = gas();
      return isOpen(stated) && turbineGas !== null ? exhaustOf(openCycle(stated, pumped, turbineGas)) : null;
    }),
  };
}

function statedCycle({ cycle }: EngineInput): Cycle {
  if (cycle !== null) return cycle;
  throw new ProblemError({
    code: 'cycle-not-stated',
    what: 'The study does not say how the propellants reach the chamber.',
    mend: 'Add a cycle to the engine, e.g. cycle: { kind: gasGenerator }.',
    where: 'cycle',
  });
}

function pumpedOf(
  { fed, mixtureRatio, massFlow, chamberPressure, input }: ChamberNeeds,
  cycle: Cycle,
): Pumped {
  if (fed === null || mixtureRatio === null) {
    throw new ProblemError({
      code: 'cycle-without-two-propellants',
      what: `${input.name} has no oxidiser and fuel to be pumped.`,
      mend: 'State propellants with an oxidiser, a fuel and a ratio, or delete the cycle.',
      where: 'cycle',
    });
  }
  const missing = (['oxidiser', 'fuel'] as const).find((side) => fed[side].density === null);
  if (missing !== undefined) {
    throw new ProblemError({
      code: 'cycle-density-unknown',
      what: `The ${missing} has no density as a liquid, so the work to press it into the chamber is not known.`,
      mend: 'Name a liquid propellant, or state the density of an ingredient of your own.',
      where: 'cycle',
    });
  }
  const pumps = cycle.kind === 'pressureFed' ? null : cycle;
  return {
    fed,
    chamberPressure,
    flow: {
      oxidiser: (massFlow * mixtureRatio) / (1 + mixtureRatio),
      fuel: massFlow / (1 + mixtureRatio),
    },
    drops: {
      injector: cycle.injectorDrop.value,
      jacket: cycle.jacketDrop.value,
      lines: cycle.lineDrop.value,
    },
    tankPressure: cycle.tankPressure?.value ?? 0,
    pumpEfficiency: {
      oxidiser: pumps?.oxidiserPumpEfficiency.value ?? 1,
      fuel: pumps?.fuelPumpEfficiency.value ?? 1,
    },
    pumpPressureLimit: pumps?.pumpPressureLimit.value ?? Number.POSITIVE_INFINITY,
  };
}

/** A stated cycle as the physics takes it. */

import {
  type Balance,
  balanceClosed,
  balanceElectric,
  balanceOpen,
  type ClosedCycle,
  type ElectricCycle,
  type FedPropellants,
  type OpenCycle,
  type Pumped,
  type TurbineGas,
} from '../../physics/cycle/index.ts';
import type { Cycle, EngineInput } from '../../study/model.ts';

/** What a cycle needs of the engine it feeds. */
export interface ChamberNeeds {
  readonly input: EngineInput;
  readonly fed: FedPropellants | null;
  readonly mixtureRatio: number | null;
  /** [Pa] */ readonly chamberPressure: number;
  /** [kg/s] */ readonly massFlow: number;
  /** Of chamber and nozzle wall [W]; null: there is no wall */ readonly wallHeat: number | null;
}

/** What the gas of its turbine hangs on. */
export interface GasForTurbine extends ChamberNeeds {
  readonly stated: Cycle;
  readonly pumped: Pumped;
}

type Of<Kind extends Cycle['kind']> = Extract<Cycle, { kind: Kind }>;
export type OpenStated = Of<'gasGenerator' | 'tapOff' | 'bleedExpander'>;
export type ClosedStated = Of<'stagedCombustion' | 'closedExpander'>;

export function isOpen(cycle: Cycle): cycle is OpenStated {
  return cycle.kind === 'gasGenerator' || cycle.kind === 'tapOff' || cycle.kind === 'bleedExpander';
}

export function isClosed(cycle: Cycle): cycle is ClosedStated {
  return cycle.kind === 'stagedCombustion' || cycle.kind === 'closedExpander';
}

export function openCycle(stated: OpenStated, pumped: Pumped, gas: TurbineGas): OpenCycle {
  return {
    ...pumped,
    kind: stated.kind,
    gas,
    efficiency: stated.turbineEfficiency.value,
    pressureRatio: stated.turbinePressureRatio.value,
    exhaustAreaRatio: stated.exhaustAreaRatio.value,
  };
}

export function closedCycle(stated: ClosedStated, pumped: Pumped, gas: TurbineGas): ClosedCycle {
  return {
    ...pumped,
    kind: stated.kind,
    gas,
    excess: stated.kind === 'stagedCombustion' ? stated.rich : 'fuel',
    efficiency: stated.turbineEfficiency.value,
  };
}

/** @throws ProblemError */
export function balanceOf(stated: Cycle, pumped: Pumped, gas: TurbineGas | null): Balance {
  if (isOpen(stated)) return balanceOpen(openCycle(stated, pumped, gas!));
  if (isClosed(stated)) return balanceClosed(closedCycle(stated, pumped, gas!));
  const electric: ElectricCycle = {
    ...pumped,
    kind: 'electricPump',
    motorEfficiency: stated.kind === 'electricPump' ? stated.motorEfficiency.value : 1,
  };
  const balance = balanceElectric(electric);
  return stated.kind === 'electricPump' ? balance : { ...balance, pumpPower: 0 };
}

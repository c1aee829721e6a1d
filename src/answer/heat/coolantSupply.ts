/** Which coolant, how much of it, how warm and under which pressure it enters. */

import { ProblemError } from '../../numerics/problem.ts';
import type { PropellantRecord } from '../../physics/gas/records.ts';
import type { CoolantFluid } from '../../physics/heat/index.ts';
import type { Cooling, EngineInput } from '../../study/model.ts';
import { type CoolingMaterials, coolantRowOf, ingredientsOf } from '../materials.ts';
import type { CoolantRow } from '../shelf.ts';

export interface CoolantSupply {
  readonly row: CoolantRow;
  readonly fluid: CoolantFluid;
  /** [kg/s] */ readonly massFlow: number;
  /** [K] */ readonly temperature: number;
}

/** Flows of the propellants [kg/s]; a mixture or a heated gas is all fuel. */
export interface PropellantFlows {
  readonly fuel: number;
  readonly oxidiser: number;
}

export function propellantFlows(massFlow: number, mixtureRatio: number | null): PropellantFlows {
  if (mixtureRatio === null) return { fuel: massFlow, oxidiser: 0 };
  const fuel = massFlow / (1 + mixtureRatio);
  return { fuel, oxidiser: massFlow - fuel };
}

/** @throws ProblemError `coolant-…`, `cooling-flow-missing` */
export function coolantSupply(
  input: EngineInput,
  cooling: Cooling,
  materials: CoolingMaterials,
  propellants: ReadonlyMap<string, PropellantRecord>,
  flows: PropellantFlows,
): CoolantSupply {
  const row = coolantRowOf(input, cooling.coolant, materials.coolants);
  if (row === null) throw notTabulated(cooling.coolant, materials.coolants);
  const side = (['fuel', 'oxidiser'] as const).find(
    (each) => coolantRowOf(input, each, materials.coolants)?.id === row.id && flows[each] > 0,
  );
  const massFlow = cooling.flow?.value ?? (side === undefined ? null : cooling.share.value * flows[side]);
  if (massFlow === null) {
    throw new ProblemError({
      code: 'cooling-flow-missing',
      what: `The coolant ${row.id} is no propellant of this engine, and its flow is not stated.`,
      mend: 'Add flow to the cooling, e.g. flow: 5 kg/s.',
      where: 'cooling.flow',
    });
  }
  return {
    row,
    fluid: materials.fluids.get(row.id)!,
    massFlow,
    temperature: cooling.inletTemperature?.value ?? fedTemperature(input, row, propellants),
  };
}

const ROOM = 298.15;

function fedTemperature(
  { propellants }: EngineInput,
  row: CoolantRow,
  records: ReadonlyMap<string, PropellantRecord>,
): number {
  const fed = ingredientsOf(propellants).find(({ id }) => row.propellants.includes(id));
  return (fed && records.get(fed.id)?.temperature) ?? ROOM;
}

function notTabulated(word: Cooling['coolant'], coolants: readonly CoolantRow[]): ProblemError {
  return new ProblemError({
    code: 'coolant-not-tabulated',
    what:
      word === 'fuel' || word === 'oxidiser'
        ? `The ${word} of this engine is no coolant whose properties are known here.`
        : `There is no coolant ${word}.`,
    why: 'blends, solids, hypergolic fuels and hydrogen peroxide are not tabulated',
    mend: `Name a coolant: ${coolants.map(({ id }) => id).join(', ')}.`,
    where: 'cooling.coolant',
  });
}

/** The value that the models give for what a published row states. */

import { attempt } from '../../numerics/problem.ts';
import { airAtGeometricAltitude } from '../../physics/air/index.ts';
import type { Ambient, EngineInput, PublishedRow } from '../../study/model.ts';
import { type FiguresAt, figuresAt, figuresAtAltitude } from '../conditions.ts';
import { cycleFigures, engineFiguresAt } from '../cycle/cycleFigures.ts';
import { diameterOf, type EngineSolution } from '../solution.ts';

export interface ComputedValue {
  readonly value: number | null;
  /** Why there is none; null where there is. */ readonly absent: string | null;
}

const unplaced: Readonly<Record<string, (engine: EngineSolution) => number | null>> = {
  massFlow: (e) => e.massFlow,
  'chamber.pressure': (e) => e.expansion.chamber.pressure,
  'chamber.temperature': (e) => e.expansion.chamber.temperature,
  'chamber.molarMass': (e) => e.expansion.chamber.molarMass,
  'chamber.bulkDensity': (e) => e.bulkDensity,
  'chamber.efficiency': (e) => e.input.chamber.efficiency.value,
  'propellants.ratio': (e) => e.mixtureRatio,
  characteristicVelocity: (e) => e.characteristicVelocity,
  areaRatio: (e) => e.nozzle.spec.areaRatio,
  'throat.diameter': (e) => diameterOf(e.throatArea),
  'throat.area': (e) => e.throatArea,
  'throat.pressure': (e) => e.expansion.throat.pressure,
  'throat.temperature': (e) => e.expansion.throat.temperature,
  'exit.diameter': (e) => diameterOf(e.exitArea),
  'exit.area': (e) => e.exitArea,
  'exit.pressure': (e) => e.nozzle.exit.pressure,
  'exit.temperature': (e) => e.nozzle.exit.temperature,
  'exit.mach': (e) => e.nozzle.exit.mach,
  'contour.nozzleLength': (e) => e.contour.nozzleLength,
  'contour.totalLength': (e) => e.contour.totalLength,
  'contour.chamberLength': (e) => e.contour.chamberLength,
};

const noneOf: Readonly<Record<string, string>> = {
  'chamber.bulkDensity': 'The density of what is stored is not known.',
  'propellants.ratio': 'There are not two propellants to have a ratio.',
  'exit.mach': 'The gas has no sound speed of its own at the lip.',
};

/** What a maker publishes of an engine is the whole engine's, what drives its pumps counted. */
const wholeEngine: Readonly<Record<string, string>> = {
  thrust: 'cycle.thrust',
  specificImpulse: 'cycle.specificImpulse',
  massFlow: 'cycle.massFlow',
  'propellants.ratio': 'cycle.mixtureRatio',
};

/** Name in the catalogue of what a published quantity is held against. */
export function comparedWith({ cycle }: Pick<EngineInput, 'cycle'>, quantity: string): string {
  return cycle === null ? quantity : (wholeEngine[quantity] ?? quantity);
}

const placed = ['thrust', 'specificImpulse', 'thrustCoefficient'] as const;

/** Names in the catalogue for which {@link computedValue} has a value. */
export const comparableQuantities: readonly string[] = [...placed, ...Object.keys(unplaced)];

export function computedValue(engine: EngineSolution, row: PublishedRow): ComputedValue {
  if (comparedWith(engine.input, row.quantity) === row.quantity) return ofChamber(engine, row);
  const found = attempt(() => ofWholeEngine(engine, row));
  return found.ok ? { value: found.value, absent: null } : { value: null, absent: found.problem.what };
}

/** @throws ProblemError where the cycle does not close, or the chamber has no thrust there */
function ofWholeEngine(engine: EngineSolution, { quantity, at }: PublishedRow): number {
  if (at === null) {
    return quantity === 'massFlow' ? cycleFigures.massFlow(engine) : cycleFigures.mixtureRatio(engine);
  }
  const altitude = at.kind === 'altitude' ? at.altitude.value : null;
  const { thrust, specificImpulse } = engineFiguresAt(engine, ambientPressureOf(at), altitude);
  return quantity === 'thrust' ? thrust : specificImpulse;
}

function ofChamber(engine: EngineSolution, row: PublishedRow): ComputedValue {
  const key = placed.find((name) => name === row.quantity);
  if (key !== undefined && row.at !== null) {
    const { at } = row;
    const condition = attempt(() => conditionOf(engine, at));
    if (!condition.ok) return { value: null, absent: condition.problem.what };
    return { value: condition.value.figures[key], absent: condition.value.absent };
  }
  const read = unplaced[row.quantity];
  if (read === undefined) throw new Error(`No computed value of ${row.quantity}`);
  const value = read(engine);
  if (value !== null) return { value, absent: null };
  return { value, absent: noneOf[row.quantity] ?? 'The model has no value here.' };
}

/** A quantity that has one value an engine, of an engine that has it. */
export function computedInput(engine: EngineSolution, quantity: string): number {
  const value = unplaced[quantity]?.(engine);
  if (value === undefined || value === null) throw new Error(`No computed value of ${quantity}`);
  return value;
}

function conditionOf(engine: EngineSolution, at: Ambient): FiguresAt {
  switch (at.kind) {
    case 'vacuum':
      return figuresAt(engine, 0, null);
    case 'altitude':
      return figuresAtAltitude(engine, at.altitude.value);
    case 'pressure':
      return figuresAt(engine, at.pressure.value, null);
  }
}

/** Ambient pressure [Pa] of a stated place. */
export function ambientPressureOf(at: Ambient): number {
  switch (at.kind) {
    case 'vacuum':
      return 0;
    case 'altitude':
      return airAtGeometricAltitude(at.altitude.value).pressure;
    case 'pressure':
      return at.pressure.value;
  }
}

/** A cycle in words and rows, as every face prints it. */

import type { CycleKind } from '../../study/cycleForm.ts';
import { show } from '../display.ts';
import type { EngineAnswer } from '../model.ts';
import type { CycleAnswer, CycleNumbers } from './model.ts';

const WORDS: Readonly<Record<CycleKind, string>> = {
  pressureFed: 'pressed from the tanks',
  gasGenerator: 'gas generator',
  tapOff: 'tap-off',
  bleedExpander: 'bleed expander',
  stagedCombustion: 'staged combustion',
  closedExpander: 'closed expander',
  electricPump: 'electric pumps',
};

/** What the trade calls a cycle. */
export function cycleName(kind: CycleKind): string {
  return WORDS[kind];
}

/** One row: a quantity of the catalogue, what it is called here, and its value; null: this engine has none. */
export interface CycleRow {
  readonly quantity: string;
  readonly label: string;
  readonly value: number | null;
  /** As a test writes the place. */ readonly place: '' | '(vacuum)';
}

const keys: readonly (readonly [key: keyof CycleNumbers, label: string])[] = [
  ['dumpShare', 'dumped, of all propellant'],
  ['impulseLost', 'what that costs in vacuum'],
  ['lostPerHundredBar', '100 bar more would cost'],
  ['pumpPower', 'power of the pumps'],
  ['oxidiserPressure', 'oxidiser pressed to'],
  ['fuelPressure', 'fuel pressed to'],
  ['turbineInletTemperature', 'ahead of the turbine'],
  ['turbinePressureRatio', 'turbine pressure ratio'],
  ['turbineFlow', 'through the turbine'],
  ['reachablePressure', 'highest chamber pressure'],
  ['tankPressure', 'pressure in the tanks'],
  ['tankMass', 'tank walls, by strength alone'],
  ['pressurantMass', 'helium'],
  ['bottleMass', 'its bottle'],
  ['batteryMass', 'battery'],
];

/** Rows with a number; empty where the study says nothing of a cycle. */
export function cycleRows({ cycle, mass }: EngineAnswer): readonly CycleRow[] {
  if (cycle === undefined) return [];
  const rows: readonly CycleRow[] = [
    {
      quantity: 'cycle.specificImpulse',
      label: 'specific impulse of the engine in vacuum',
      value: cycle.vacuum.specificImpulse,
      place: '(vacuum)',
    },
    ...keys.map(
      ([key, label]): CycleRow => ({ quantity: `cycle.${key}`, label, value: cycle[key], place: '' }),
    ),
    {
      quantity: 'mass.engine',
      label: 'dry mass of the engine, about',
      value: mass?.engine ?? null,
      place: '',
    },
  ];
  return rows.filter(({ value }) => value !== null);
}

/** What it costs, what it can reach and what sets that; why not where it cannot be driven so. */
export function cycleVerdict(answer: EngineAnswer): string {
  const { cycle, reasons } = answer;
  if (cycle === undefined) return '';
  const wrong = cycle.massFlow === null ? reasons.find(({ path }) => path === 'cycle.massFlow') : undefined;
  const first = wrong === undefined ? costWords(cycle) : `${wrong.reason} ${wrong.mend}`;
  return [`${capital(cycleName(cycle.kind))}: ${first}`, ...reachWords(cycle), ...massWords(answer)].join(
    ' ',
  );
}

function costWords({ dumpShare, impulseLost, dumpFlow, batteryMass }: CycleAnswer): string {
  if (dumpFlow !== null && dumpFlow > 0 && dumpShare !== null && impulseLost !== null) {
    return `${show('cycle.dumpShare', dumpShare).text} of the propellant drives the turbine and is dumped, which costs ${show('cycle.impulseLost', impulseLost).text} in vacuum.`;
  }
  if (batteryMass !== null) {
    return `nothing is dumped; a battery of ${show('cycle.batteryMass', batteryMass).text} drives the pumps.`;
  }
  return 'nothing is dumped: all propellant burns in the chamber.';
}

function reachWords({ reachablePressure, reachSetBy }: CycleAnswer): readonly string[] {
  if (reachablePressure === null || reachSetBy === null) return [];
  return [
    `It could reach ${show('cycle.reachablePressure', reachablePressure).text}; what sets that is ${reachSetBy}.`,
  ];
}

function massWords({ mass }: EngineAnswer): readonly string[] {
  if (!mass) return [];
  return [
    `Engines of this thrust weigh ${show('mass.engine', mass.low).text} to ${show('mass.engine', mass.high).text} dry by published relations.`,
  ];
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/** What a study states of a cycle. */

import { type CycleCommon, type CycleRow, cycleEntry, ofCycle } from './cycleRow.ts';
import { type CatalogueEntry, SOURCE, UNIT } from './entry.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

const input: CycleCommon = {
  ...ofCycle,
  source: SOURCE.study,
  model: 'study-file',
  typicalError: TYPICAL_ERROR.stated,
  limits: 'As good as the number the study states.',
  place: 'input',
};

const stated: readonly CycleRow[] = [
  [
    'injectorDrop',
    'pressure lost in the injector',
    'ratio',
    UNIT.percent,
    'Over the chamber pressure.',
    'Δp/p_c',
  ],
  [
    'jacketDrop',
    'pressure lost in the cooling channels',
    'ratio',
    UNIT.percent,
    'Of the fuel, over the chamber pressure.',
    'Δp/p_c',
  ],
  [
    'lineDrop',
    'pressure lost in valves and lines',
    'ratio',
    UNIT.percent,
    'Over the chamber pressure.',
    'Δp/p_c',
  ],
  [
    'oxidiserPumpEfficiency',
    'efficiency of the oxidiser’s pump',
    'ratio',
    UNIT.percent,
    'Share of the shaft’s power that becomes pressure.',
    'η_p',
  ],
  [
    'fuelPumpEfficiency',
    'efficiency of the fuel’s pump',
    'ratio',
    UNIT.percent,
    'Share of the shaft’s power that becomes pressure.',
    'η_p',
  ],
  [
    'turbineEfficiency',
    'efficiency of the turbine',
    'ratio',
    UNIT.percent,
    'Share of the gas’s ideal work that reaches the pumps.',
    'η_T',
  ],
  [
    'pumpPressureLimit',
    'highest pressure allowed behind a pump',
    'pressure',
    UNIT.bar,
    'It takes part in what the cycle can reach.',
    'as stated',
  ],
  [
    'exhaustAreaRatio',
    'area ratio of the small nozzle behind the turbine',
    'ratio',
    UNIT.one,
    'Through which the dumped gas leaves.',
    'A_e/A_t',
  ],
  ['burnTime', 'burn time', 'time', UNIT.second, 'For the mass of tanks, pressing gas and battery.', 't'],
  [
    'tankStress',
    'stress that the tanks’ wall is allowed',
    'pressure',
    UNIT.megapascal,
    'Safety taken off already.',
    'σ',
  ],
  [
    'tankDensity',
    'density of the tanks’ wall',
    'density',
    UNIT.kilogramPerCubicMetre,
    'Of the metal or composite.',
    'ρ',
  ],
  [
    'heliumPressure',
    'pressure of the helium bottle at the start',
    'pressure',
    UNIT.bar,
    'Before any propellant is driven out.',
    'p₀',
  ],
  [
    'motorEfficiency',
    'efficiency of motor and electronics',
    'ratio',
    UNIT.percent,
    'Share of the battery’s power that reaches the pumps’ shaft.',
    'η',
  ],
  [
    'batteryEnergy',
    'energy of a kilogram of battery',
    'specificEnergy',
    UNIT.megajoulePerKilogram,
    'That it holds.',
    'e',
  ],
  [
    'batteryPower',
    'power of a kilogram of battery',
    'specificPower',
    UNIT.kilowattPerKilogram,
    'That it gives at most.',
    'p',
  ],
];

export const cycleInputs: readonly CatalogueEntry[] = stated.map((row) => cycleEntry(input, row));

/** How the propellants reach the chamber: the keys of `cycle`, by kind. Defaults without a source are common practice. */

import type { ChoiceField, Fields, QuantityField, Range } from './form.ts';
import type { QuantityKind } from './unitTable.ts';

const quantity = (kinds: QuantityKind, range: Range, byDefault: string, meaning: string): QuantityField => ({
  is: 'quantity',
  kinds: [kinds],
  range,
  example: byDefault,
  byDefault,
  meaning,
});

const share: Range = { above: 0, upTo: 1, words: 'more than 0 % and up to 100 %' };
const drop: Range = { from: 0, upTo: 2, words: '0 % to 200 %' };
const pressure: Range = { above: 0, upTo: 2000e5, words: 'more than 0 bar and up to 2000 bar' };
const ratio: Range = { above: 1, upTo: 200, words: 'more than 1 and up to 200' };
const gasTemperature: Range = { from: 150, upTo: 2000, words: '150 K to 2000 K' };

const drops = {
  injectorDrop: quantity('share', drop, '20 %', 'Pressure lost in the injector, over the chamber pressure.'),
  jacketDrop: quantity(
    'share',
    drop,
    '20 ± 10 %',
    'Pressure the fuel loses in the cooling channels, over the chamber pressure.',
  ),
  lineDrop: quantity('share', drop, '3.5 %', 'Pressure lost in valves and lines, over the chamber pressure.'),
};
const burnTime = quantity(
  'time',
  { above: 0, upTo: 1e5, words: 'more than 0 s and up to 100000 s' },
  '150 s',
  'How long the engine burns, for the mass of tanks, pressing gas and battery.',
);
const tank = {
  burnTime,
  tankStress: quantity(
    'pressure',
    { above: 0, upTo: 5e9, words: 'more than 0 MPa and up to 5000 MPa' },
    '280 MPa',
    'Stress that the tanks’ wall is allowed, safety taken off: an aluminium alloy.',
  ),
  tankDensity: quantity(
    'density',
    { above: 0, upTo: 20_000, words: 'more than 0 and up to 20000 kg/m³' },
    '2800 kg/m³',
    'Density of the tanks’ wall: an aluminium alloy.',
  ),
};
const pumps = {
  ...drops,
  oxidiserPumpEfficiency: quantity(
    'share',
    share,
    '70 ± 8 %',
    'Share of the shaft’s power that the oxidiser’s pump turns into pressure.',
  ),
  fuelPumpEfficiency: quantity('share', share, '70 ± 8 %', 'The same of the fuel’s pump.'),
  pumpPressureLimit: quantity(
    'pressure',
    pressure,
    '550 bar',
    'Highest pressure allowed behind a pump; it takes part in what the cycle can reach.',
  ),
  tankPressure: quantity('pressure', pressure, '3 bar', 'Pressure in the tanks, ahead of the pumps.'),
  ...tank,
};
const turbineEfficiency = (byDefault: string): QuantityField =>
  quantity(
    'share',
    share,
    byDefault,
    'Share of the ideal work of the gas that reaches the pumps, bearings and gears included.',
  );
const inletTemperature = (byDefault: string): QuantityField =>
  quantity(
    'temperature',
    gasTemperature,
    byDefault,
    'Temperature of the gas ahead of the turbine: what its blades stand.',
  );
const byWalls = {
  is: 'quantity',
  kinds: ['temperature'],
  range: gasTemperature,
  example: '220 K',
  optional: true,
  meaning:
    'Temperature of the fuel ahead of the turbine. Absent: what the heat of chamber and nozzle wall makes of all the fuel.',
} as const satisfies QuantityField;
const open = (turbinePressureRatio: string) => ({
  turbinePressureRatio: quantity(
    'number',
    ratio,
    turbinePressureRatio,
    'Pressure ahead of the turbine over that behind it; ahead of it stands the chamber pressure.',
  ),
  exhaustAreaRatio: quantity(
    'number',
    { from: 1, upTo: 200, words: '1 to 200' },
    '4',
    'Area ratio of the small nozzle behind the turbine.',
  ),
});

/** The cycle, by `kind`. */
export const cycleForms = {
  pressureFed: {
    ...drops,
    tankPressure: {
      is: 'quantity',
      kinds: ['pressure'],
      range: pressure,
      example: '25 bar',
      optional: true,
      meaning: 'Pressure in the tanks. Absent: as much as the chamber needs.',
    },
    ...tank,
    heliumPressure: quantity('pressure', pressure, '300 bar', 'Pressure of the helium bottle at the start.'),
  },
  gasGenerator: {
    ...pumps,
    turbineEfficiency: turbineEfficiency('60 ± 10 %'),
    turbineInletTemperature: inletTemperature('900 K'),
    ...open('20'),
  },
  tapOff: {
    ...pumps,
    turbineEfficiency: turbineEfficiency('60 ± 10 %'),
    turbineInletTemperature: inletTemperature('900 K'),
    ...open('20'),
  },
  bleedExpander: {
    ...pumps,
    turbineEfficiency: turbineEfficiency('60 ± 10 %'),
    turbineInletTemperature: byWalls,
    ...open('12'),
  },
  stagedCombustion: {
    ...pumps,
    rich: {
      is: 'choice',
      options: ['fuel', 'oxidiser'],
      byDefault: 'fuel',
      meaning: 'Of which propellant the turbine’s gas has too much: all of it passes the preburner.',
    },
    turbineEfficiency: turbineEfficiency('75 ± 6 %'),
    turbineInletTemperature: inletTemperature('850 K'),
  },
  closedExpander: {
    ...pumps,
    turbineEfficiency: turbineEfficiency('70 ± 8 %'),
    turbineInletTemperature: byWalls,
  },
  electricPump: {
    ...pumps,
    motorEfficiency: quantity(
      'share',
      share,
      '85 ± 5 %',
      'Share of the battery’s power that reaches the pump’s shaft.',
    ),
    batteryEnergy: quantity(
      'energyPerMass',
      { above: 0, upTo: 1e8, words: 'more than 0 and up to 100 MJ/kg' },
      '0.6 MJ/kg',
      'Energy that a kilogram of battery holds.',
    ),
    batteryPower: quantity(
      'powerPerMass',
      { above: 0, upTo: 1e7, words: 'more than 0 and up to 10 MW/kg' },
      '5 kW/kg',
      'Power that a kilogram of battery gives at most.',
    ),
  },
} as const satisfies Record<string, Fields & { readonly rich?: ChoiceField }>;

export type CycleKind = keyof typeof cycleForms;
export const cycleKinds = Object.keys(cycleForms) as CycleKind[];

export const cycleMeaning: Readonly<Record<CycleKind, string>> = {
  pressureFed: 'Gas presses the propellants out of strong tanks; there are no pumps.',
  gasGenerator: 'A small burner feeds the turbine; its cool gas is dumped.',
  tapOff: 'The turbine is fed with gas drawn from the chamber where it is cool; it is dumped.',
  bleedExpander: 'Part of the fuel that cooled the walls drives the turbine and is dumped.',
  stagedCombustion: 'All of one propellant passes a preburner and the turbine, and burns on in the chamber.',
  closedExpander: 'The fuel that cooled the walls drives the turbine, and burns in the chamber.',
  electricPump: 'Motors and a battery drive the pumps.',
};

type Read<Field, Q> = Field extends { readonly is: 'choice'; readonly options: readonly (infer Option)[] }
  ? Option
  : Field extends { readonly optional: true }
    ? Q | null
    : Q;

/** A cycle as read, by kind: every key of its form. */
export type CycleOf<Q> = {
  readonly [Kind in CycleKind]: { readonly kind: Kind } & {
    readonly [Key in keyof (typeof cycleForms)[Kind]]: Read<(typeof cycleForms)[Kind][Key], Q>;
  };
}[CycleKind];

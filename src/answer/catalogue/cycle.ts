import { type CatalogueEntry, type Dimension, type DisplayUnit, SOURCE, UNIT } from './entry.ts';
import { TYPICAL_ERROR } from './typicalError.ts';

const balanceSource =
  'M. Martinez-Sanchez, MIT 16.512 Rocket Propulsion, lecture 25; A. J. Sobin, W. R. Bissell, NASA SP-8107, 1974';
const ofCycle = {
  model: 'cycle',
  source: balanceSource,
  typicalError:
    'Pump power of three public engines within 30 % with the usual drops and efficiencies; the efficiencies’ own ± decides (docs/methods/cycle.md).',
  limits:
    'A balance of powers with stated efficiencies and drops, steady, one shaft in effect. For comparison, not for building.',
} as const;
type Common = Pick<CatalogueEntry, 'model' | 'source' | 'typicalError' | 'limits' | 'place'>;
const engine: Common = { ...ofCycle, place: 'engine' };

type Row = readonly [
  key: string,
  label: string,
  dimension: Dimension,
  unit: DisplayUnit,
  meaning: string,
  equation: string,
  rest?: Partial<CatalogueEntry>,
];

function entryOf(
  common: Common,
  [key, label, dimension, unit, meaning, equation, rest]: Row,
): CatalogueEntry {
  return { ...common, name: `cycle.${key}`, label, dimension, unit, digits: 3, meaning, equation, ...rest };
}

const withDump = {
  typicalError:
    'In vacuum within 2 % of published hydrogen engines that dump, within 3 % of kerosene ones with the chamber efficiency of their day (docs/methods/cycle.md).',
  limits:
    'The dump’s own thrust is counted as if it pushed straight back; films along the wall are not in it. Where nothing is dumped it is the chamber’s.',
};
const byGas = {
  limits:
    'The gas is in equilibrium; real fuel-rich kerosene gas gives up to some 20 % less work, which the band has in it.',
};
const pressure = { unitForSmall: UNIT.pascal };
const flow = { unitForSmall: UNIT.gramPerSecond };
const power = { unitForSmall: UNIT.kilowatt };

const computed: readonly Row[] = [
  [
    'massFlow',
    'propellant flow of the engine',
    'massFlow',
    UNIT.kilogramPerSecond,
    'All that leaves the tanks: into the chamber, and what an open cycle dumps.',
    'ṁ = ṁ_c + ṁ_d',
    flow,
  ],
  [
    'mixtureRatio',
    'mixture ratio of the engine',
    'ratio',
    UNIT.one,
    'Oxidiser over fuel by mass out of the tanks; of an open cycle below that of its chamber.',
    'r = Σ ṁ_o / Σ ṁ_f',
    { aliases: ['engineMixtureRatio'] },
  ],
  [
    'dumpShare',
    'dumped share of the propellant',
    'ratio',
    UNIT.percent,
    'What drives the turbine and is then thrown away, over all that the engine takes.',
    'x = ṁ_d / (ṁ_c + ṁ_d)',
    { ...byGas, aliases: ['dumpShare', 'wastedShare'] },
  ],
  [
    'dumpFlow',
    'flow that is dumped',
    'massFlow',
    UNIT.kilogramPerSecond,
    'Gas that leaves behind the turbine instead of through the chamber.',
    'ṁ_d = (ṁ_o e_o + ṁ_f e_f)/(w − e_g)',
    { ...flow, ...byGas },
  ],
  [
    'dumpImpulse',
    'specific impulse of the dumped gas in vacuum',
    'time',
    UNIT.second,
    'What the small nozzle behind the turbine makes of it.',
    'I_d = [u_e + p_e/(ρ_e u_e)]/g₀',
  ],
  [
    'dumpTemperature',
    'temperature behind the turbine',
    'temperature',
    UNIT.kelvin,
    'Of the gas that is dumped.',
    'T₂ = T₁ − η_T Δh/c_p',
  ],
  [
    'impulseLost',
    'specific impulse lost to the cycle',
    'time',
    UNIT.second,
    'Of the chamber in vacuum less that of the whole engine: what is dumped times how much worse it does.',
    'ΔI = x (I_c − I_d)',
    { ...byGas, aliases: ['dumpLoss'] },
  ],
  [
    'lostPerHundredBar',
    'what 100 bar more cost in specific impulse',
    'time',
    UNIT.second,
    'How much more the cycle would cost in vacuum for each 100 bar of chamber pressure, the chamber’s own gain not counted.',
    '100 bar · d(ΔI)/dp_c, flow of the chamber held',
    {
      ...byGas,
      typicalError:
        'A lecture gives 1.5 to 4 s for each 100 atm (M. Martinez-Sanchez, MIT 16.512, lecture 25).',
    },
  ],
  [
    'pumpPower',
    'power of the pumps',
    'power',
    UNIT.megawatt,
    'What the pumps take from their shaft, together.',
    'P = Σ ṁ Δp/(η_p ρ)',
    power,
  ],
  [
    'oxidiserPressure',
    'pressure behind the oxidiser’s pump',
    'pressure',
    UNIT.bar,
    'The highest that any of its oxidiser is pumped to; without pumps, what its tank must hold.',
    'p_c (1 + drops), in series with the turbine π p_c (1 + drops)',
    pressure,
  ],
  [
    'fuelPressure',
    'pressure behind the fuel’s pump',
    'pressure',
    UNIT.bar,
    'The highest that any of its fuel is pumped to; without pumps, what its tank must hold.',
    'as for the oxidiser, and the cooling channels',
    pressure,
  ],
  [
    'turbineFlow',
    'flow through the turbine',
    'massFlow',
    UNIT.kilogramPerSecond,
    'Gas that drives the pumps.',
    'ṁ_T w = P',
    { ...flow, ...byGas },
  ],
  [
    'turbineWork',
    'work of the turbine’s gas',
    'specificEnergy',
    UNIT.kilojoulePerKilogram,
    'What each kilogram gives to the shaft.',
    'w = η_T Δh(π), composition held',
    byGas,
  ],
  [
    'turbinePressureRatio',
    'turbine pressure ratio',
    'ratio',
    UNIT.one,
    'Pressure ahead of the turbine over that behind it: stated where the gas is dumped, found where it burns on.',
    'π = p₁/p₂',
  ],
  [
    'turbineInletTemperature',
    'temperature ahead of the turbine',
    'temperature',
    UNIT.kelvin,
    'As stated; of an expander what the walls’ heat makes of the fuel.',
    'T₁; expander: h(T₁) = h_fed + Q/ṁ_f',
    { typicalError: 'As stated; from the walls’ heat as good as that heat, ±20 %.' },
  ],
  [
    'gasMixtureRatio',
    'mixture ratio of the turbine’s gas',
    'ratio',
    UNIT.one,
    'Oxidiser over fuel by mass at which the burnt gas is just so warm.',
    'r: T_eq(h(r), p) = T₁',
    { ...byGas, source: SOURCE.gibbs },
  ],
  [
    'gasMolarMass',
    'molar mass of the turbine’s gas',
    'molarMass',
    UNIT.gramPerMole,
    'Light gas gives more work at one temperature.',
    'M = Σ xⱼ Mⱼ',
    { ...byGas, source: SOURCE.gibbs },
  ],
  [
    'gasHeatCapacity',
    'heat capacity of the turbine’s gas',
    'heatCapacity',
    UNIT.joulePerKilogramKelvin,
    'Per kilogram and kelvin at constant pressure, composition held.',
    'c_p',
    { ...byGas, source: SOURCE.species },
  ],
  [
    'reachablePressure',
    'highest chamber pressure of the cycle',
    'pressure',
    UNIT.bar,
    'Where the power of the turbine or the pressure behind a pump sets an end, flow and shares of the drops held.',
    'p_c: least margin = 0',
    { ...pressure, aliases: ['reachablePressure'] },
  ],
  [
    'pressureMargin',
    'highest chamber pressure over the stated one',
    'ratio',
    UNIT.one,
    'Below 1 the cycle cannot do what the study asks of it.',
    'p_c,max / p_c',
  ],
  [
    'tankPressure',
    'pressure in the tanks',
    'pressure',
    UNIT.bar,
    'As stated; without pumps and not stated, what the chamber needs.',
    'p_c (1 + drops)',
    pressure,
  ],
  [
    'tankMass',
    'mass of the tanks’ walls',
    'mass',
    UNIT.kilogram,
    'Of both tanks for the stated burn, by strength alone: between spheres and long cylinders.',
    'm = (3/2 … 2) p V ρ/σ',
    {
      source: 'membrane stress; D. K. Huzel, D. H. Huang, NASA SP-125, 2nd ed. 1971, ch. 8',
      typicalError: 'The wall alone: real tanks weigh more, at low pressure several times as much.',
      limits:
        'No ends, fittings, insulation or least thickness. For comparison, not for building or pressurising anything.',
    },
  ],
  [
    'pressurantMass',
    'mass of the pressing gas',
    'mass',
    UNIT.kilogram,
    'Helium that drives the propellant out.',
    'm = p V M/(R T) · γ/(1 − p/p₀)',
    { source: 'G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., 2001, ch. 6 (from memory)' },
  ],
  [
    'bottleMass',
    'mass of the bottle of pressing gas',
    'mass',
    UNIT.kilogram,
    'Its wall, of the tanks’ material.',
    'm = (3/2 … 2) p₀ V₀ ρ/σ',
    { source: 'membrane stress' },
  ],
  [
    'batteryMass',
    'mass of the battery',
    'mass',
    UNIT.kilogram,
    'As much as holds the energy for the burn or gives the power, whichever is more.',
    'm = max(P t/(η e), P/(η p))',
    {
      source: 'energy balance, no source needed',
      typicalError: 'As good as the stated energy and power of a kilogram.',
    },
  ],
];

const input: Common = {
  ...ofCycle,
  source: SOURCE.study,
  model: 'study-file',
  typicalError: TYPICAL_ERROR.stated,
  limits: 'As good as the number the study states.',
  place: 'input',
};

const stated: readonly Row[] = [
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

/** Pumps, turbines, tanks, and what the engine weighs. */
export const cycleQuantities: readonly CatalogueEntry[] = [
  entryOf({ ...ofCycle, place: 'altitude' }, [
    'specificImpulse',
    'specific impulse of the whole engine',
    'time',
    UNIT.second,
    'Thrust of chamber and dump over all propellant that the engine takes: never mixed with that of the chamber alone.',
    'I = (ṁ_c I_c + ṁ_d I_d)/(ṁ_c + ṁ_d)',
    { ...withDump, digits: 4, aliases: ['engineImpulse', 'engineSpecificImpulse'] },
  ]),
  entryOf({ ...ofCycle, place: 'altitude' }, [
    'thrust',
    'thrust of the whole engine',
    'force',
    UNIT.kilonewton,
    'Of the chamber and of the gas that is dumped.',
    'F = F_c + ṁ_d I_d g₀',
    { ...withDump, unitForSmall: UNIT.newton, aliases: ['engineThrust'] },
  ]),
  ...computed.map((row) => entryOf(engine, row)),
  ...massQuantities(),
  ...stated.map((row) => entryOf(input, row)),
];

function massQuantities(): readonly CatalogueEntry[] {
  const common = {
    ...engine,
    source:
      'D. L. Akin, University of Maryland, mass estimating relations; B. T. C. Zandbergen, EUCASS 2015 (both from memory)',
    typicalError:
      'Two published relations; public engines lie between 30 % below and 35 % above them, but for the lightest kerosene ones (docs/methods/cycle.md).',
    limits:
      'By thrust, area ratio and fuel alone: no chamber pressure, no cycle, no year. Pump-fed by a turbine, 10 kN to 10 MN.',
    digits: 2,
  } as const;
  return [
    {
      ...common,
      name: 'mass.engine',
      aliases: ['engineMass', 'dryMass'],
      label: 'dry mass of the engine',
      dimension: 'mass',
      unit: UNIT.kilogram,
      meaning:
        'What an engine of this thrust usually weighs without propellant: an estimate with a wide band.',
      equation: '7.81·10⁻⁴ F + 3.37·10⁻⁵ F √ε + 59; 0.00514 F^0.92068 or 1.104·10⁻³ F + 27.7; geometric mean',
    },
    {
      ...common,
      name: 'mass.thrustToWeight',
      aliases: ['thrustToWeight'],
      label: 'thrust over the engine’s own weight',
      dimension: 'ratio',
      unit: UNIT.one,
      meaning: 'Thrust in vacuum over the weight of the dry engine at the ground.',
      equation: 'F/(m g₀)',
    },
  ];
}

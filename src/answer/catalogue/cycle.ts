import { cycleInputs } from './cycleInputs.ts';
import { type CycleCommon, type CycleRow, cycleEntry, ofCycle } from './cycleRow.ts';
import { engineMassQuantities } from './engineMass.ts';
import { type CatalogueEntry, SOURCE, UNIT } from './entry.ts';
import { tankQuantities } from './tanks.ts';

const engine: CycleCommon = { ...ofCycle, place: 'engine' };

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

const computed: readonly CycleRow[] = [
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
];

/** Pumps, turbines, tanks, and what the engine weighs. */
export const cycleQuantities: readonly CatalogueEntry[] = [
  cycleEntry({ ...ofCycle, place: 'altitude' }, [
    'specificImpulse',
    'specific impulse of the whole engine',
    'time',
    UNIT.second,
    'Thrust of chamber and dump over all propellant that the engine takes: never mixed with that of the chamber alone.',
    'I = (ṁ_c I_c + ṁ_d I_d)/(ṁ_c + ṁ_d)',
    { ...withDump, digits: 4, aliases: ['engineImpulse', 'engineSpecificImpulse'] },
  ]),
  cycleEntry({ ...ofCycle, place: 'altitude' }, [
    'thrust',
    'thrust of the whole engine',
    'force',
    UNIT.kilonewton,
    'Of the chamber and of the gas that is dumped.',
    'F = F_c + ṁ_d I_d g₀',
    { ...withDump, unitForSmall: UNIT.newton, aliases: ['engineThrust'] },
  ]),
  ...computed.map((row) => cycleEntry(engine, row)),
  ...tankQuantities,
  ...engineMassQuantities,
  ...cycleInputs,
];

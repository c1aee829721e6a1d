/** What one quantity of the catalogue knows about itself. */

import type { PartKind } from '../asked/model.ts';

export type Dimension =
  | 'pressure'
  | 'temperature'
  | 'length'
  | 'area'
  | 'angle'
  | 'velocity'
  | 'force'
  | 'time'
  | 'massFlow'
  | 'mass'
  | 'power'
  | 'heatFlux'
  | 'specificPower'
  | 'heatCapacity'
  | 'density'
  | 'molarMass'
  | 'acceleration'
  | 'specificEnergy'
  | 'ratio'
  | 'sameAsCompared';

/** displayed number = SI value × perSI */
export interface DisplayUnit {
  readonly symbol: string;
  readonly perSI: number;
}

/**
 * Where a quantity lives: `engine` has one value an engine, `altitude` one value a condition of the air,
 * `wall` one a point of the wall, `comparison` belongs to a pair, `air` to the air, `input` is what the study says of an engine, `vehicle` has one value a
 * vehicle, computed or stated.
 */
export type QuantityPlace = 'engine' | 'altitude' | 'wall' | 'comparison' | 'air' | 'input' | 'vehicle';

export interface CatalogueEntry {
  /** Stable; dots follow the path in the answer, e.g. `vacuum.specificImpulse`. */
  readonly name: string;
  readonly label: string;
  readonly dimension: Dimension;
  readonly unit: DisplayUnit;
  /** Taken instead where the value in `unit` would be below 1; pressures in bar, below a thousandth. */
  readonly unitForSmall?: DisplayUnit;
  /** Significant digits worth showing. */
  readonly digits: number;
  /** One line of plain meaning. */
  readonly meaning: string;
  readonly equation: string;
  readonly source: string;
  /** The page of docs/methods that describes the model. */
  readonly model: string;
  /** Known limits, and how far from measurement. */
  readonly limits: string;
  /** How far the model is from measurement, one line, with where that is known from. */
  readonly typicalError: string;
  readonly place: QuantityPlace;
  /** Other names by which it may be asked for, in plain words; one of a name that exists stands where that one needs a place. */ readonly aliases?: readonly string[];
  /** `jet`: one value a point of the jet's edge, besides the condition of the air; `flight`: one value a moment of the flight. */
  readonly along?: 'jet' | 'flight';
  /** There are several of it in one engine: which words tell them apart, and whether one must be named. */
  readonly part?: {
    readonly kinds: readonly PartKind[];
    readonly needed: boolean;
    readonly example: string;
  };
  /** It is no number of one engine: why, and what to ask instead. */
  readonly notAsked?: { readonly why: string; readonly instead: string };
}

export const UNIT = {
  bar: { symbol: 'bar', perSI: 1e-5 },
  pascal: { symbol: 'Pa', perSI: 1 },
  kelvin: { symbol: 'K', perSI: 1 },
  metre: { symbol: 'm', perSI: 1 },
  millimetre: { symbol: 'mm', perSI: 1e3 },
  kilometre: { symbol: 'km', perSI: 1e-3 },
  squareMetre: { symbol: 'm²', perSI: 1 },
  squareCentimetre: { symbol: 'cm²', perSI: 1e4 },
  degree: { symbol: '°', perSI: 180 / Math.PI },
  metrePerSecond: { symbol: 'm/s', perSI: 1 },
  kilogram: { symbol: 'kg', perSI: 1 },
  kilowattPerKilogram: { symbol: 'kW/kg', perSI: 1e-3 },
  megajoulePerKilogram: { symbol: 'MJ/kg', perSI: 1e-6 },
  joulePerKilogramKelvin: { symbol: 'J/(kg K)', perSI: 1 },
  megapascal: { symbol: 'MPa', perSI: 1e-6 },
  tonne: { symbol: 't', perSI: 1e-3 },
  kilopascal: { symbol: 'kPa', perSI: 1e-3 },
  newton: { symbol: 'N', perSI: 1 },
  megawatt: { symbol: 'MW', perSI: 1e-6 },
  kilowatt: { symbol: 'kW', perSI: 1e-3 },
  megawattPerSquareMetre: { symbol: 'MW/m²', perSI: 1e-6 },
  kilowattPerSquareMetre: { symbol: 'kW/m²', perSI: 1e-3 },
  kilonewton: { symbol: 'kN', perSI: 1e-3 },
  second: { symbol: 's', perSI: 1 },
  kilogramPerSecond: { symbol: 'kg/s', perSI: 1 },
  gramPerSecond: { symbol: 'g/s', perSI: 1e3 },
  kilogramPerCubicMetre: { symbol: 'kg/m³', perSI: 1 },
  gramPerMole: { symbol: 'g/mol', perSI: 1e3 },
  metrePerSecondSquared: { symbol: 'm/s²', perSI: 1 },
  kilojoulePerKilogram: { symbol: 'kJ/kg', perSI: 1e-3 },
  one: { symbol: '', perSI: 1 },
  percent: { symbol: '%', perSI: 100 },
} as const satisfies Record<string, DisplayUnit>;

export const SOURCE = {
  sutton: 'G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., Wiley 2001, ch. 3',
  suttonChemistry: 'G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., Wiley 2001, ch. 5',
  species: 'B. J. McBride, M. J. Zehe, S. Gordon, NASA/TP-2002-211556, 2002 (nine-coefficient polynomials)',
  gibbs: 'S. Gordon, B. J. McBride, NASA RP-1311 part I, 1994 (equations of chemical equilibrium)',
  geometry: 'geometry, no source needed',
  air: 'U.S. Standard Atmosphere, 1976, NOAA-S/T 76-1562',
  separation:
    'R. H. Schmucker, TU Munich TB-7/-10/-14, 1973; NASA TM-77396, 1984 (translation), and six more criteria, each with its source in the answer',
  bell: 'G. V. R. Rao, ARS Journal 30(6), 1960, p. 561; D. K. Huzel, D. H. Huang, NASA SP-125, 2nd ed. 1971',
  study: 'the study',
} as const;

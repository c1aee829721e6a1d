/**
 * Units a study may use, each with its exact factor to SI.
 *
 * Source of the factors: A. Thompson, B. N. Taylor, "Guide for the Use of the International System of Units (SI)",
 * NIST Special Publication 811 (2008), appendix B.8, and the definitions it rests on, from memory:
 * inch 25.4 mm, pound 0.45359237 kg (international yard and pound agreement, 1959), standard gravity
 * 9.80665 m/s², standard atmosphere 101 325 Pa, torr = atmosphere/760, conventional millimetre of mercury
 * 13.5951 g/cm³ × 9.80665 m/s² × 1 mm = 133.322387415 Pa, thermochemical calorie 4.184 J, nautical mile 1852 m.
 * Every factor below is exact by definition; a value in SI is `value · times / over`.
 */

/** Exponents of kilogram, metre, second, kelvin, mole, radian. */
export type Dimension = readonly [
  mass: number,
  length: number,
  time: number,
  temperature: number,
  amount: number,
  angle: number,
];

export interface Unit {
  readonly dimension: Dimension;
  readonly times: number;
  readonly over: number;
  /** Zero of the scale [K]: only degrees Celsius and Fahrenheit have one. */
  readonly zero?: number;
}

const NUMBER: Dimension = [0, 0, 0, 0, 0, 0];
const MASS: Dimension = [1, 0, 0, 0, 0, 0];
const LENGTH: Dimension = [0, 1, 0, 0, 0, 0];
const TIME: Dimension = [0, 0, 1, 0, 0, 0];
const TEMPERATURE: Dimension = [0, 0, 0, 1, 0, 0];
const AMOUNT: Dimension = [0, 0, 0, 0, 1, 0];
const ANGLE: Dimension = [0, 0, 0, 0, 0, 1];
const FORCE: Dimension = [1, 1, -2, 0, 0, 0];
const PRESSURE: Dimension = [1, -1, -2, 0, 0, 0];
const ENERGY: Dimension = [1, 2, -2, 0, 0, 0];
const POWER: Dimension = [1, 2, -3, 0, 0, 0];

const unit = (dimension: Dimension, times: number, over = 1): Unit => ({ dimension, times, over });

const POUND = 0.45359237;
const STANDARD_GRAVITY = 9.80665;
const INCH = 0.0254;

/** By symbol; case counts (`mPa` is not `MPa`). */
export const unitTable: ReadonlyMap<string, Unit> = new Map<string, Unit>([
  ['%', unit(NUMBER, 1, 100)],

  ['kg', unit(MASS, 1)],
  ['g', unit(MASS, 1, 1000)],
  ['mg', unit(MASS, 1, 1e6)],
  ['t', unit(MASS, 1000)],
  ['lb', unit(MASS, POUND)],

  ['m', unit(LENGTH, 1)],
  ['km', unit(LENGTH, 1000)],
  ['cm', unit(LENGTH, 1, 100)],
  ['mm', unit(LENGTH, 1, 1000)],
  ['µm', unit(LENGTH, 1, 1e6)],
  ['in', unit(LENGTH, 254, 10000)],
  ['ft', unit(LENGTH, 3048, 10000)],
  ['mi', unit(LENGTH, 1609344, 1000)],
  ['nmi', unit(LENGTH, 1852)],
  ['L', unit([0, 3, 0, 0, 0, 0], 1, 1000)],

  ['s', unit(TIME, 1)],
  ['ms', unit(TIME, 1, 1000)],
  ['min', unit(TIME, 60)],
  ['h', unit(TIME, 3600)],

  ['K', unit(TEMPERATURE, 1)],
  ['°C', { ...unit(TEMPERATURE, 1), zero: 273.15 }],
  ['°F', { ...unit(TEMPERATURE, 5, 9), zero: 273.15 - 160 / 9 }],
  ['°R', unit(TEMPERATURE, 5, 9)],

  ['mol', unit(AMOUNT, 1)],
  ['kmol', unit(AMOUNT, 1000)],

  ['rad', unit(ANGLE, 1)],
  ['deg', unit(ANGLE, Math.PI, 180)],

  ['N', unit(FORCE, 1)],
  ['kN', unit(FORCE, 1000)],
  ['MN', unit(FORCE, 1e6)],
  ['lbf', unit(FORCE, POUND * STANDARD_GRAVITY)],
  ['klbf', unit(FORCE, 1000 * POUND * STANDARD_GRAVITY)],
  ['kgf', unit(FORCE, STANDARD_GRAVITY)],
  ['tf', unit(FORCE, 1000 * STANDARD_GRAVITY)],

  ['Pa', unit(PRESSURE, 1)],
  ['hPa', unit(PRESSURE, 100)],
  ['kPa', unit(PRESSURE, 1000)],
  ['MPa', unit(PRESSURE, 1e6)],
  ['bar', unit(PRESSURE, 1e5)],
  ['mbar', unit(PRESSURE, 100)],
  ['atm', unit(PRESSURE, 101325)],
  ['Torr', unit(PRESSURE, 101325, 760)],
  ['mmHg', unit(PRESSURE, 133.322387415)],
  ['psi', unit(PRESSURE, POUND * STANDARD_GRAVITY, INCH * INCH)],
  ['ksi', unit(PRESSURE, 1000 * POUND * STANDARD_GRAVITY, INCH * INCH)],

  ['J', unit(ENERGY, 1)],
  ['kJ', unit(ENERGY, 1000)],
  ['MJ', unit(ENERGY, 1e6)],
  ['cal', unit(ENERGY, 4184, 1000)],
  ['kcal', unit(ENERGY, 4184)],
  ['W', unit(POWER, 1)],
  ['kW', unit(POWER, 1000)],
  ['MW', unit(POWER, 1e6)],
]);

/** Other spellings of the symbols above. */
export const unitSpellings: ReadonlyMap<string, string> = new Map([
  ['percent', '%'],
  ['per cent', '%'],
  ['metre', 'm'],
  ['metres', 'm'],
  ['meter', 'm'],
  ['meters', 'm'],
  ['um', 'µm'],
  ['μm', 'µm'],
  ['inch', 'in'],
  ['inches', 'in'],
  ['feet', 'ft'],
  ['foot', 'ft'],
  ['tonne', 't'],
  ['tonnes', 't'],
  ['lbs', 'lb'],
  ['lbm', 'lb'],
  ['sec', 's'],
  ['kelvin', 'K'],
  ['degC', '°C'],
  ['degF', '°F'],
  ['degR', '°R'],
  ['°K', 'K'],
  ['°', 'deg'],
  ['degree', 'deg'],
  ['degrees', 'deg'],
  ['torr', 'Torr'],
  ['bara', 'bar'],
  ['psia', 'psi'],
  ['bar absolute', 'bar'],
  ['psi absolute', 'psi'],
  ['bar abs', 'bar'],
  ['psi abs', 'psi'],
  ['bar(a)', 'bar'],
  ['psi(a)', 'psi'],
]);

export type QuantityKind =
  | 'number'
  | 'share'
  | 'pressure'
  | 'temperature'
  | 'length'
  | 'area'
  | 'mass'
  | 'force'
  | 'speed'
  | 'acceleration'
  | 'time'
  | 'angle'
  | 'massFlow'
  | 'energyPerMass'
  | 'energyPerMole'
  | 'powerPerMass'
  | 'density'
  | 'molarMass';

export interface KindOfQuantity {
  /** In words, for messages. */ readonly name: string;
  readonly dimension: Dimension;
  /** Units offered in messages, most usual first. */ readonly usual: readonly string[];
  /** True where a bare number is a value of this kind. */ readonly bare: boolean;
}

export const quantityKinds: Readonly<Record<QuantityKind, KindOfQuantity>> = {
  number: { name: 'a plain number', dimension: NUMBER, usual: [], bare: true },
  share: { name: 'a share', dimension: NUMBER, usual: ['%'], bare: true },
  pressure: {
    name: 'a pressure',
    dimension: PRESSURE,
    usual: ['bar', 'MPa', 'kPa', 'Pa', 'mbar', 'psi', 'atm', 'Torr', 'mmHg'],
    bare: false,
  },
  temperature: {
    name: 'a temperature',
    dimension: TEMPERATURE,
    usual: ['K', '°C', '°F', '°R'],
    bare: false,
  },
  length: {
    name: 'a length',
    dimension: LENGTH,
    usual: ['m', 'mm', 'cm', 'km', 'in', 'ft', 'mi', 'nmi'],
    bare: false,
  },
  area: { name: 'an area', dimension: [0, 2, 0, 0, 0, 0], usual: ['m²', 'cm²', 'in²', 'ft²'], bare: false },
  mass: { name: 'a mass', dimension: MASS, usual: ['kg', 'g', 't', 'lb'], bare: false },
  force: {
    name: 'a force',
    dimension: FORCE,
    usual: ['N', 'kN', 'MN', 'lbf', 'klbf', 'kgf', 'tf'],
    bare: false,
  },
  speed: {
    name: 'a speed',
    dimension: [0, 1, -1, 0, 0, 0],
    usual: ['m/s', 'km/s', 'km/h', 'ft/s'],
    bare: false,
  },
  acceleration: {
    name: 'an acceleration',
    dimension: [0, 1, -2, 0, 0, 0],
    usual: ['m/s²', 'ft/s²'],
    bare: false,
  },
  time: { name: 'a time', dimension: TIME, usual: ['s', 'ms', 'min', 'h'], bare: false },
  angle: { name: 'an angle', dimension: ANGLE, usual: ['deg', '°', 'rad'], bare: false },
  massFlow: {
    name: 'a mass flow',
    dimension: [1, 0, -1, 0, 0, 0],
    usual: ['kg/s', 't/s', 'lb/s'],
    bare: false,
  },
  energyPerMass: {
    name: 'an energy per mass',
    dimension: [0, 2, -2, 0, 0, 0],
    usual: ['kJ/kg', 'MJ/kg', 'J/kg', 'cal/g'],
    bare: false,
  },
  energyPerMole: {
    name: 'an energy per mole',
    dimension: [1, 2, -2, 0, -1, 0],
    usual: ['kJ/mol', 'J/mol', 'kcal/mol'],
    bare: false,
  },
  powerPerMass: {
    name: 'a power per mass',
    dimension: [0, 2, -3, 0, 0, 0],
    usual: ['kW/kg', 'W/kg', 'MW/kg'],
    bare: false,
  },
  density: {
    name: 'a density',
    dimension: [1, -3, 0, 0, 0, 0],
    usual: ['kg/m³', 'g/cm³', 'kg/L', 'lb/ft³'],
    bare: false,
  },
  molarMass: {
    name: 'a molar mass',
    dimension: [1, 0, 0, 0, -1, 0],
    usual: ['g/mol', 'kg/mol', 'kg/kmol'],
    bare: false,
  },
};

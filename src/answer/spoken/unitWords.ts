/** Units as one says them, by the symbol that is shown. */

export interface UnitWords {
  readonly one: string;
  readonly many: string;
}

const WORDS: Readonly<Record<string, UnitWords>> = {
  '': { one: '', many: '' },
  '%': { one: 'per cent', many: 'per cent' },
  '°': { one: 'degree', many: 'degrees' },
  bar: { one: 'bar', many: 'bar' },
  Pa: { one: 'pascal', many: 'pascals' },
  K: { one: 'kelvin', many: 'kelvins' },
  m: { one: 'metre', many: 'metres' },
  mm: { one: 'millimetre', many: 'millimetres' },
  km: { one: 'kilometre', many: 'kilometres' },
  'm²': { one: 'square metre', many: 'square metres' },
  'cm²': { one: 'square centimetre', many: 'square centimetres' },
  'm/s': { one: 'metre per second', many: 'metres per second' },
  'm/s²': { one: 'metre per second squared', many: 'metres per second squared' },
  kg: { one: 'kilogram', many: 'kilograms' },
  t: { one: 'tonne', many: 'tonnes' },
  kPa: { one: 'kilopascal', many: 'kilopascals' },
  N: { one: 'newton', many: 'newtons' },
  kN: { one: 'kilonewton', many: 'kilonewtons' },
  MN: { one: 'meganewton', many: 'meganewtons' },
  'kW/kg': { one: 'kilowatt per kilogram', many: 'kilowatts per kilogram' },
  'MJ/kg': { one: 'megajoule per kilogram', many: 'megajoules per kilogram' },
  'J/(kg K)': { one: 'joule per kilogram and kelvin', many: 'joules per kilogram and kelvin' },
  MPa: { one: 'megapascal', many: 'megapascals' },
  kW: { one: 'kilowatt', many: 'kilowatts' },
  MW: { one: 'megawatt', many: 'megawatts' },
  'kW/m²': { one: 'kilowatt per square metre', many: 'kilowatts per square metre' },
  'MW/m²': { one: 'megawatt per square metre', many: 'megawatts per square metre' },
  s: { one: 'second', many: 'seconds' },
  'kg/s': { one: 'kilogram per second', many: 'kilograms per second' },
  'g/s': { one: 'gram per second', many: 'grams per second' },
  'kg/m³': { one: 'kilogram per cubic metre', many: 'kilograms per cubic metre' },
  'g/mol': { one: 'gram per mole', many: 'grams per mole' },
  'kJ/kg': { one: 'kilojoule per kilogram', many: 'kilojoules per kilogram' },
  cm: { one: 'centimetre', many: 'centimetres' },
  'km/s': { one: 'kilometre per second', many: 'kilometres per second' },
  g: { one: 'gram', many: 'grams' },
  ms: { one: 'millisecond', many: 'milliseconds' },
  min: { one: 'minute', many: 'minutes' },
  h: { one: 'hour', many: 'hours' },
  deg: { one: 'degree', many: 'degrees' },
  hPa: { one: 'hectopascal', many: 'hectopascals' },
  mbar: { one: 'millibar', many: 'millibar' },
  atm: { one: 'atmosphere', many: 'atmospheres' },
  '°C': { one: 'degree Celsius', many: 'degrees Celsius' },
  '°F': { one: 'degree Fahrenheit', many: 'degrees Fahrenheit' },
  in: { one: 'inch', many: 'inches' },
  ft: { one: 'foot', many: 'feet' },
  mi: { one: 'mile', many: 'miles' },
  nmi: { one: 'nautical mile', many: 'nautical miles' },
  'in²': { one: 'square inch', many: 'square inches' },
  'ft²': { one: 'square foot', many: 'square feet' },
  lb: { one: 'pound', many: 'pounds' },
  lbf: { one: 'pound of force', many: 'pounds of force' },
  klbf: { one: 'thousand pounds of force', many: 'thousand pounds of force' },
  kgf: { one: 'kilogram of force', many: 'kilograms of force' },
  tf: { one: 'tonne of force', many: 'tonnes of force' },
  psi: { one: 'pound per square inch', many: 'pounds per square inch' },
  'ft/s': { one: 'foot per second', many: 'feet per second' },
  'ft/s²': { one: 'foot per second squared', many: 'feet per second squared' },
  'lb/s': { one: 'pound per second', many: 'pounds per second' },
  'lb/ft³': { one: 'pound per cubic foot', many: 'pounds per cubic foot' },
};

/** Null for a symbol that nobody has put into words. */
export const findUnitWords = (symbol: string): UnitWords | null =>
  Object.hasOwn(WORDS, symbol) ? WORDS[symbol]! : null;

/** @throws Error for a symbol without words: a slip of the programmer */
export function unitWords(symbol: string): UnitWords {
  const words = WORDS[symbol];
  if (words === undefined) throw new Error(`No words for the unit ${symbol}`);
  return words;
}

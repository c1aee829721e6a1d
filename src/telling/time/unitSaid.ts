/** Any unit that may stand in a script as it is said: `kN/m²` is kilonewtons per square metre. */

import { findUnitWords, type UnitWords } from '../../answer/spoken/unitWords.ts';

/** Units that are no quantity's own, by symbol: one, many. */
const FURTHER: ReadonlyMap<string, UnitWords> = new Map(
  (
    [
      ['mg', 'milligram', 'milligrams'],
      ['µm', 'micrometre', 'micrometres'],
      ['L', 'litre', 'litres'],
      ['l', 'litre', 'litres'],
      ['°R', 'degree Rankine', 'degrees Rankine'],
      ['mol', 'mole', 'moles'],
      ['kmol', 'kilomole', 'kilomoles'],
      ['rad', 'radian', 'radians'],
      ['GPa', 'gigapascal', 'gigapascals'],
      ['Torr', 'torr', 'torr'],
      ['mmHg', 'millimetre of mercury', 'millimetres of mercury'],
      ['ksi', 'thousand pounds per square inch', 'thousand pounds per square inch'],
      ['J', 'joule', 'joules'],
      ['kJ', 'kilojoule', 'kilojoules'],
      ['MJ', 'megajoule', 'megajoules'],
      ['GJ', 'gigajoule', 'gigajoules'],
      ['cal', 'calorie', 'calories'],
      ['kcal', 'kilocalorie', 'kilocalories'],
      ['W', 'watt', 'watts'],
      ['GW', 'gigawatt', 'gigawatts'],
      ['Hz', 'hertz', 'hertz'],
      ['kHz', 'kilohertz', 'kilohertz'],
      ['dB', 'decibel', 'decibels'],
      ['V', 'volt', 'volts'],
      ['kWh', 'kilowatt hour', 'kilowatt hours'],
      ['rpm', 'revolution per minute', 'revolutions per minute'],
    ] as const
  ).map(([symbol, one, many]) => [symbol, { one, many }]),
);

const POWERS: Readonly<Record<string, string>> = { '²': 'square', '2': 'square', '³': 'cubic', '3': 'cubic' };

/** Null for a symbol that is no unit. */
export function unitSaid(symbol: string): UnitWords | null {
  if (symbol === '') return null;
  const whole = simple(symbol);
  if (whole !== null) return whole;
  const [first = '', ...below] = symbol.split('/');
  const above = productOf(first);
  const under = below.map((part) => productOf(part.replace(/^\((.*)\)$/, '$1')));
  if (above === null || under.some((part) => part === null)) return null;
  const behind = under.map((part) => ` per ${part!.one}`).join('');
  return { one: above.one + behind, many: above.many + behind };
}

function productOf(text: string): UnitWords | null {
  const parts = text.split(/[·⋅*]|\s/).map(simple);
  if (parts.some((part) => part === null)) return null;
  const [last, ...before] = [...(parts as UnitWords[])].reverse();
  const front = before
    .reverse()
    .map(({ one }) => `${one} `)
    .join('');
  return last === undefined ? null : { one: front + last.one, many: front + last.many };
}

function simple(symbol: string): UnitWords | null {
  const known = FURTHER.get(symbol) ?? findUnitWords(symbol);
  if (known !== null && known !== undefined) return known.one === '' ? null : known;
  const raised = /^(.*?)\^?([²³23])$/u.exec(symbol);
  if (raised === null) return null;
  const base = simple(raised[1]!);
  if (base === null) return null;
  const power = POWERS[raised[2]!]!;
  if (raised[1] === 's') {
    const behind = power === 'square' ? 'squared' : 'cubed';
    return { one: `${base.one} ${behind}`, many: `${base.many} ${behind}` };
  }
  return { one: `${power} ${base.one}`, many: `${power} ${base.many}` };
}

/** A worth-it table in words: what is gained, what it costs, and how much of the bound is reached. */

import { quantity } from '../catalogue.ts';
import { listed } from '../compare/speech.ts';
import { showIn, unitFor } from '../display.ts';
import type { WorthRow, WorthSide, WorthTable } from './model.ts';
import type { VehicleWorth } from './vehicleWorth.ts';

const DIGITS = 3;

/** `296 s (291 to 300)` in one unit; `no number` where there is none. */
export function sideWords({ quantity: name }: WorthRow, { found }: WorthSide): string {
  if (found === null) return 'no number';
  const unit = unitFor(quantity(name), [found.value]);
  const value = showIn(unit, found.value, DIGITS).text;
  if (found.low === null || found.high === null) return value;
  const [low, high] = [found.low, found.high].map((end) => showIn(unit, end, DIGITS).number);
  return low === high ? value : `${value} (${low} to ${high})`;
}

export const rowWords = ({ label, where }: WorthRow): string => (where === '' ? label : `${label} ${where}`);

/** On which basis, then gains that are sure and those that are not, prices, and what of the bound is left. */
export function worthWords(
  table: WorthTable,
  names: (id: string) => string,
  vehicles: readonly VehicleWorth[],
): readonly string[] {
  const other = names(table.other);
  const base = names(table.base);
  const basis =
    table.basis.length === 0
      ? `${other} and ${base} have no size in common: read each row by itself.`
      : `On one basis: ${listed(table.basis)}.`;
  const told = (group: WorthRow['group'], open: boolean): readonly string[] =>
    table.rows.flatMap((row) =>
      row.group === group &&
      row.difference !== null &&
      row.difference.value !== 0 &&
      row.difference.tooClose === open
        ? [`${rowWords(row)} ${row.difference.words}`]
        : [],
    );
  const gains = told('gain', false);
  const prices = told('price', false);
  const open = [...told('gain', true), ...told('price', true)];
  return [
    basis,
    ...(gains.length === 0 ? [] : [`Against ${base}, ${other} has: ${listed(gains)}.`]),
    ...(prices.length === 0 ? [] : [`In exchange it has: ${listed(prices)}.`]),
    ...(open.length === 0 ? [] : [`Open: ${listed(open)}.`]),
    ...boundWords(table, names),
    ...(vehicles.length > 0
      ? vehicles.flatMap(({ words }) => words)
      : [
          'Whether that is worth it is decided by what it carries: payload counts only where the study has a vehicle that reaches its orbit.',
        ]),
  ];
}

/** How far both are from what no nozzle can beat, where the bound is known. */
function boundWords({ rows, bound, other }: WorthTable, names: (id: string) => string): readonly string[] {
  if (bound === null) return [];
  const shares = rows.flatMap((row) => {
    const [limit, reached] = [row.bound?.found?.value, row.other.found?.value];
    if (row.quantity !== 'specificImpulse' || limit === undefined || reached === undefined) return [];
    return [`${showIn({ symbol: '%', perSI: 100 }, reached / limit, DIGITS).text} ${row.where}`];
  });
  if (shares.length === 0) return [];
  return [
    `Of the specific impulse that no nozzle behind that throat can beat (${names(bound)}), ${names(other)} reaches ${listed(shares)}.`,
  ];
}

/** A table of exchange rates as rows: stage and lever, kilograms of payload, kilograms of first-stage dry mass they pay for. */
export function exchangeRows({ exchange }: VehicleWorth): readonly (readonly [string, string, string])[] {
  const kilograms = (value: number): string => showIn({ symbol: 'kg', perSI: 1 }, value, DIGITS).text;
  return exchange.rates.map(({ stage, words, payload, paysFor }) => [
    `${stage} stage, ${words}`,
    kilograms(payload),
    paysFor === null ? '' : kilograms(paysFor),
  ]);
}

export const EXCHANGE_HEAD = ['', 'payload', 'in dry mass of the first stage'] as const;

/** A sweep or a map as a reader at a terminal meets it. */

import { quantity } from '../../../answer/catalogue.ts';
import { showIn, unitFor } from '../../../answer/display.ts';
import { mapFindings, mapHeadline, sweepFindings, sweepHeadline } from '../../../answer/sweeps/index.ts';
import type { Held, Origin, Sweep, SweepCurve, SweepMap, ToldRange } from '../../../answer/sweeps/model.ts';
import { digitsOf, showPlace, unitOf } from '../../../answer/sweeps/shown.ts';
import { padEnd, visibleLength, wrapped } from './wrap.ts';

const GAP = '   ';
/** Digits of a place in a table. */
const PLACE_DIGITS = 4;

export function sweepText(sweep: Sweep, width: number): string {
  const headline = sweep.request.title ?? sweepHeadline(sweep);
  return [
    wrapped(headline, width),
    valueTable(sweep),
    ...besides(headline, sweepFindings(sweep), width),
    ...bandWords(sweep).map((words) => wrapped(words, width)),
    heldText(sweep.held, width),
    originText(sweep.origin, width),
  ].join('\n\n');
}

/** What is found but for what the headline says already; nothing where that is all. */
function besides(headline: string, findings: readonly string[], width: number): readonly string[] {
  const rest = findings.filter((finding) => finding !== headline);
  return rest.length === 0 ? [] : [rest.map((finding) => wrapped(finding, width, '  ', '')).join('\n')];
}

/** One column a curve; a band stands behind its value. */
function valueTable({ range, curves }: Sweep): string {
  const head = [
    `${range.label}${unitOfPlace(range)}`,
    ...curves.map((curve) => curve.expression + unitWords(curve)),
  ];
  const xs = (curves[0]?.points ?? []).map(({ x }) => x);
  const rows = xs.map((x, i) => [placeNumber(range, x), ...curves.map((curve) => cellOf(curve, i))]);
  return tableOf([head, ...rows]);
}

function cellOf(curve: SweepCurve, i: number): string {
  const { y, low, high } = curve.points[i]!;
  if (y === null) return 'no value';
  const value = numberOf(curve, y);
  return low === null || high === null
    ? value
    : `${value} (${numberOf(curve, low)} to ${numberOf(curve, high)})`;
}

function numberOf(curve: SweepCurve, value: number): string {
  const unit = unitOf(
    curve,
    curve.points.map(({ y }) => y),
  );
  return showIn(unit, value, digitsOf(curve)).number;
}

function unitWords(curve: SweepCurve): string {
  const { symbol } = unitOf(
    curve,
    curve.points.map(({ y }) => y),
  );
  return symbol === '' ? '' : `, ${symbol}`;
}

function unitOfPlace({ quantity: name, to }: ToldRange): string {
  const { symbol } = unitFor(quantity(name), [to]);
  return symbol === '' ? '' : `, ${symbol}`;
}

function placeNumber({ quantity: name, to }: ToldRange, x: number): string {
  return showIn(unitFor(quantity(name), [to]), x, PLACE_DIGITS).number;
}

export function tableOf(rows: readonly (readonly string[])[]): string {
  const columns = rows[0]!.map((_, column) =>
    Math.max(...rows.map((row) => visibleLength(row[column] ?? ''))),
  );
  return rows
    .map((row) =>
      row
        .map((cell, column) => padEnd(cell, columns[column]!))
        .join(GAP)
        .trimEnd(),
    )
    .join('\n');
}

function bandWords({ curves }: Sweep): readonly string[] {
  const of = [...new Set(curves.flatMap((curve) => curve.bandOf))];
  return of.length === 0
    ? []
    : [`In brackets: the published scatter of ${of.join(', ')}; the ± of inputs is not in it.`];
}

export function heldText({ short, lines }: Held, width: number): string {
  return [`Held. ${short}`, ...lines].map((line) => wrapped(line, width, '  ', '')).join('\n');
}

function originText({ models, sources }: Origin, width: number): string {
  return [`Methods: ${models.join(', ')}.`, `Sources: ${sources.join('; ')}.`]
    .map((line) => wrapped(line, width, '  ', ''))
    .join('\n');
}

/** Up to so many columns and rows are printed; all of them are in --csv and --json. */
const MOST_PRINTED = 9;

export function mapText(map: SweepMap, width: number): string {
  const columns = fewOf(map.across.length);
  const rows = fewOf(map.up.length).reverse();
  const unit = unitOf(map, map.values);
  const cells = rows.map((row) => [
    showPlace(map.rangeUp, map.up[row]!, PLACE_DIGITS),
    ...columns.map((column) => {
      const value = map.values[row * map.across.length + column]!;
      return value === null ? '–' : showIn(unit, value, digitsOf(map)).number;
    }),
  ]);
  const foot = ['', ...columns.map((column) => placeNumber(map.rangeAcross, map.across[column]!))];
  const unitText = unit.symbol === '' ? '' : ` in ${unit.symbol}`;
  const headline = map.request.title ?? mapHeadline(map);
  return [
    wrapped(headline, width),
    wrapped(
      `${map.expression}${unitText}; up: ${map.rangeUp.label}; across: ${map.rangeAcross.label}${unitOfPlace(map.rangeAcross)}.`,
      width,
    ),
    tableOf([...cells, foot]),
    ...besides(headline, mapFindings(map), width),
    heldText(map.held, width),
    originText(map.origin, width),
  ].join('\n\n');
}

/** Indices evenly over a row, its ends among them. */
function fewOf(count: number): number[] {
  const step = Math.max(1, Math.ceil((count - 1) / (MOST_PRINTED - 1)));
  const indices = Array.from({ length: Math.floor((count - 1) / step) + 1 }, (_, i) => i * step);
  return indices.at(-1) === count - 1 ? indices : [...indices, count - 1];
}

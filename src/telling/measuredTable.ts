/** Measured points and their residuals as comma-separated values: one line a point. */

import { quantity } from '../answer/catalogue.ts';
import { CAUTION } from '../answer/caution.ts';
import { unitFor } from '../answer/display.ts';
import type { MeasuredPoint, MeasuredSeries } from '../answer/measured/model.ts';
import { csvOf } from './csvCell.ts';

const header = [
  'set',
  'engine',
  'quantity',
  'place',
  'place (SI)',
  'measured (SI)',
  '± (SI)',
  'computed (SI)',
  'low (SI)',
  'high (SI)',
  'residual (SI)',
  'residual over computed',
  'measured shown',
  'computed shown',
  'unit',
  'agrees',
  'source',
  'note',
];

const cell = (value: number | null): string => (value === null ? '' : String(value));

/** RFC 4180, UTF-8, one header line; the line after it carries the caution. */
export function measuredCsv(series: readonly MeasuredSeries[]): string {
  return csvOf([
    header,
    ['caution', ...Array<string>(header.length - 2).fill(''), CAUTION],
    ...series.flatMap((one) => one.points.map((point) => line(one, point))),
  ]);
}

function line(series: MeasuredSeries, point: MeasuredPoint): readonly string[] {
  const entry = quantity(series.quantity);
  const unit = unitFor(entry, [point.value]);
  const shown = (value: number | null): string =>
    value === null ? '' : String(Number((value * unit.perSI).toPrecision(entry.digits + 2)));
  return [
    series.id,
    series.engineName,
    series.quantity,
    series.place,
    cell(point.at),
    cell(point.value),
    cell(point.plusMinus),
    cell(point.computed),
    cell(point.low),
    cell(point.high),
    cell(point.residual),
    cell(point.share),
    shown(point.value),
    shown(point.computed),
    unit.symbol,
    point.agrees === null ? '' : point.agrees ? 'yes' : 'no',
    series.source,
    point.problem?.what ?? '',
  ];
}

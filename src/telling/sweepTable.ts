/** Sweeps and maps as comma-separated values: one line a point, then optima and crossings, each hole with its reason. */

import { quantity } from '../answer/catalogue.ts';
import { CAUTION } from '../answer/caution.ts';
import { unitFor } from '../answer/display.ts';
import type { Sweep, SweepMap, ToldOf, ToldRange } from '../answer/sweeps/model.ts';
import { digitsOf, unitOf } from '../answer/sweeps/shown.ts';
import { csvOf } from './csvCell.ts';

const text = (value: number | null): string => (value === null ? '' : String(value));

/** In the unit of the catalogue, with two digits more than are worth showing. */
function shownValue(told: ToldOf, value: number | null): readonly [string, string] {
  if (value === null) return ['', ''];
  const unit = unitOf(told, [value]);
  return [String(Number((value * unit.perSI).toPrecision(digitsOf(told) + 2))), unit.symbol];
}

function shownPlace({ quantity: name }: ToldRange, value: number): readonly [string, string] {
  const unit = unitFor(quantity(name), [value]);
  return [String(Number((value * unit.perSI).toPrecision(6))), unit.symbol];
}

const sweepHeader = [
  'what',
  'of',
  'over',
  'input (SI)',
  'input shown',
  'input unit',
  'value (SI)',
  'low (SI)',
  'high (SI)',
  'value shown',
  'value unit',
  'note',
];

/** UTF-8, one header line; the line after it carries the caution, the next what is held. */
export function sweepCsv(sweep: Sweep): string {
  const { range } = sweep;
  const remark = (what: string, note: string): readonly string[] => [
    what,
    ...Array<string>(10).fill(''),
    note,
  ];
  const line = (
    what: string,
    told: ToldOf,
    x: number,
    [y, low, high]: readonly [number | null, number | null, number | null],
    note: string,
  ): readonly string[] => [
    what,
    told.expression,
    range.over,
    text(x),
    ...shownPlace(range, x),
    text(y),
    text(low),
    text(high),
    ...shownValue(told, y),
    note,
  ];
  return csvOf([
    sweepHeader,
    remark('caution', CAUTION),
    remark('held', [sweep.held.short, ...sweep.held.lines].join(' ')),
    ...sweep.curves.flatMap((curve) =>
      curve.points.map(({ x, y, low, high }) => {
        const hole = curve.holes.find(({ from, to }) => x >= from && x <= to);
        return line('point', curve, x, [y, low, high], y === null ? (hole?.problem.what ?? '') : '');
      }),
    ),
    ...sweep.curves.flatMap((curve) =>
      (['highest', 'lowest'] as const).flatMap((which) => {
        const extreme = curve[which];
        return extreme === null
          ? []
          : [line(which, curve, extreme.x, [extreme.y, null, null], AT[extreme.at])];
      }),
    ),
    ...sweep.crossings.map(({ x, y, curves: [before, after], jump }) =>
      line(
        'crossing',
        sweep.curves[before]!,
        x,
        [y, null, null],
        `${jump ? 'at a jump, with' : 'with'} ${sweep.curves[after]!.expression}`,
      ),
    ),
  ]);
}

const AT = { inside: '', end: 'at the end of the range', hole: 'beside a hole' } as const;

const mapHeader = [
  'what',
  'across (SI)',
  'across shown',
  'across unit',
  'up (SI)',
  'up shown',
  'up unit',
  'value (SI)',
  'value shown',
  'value unit',
  'note',
];

/** As {@link sweepCsv}; the remarks name what is followed and what moves. */
export function mapCsv(map: SweepMap): string {
  const remark = (what: string, note: string): readonly string[] => [
    what,
    ...Array<string>(9).fill(''),
    note,
  ];
  const line = (
    what: string,
    x: number,
    y: number,
    value: number | null,
    note: string,
  ): readonly string[] => [
    what,
    text(x),
    ...shownPlace(map.rangeAcross, x),
    text(y),
    ...shownPlace(map.rangeUp, y),
    text(value),
    ...shownValue(map, value),
    note,
  ];
  const reasons = new Map(
    map.holes.flatMap(({ places, problem }) => places.map((place) => [place, problem.what] as const)),
  );
  return csvOf([
    mapHeader,
    remark('caution', CAUTION),
    remark('of', `${map.expression}, across ${map.rangeAcross.over}, up ${map.rangeUp.over}`),
    remark('held', [map.held.short, ...map.held.lines].join(' ')),
    ...map.values.map((value, place) =>
      line(
        'point',
        map.across[place % map.across.length]!,
        map.up[Math.floor(place / map.across.length)]!,
        value,
        reasons.get(place) ?? '',
      ),
    ),
    ...(['highest', 'lowest'] as const).flatMap((which) => {
      const extreme = map[which];
      return extreme === null ? [] : [line(which, extreme.x, extreme.y, extreme.value, AT[extreme.at])];
    }),
  ]);
}

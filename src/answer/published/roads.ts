/**
 * Roads to one quantity: the rows that state it, and the rows from which it follows.
 *
 *   exit area   A_e = (F₁ − F₂)/(p₂ − p₁),  ṁ g₀ (I₁ − I₂)/(p₂ − p₁),  π D_e²/4,  ε A_t
 *   flow        ṁ = F/(I_sp g₀),  p₀ A_t / c*
 *   thrust      F = C_F p₀ A_t
 *
 * The first holds while the gas fills the nozzle and the chamber is the same at both places. Where a cycle dumps gas, thrust and flow
 * are those of the whole engine, which does not all pass the throat: the roads over its throat and chamber pressure are left out.
 * Source: G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., 2001, ch. 2 and 3.
 */

import { STANDARD_GRAVITY } from '../../physics/constants.ts';
import { quantity } from '../catalogue.ts';
import { type Interval, less, product, quotient, scaled } from './interval.ts';
import type { PublishedRoad } from './model.ts';
import type { Stated } from './statedRows.ts';

export interface Roads {
  /** Name in the catalogue. */ readonly quantity: string;
  readonly pressure: number | null;
  readonly roads: readonly PublishedRoad[];
}

/** Rows first, then inputs of the study: those only where no row says the same. */
export function roadsOf(
  rows: readonly Stated[],
  inputs: readonly Stated[],
  allThroughThroat: boolean,
): readonly Roads[] {
  const all = [...rows, ...inputs.filter(({ quantity: name }) => !rows.some((row) => row.quantity === name))];
  return [
    { quantity: 'exit.area', pressure: null, roads: exitAreas(all) },
    { quantity: 'massFlow', pressure: null, roads: massFlows(all, allThroughThroat) },
    ...placesOf(rows, 'thrust').map(({ pressure }) => ({
      quantity: 'thrust',
      pressure,
      roads: thrustsAt(all, pressure, allThroughThroat),
    })),
    ...repeated(rows),
  ];
}

const first = (all: readonly Stated[], name: string, pressure: number | null = null): Stated | undefined =>
  all.find((row) => row.quantity === name && row.pressure === pressure);

function road(interval: Interval, by: string, ...rows: readonly Stated[]): PublishedRoad {
  return { value: interval.value, low: interval.low, high: interval.high, by, rows: rows.map((r) => r.row) };
}

/** The first row of a quantity at each place, from the lowest outside pressure up. */
function placesOf(all: readonly Stated[], name: string): readonly (Stated & { readonly pressure: number })[] {
  const found = new Map<number, Stated & { readonly pressure: number }>();
  for (const row of all) {
    const { pressure } = row;
    if (row.quantity === name && pressure !== null && !found.has(pressure))
      found.set(pressure, { ...row, pressure });
  }
  return [...found.values()].sort((a, b) => a.pressure - b.pressure);
}

function exitAreas(all: readonly Stated[]): readonly PublishedRoad[] {
  return [...areasFromThrust(all), ...areasFromImpulse(all), ...areasFromSizes(all)];
}

function areasFromThrust(all: readonly Stated[]): readonly PublishedRoad[] {
  const [lowest, ...others] = placesOf(all, 'thrust');
  if (lowest === undefined) return [];
  return others.map((other) =>
    road(
      scaled(less(lowest, other), 1 / (other.pressure - lowest.pressure)),
      `thrust ${lowest.where} less thrust ${other.where}, over the difference in outside pressure,`,
      lowest,
      other,
    ),
  );
}

/** Where there are no two thrusts: from two specific impulses and the flow. */
function areasFromImpulse(all: readonly Stated[]): readonly PublishedRoad[] {
  const flow = first(all, 'massFlow');
  const [lowest, ...others] = placesOf(all, 'specificImpulse');
  if (flow === undefined || lowest === undefined || placesOf(all, 'thrust').length > 1) return [];
  return others.map((other) =>
    road(
      scaled(product(less(lowest, other), flow), STANDARD_GRAVITY / (other.pressure - lowest.pressure)),
      `specific impulse ${lowest.where} less that ${other.where}, with the flow, over the difference in outside pressure,`,
      lowest,
      other,
      flow,
    ),
  );
}

function areasFromSizes(all: readonly Stated[]): readonly PublishedRoad[] {
  const stated = all.flatMap((row) => {
    if (row.quantity === 'exit.area') return [road(row, 'the exit area', row)];
    return row.quantity === 'exit.diameter' ? [road(circle(row), 'the exit diameter', row)] : [];
  });
  const ratio = first(all, 'areaRatio');
  const throat = throatOf(all);
  if (ratio === undefined || throat === null) return stated;
  return [
    ...stated,
    road(product(ratio, throat.area), `the area ratio times the ${throat.name}`, ratio, throat.row),
  ];
}

/** A = π D²/4. */
function circle(diameter: Interval): Interval {
  return scaled(product(diameter, diameter), Math.PI / 4);
}

function throatOf(all: readonly Stated[]): { area: Interval; name: string; row: Stated } | null {
  const area = first(all, 'throat.area');
  if (area !== undefined) return { area, name: 'throat area', row: area };
  const diameter = first(all, 'throat.diameter');
  return diameter === undefined
    ? null
    : { area: circle(diameter), name: 'area of the throat diameter', row: diameter };
}

function massFlows(all: readonly Stated[], allThroughThroat: boolean): readonly PublishedRoad[] {
  const stated = all.flatMap((row) => (row.quantity === 'massFlow' ? [road(row, 'the flow', row)] : []));
  const implied = placesOf(all, 'thrust').flatMap((thrust) => {
    const impulse = first(all, 'specificImpulse', thrust.pressure);
    if (impulse === undefined) return [];
    const flow = scaled(quotient(thrust, impulse), 1 / STANDARD_GRAVITY);
    return [road(flow, `thrust over specific impulse ${thrust.where}`, thrust, impulse)];
  });
  return [...stated, ...implied, ...(allThroughThroat ? chokedFlow(all) : [])];
}

function chokedFlow(all: readonly Stated[]): readonly PublishedRoad[] {
  const pressure = first(all, 'chamber.pressure');
  const velocity = first(all, 'characteristicVelocity');
  const throat = throatOf(all);
  if (pressure === undefined || velocity === undefined || throat === null) return [];
  return [
    road(
      quotient(product(pressure, throat.area), velocity),
      `chamber pressure times ${throat.name} over characteristic velocity`,
      pressure,
      throat.row,
      velocity,
    ),
  ];
}

function thrustsAt(
  all: readonly Stated[],
  place: number,
  allThroughThroat: boolean,
): readonly PublishedRoad[] {
  const stated = all.filter((row) => row.quantity === 'thrust' && row.pressure === place);
  const coefficient = first(all, 'thrustCoefficient', place);
  const pressure = first(all, 'chamber.pressure');
  const throat = throatOf(all);
  const roads = stated.map((row) => road(row, `thrust ${row.where}`, row));
  if (!allThroughThroat || coefficient === undefined || pressure === undefined || throat === null)
    return roads;
  return [
    ...roads,
    road(
      product(product(coefficient, pressure), throat.area),
      `thrust coefficient times chamber pressure times ${throat.name}`,
      coefficient,
      pressure,
      throat.row,
    ),
  ];
}

const elsewhere = ['thrust', 'massFlow', 'exit.area', 'exit.diameter'];

/** Every other quantity that more than one row states for the same place. */
function repeated(rows: readonly Stated[]): readonly Roads[] {
  const groups = new Map<string, readonly Stated[]>();
  for (const row of rows.filter(({ quantity: name }) => !elsewhere.includes(name))) {
    const key = `${row.quantity} ${row.pressure}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()].flatMap((same) => {
    const [one] = same;
    if (one === undefined || same.length < 2) return [];
    const label = quantity(one.quantity).label;
    const roads = same.map((row) => road(row, `${label} ${row.where}`.trim(), row));
    return [{ quantity: one.quantity, pressure: one.pressure, roads }];
  });
}

/**
 * The gas of a field from the expansion of an engine's exhaust: its energy e(p, θ), θ = p/ρ, as a table. Filled
 * with the states of steady flow without heat: from the chamber and, where the gas reacts, from chambers of the same total
 * enthalpy at less pressure, as behind shocks. A gas whose composition is held has e(θ) alone. Colder than the expansion at
 * some pressure e is that of the expansion at the same θ; hotter, and in thinner gas than the expansion reaches, it goes straight on.
 */

import { attempt, ProblemError } from '../../numerics/problem.ts';
import {
  type EvenAxis,
  type EvenTable,
  evenTable,
  type FieldGas,
  perfectFieldGas,
  tabledFieldGas,
} from '../euler/index.ts';
import type { Expansion, FlowState } from '../gas/index.ts';
import { soundEnergies } from './soundEnergies.ts';

/** Rows over pressure and columns over θ. */
const ROWS = 33;
const COLUMNS = 113;
/** Pressures from the chamber's down to this share of it, or as far as the expansion reaches. */
const LOWEST_SHARE = 1e-6;
/** In thinner gas e is that of the same θ at the lowest of these, its composition held: so many rows more of it. */
const THINNER = 24;
/** Stagnation pressures behind shocks, each this share of the one before. */
const LOSS = 0.5;
const LOSSES = 20;
/** How far beyond its hottest and coldest state the table goes, as a factor on θ. */
const ROOM = 1.3;
const COLD_ROOM = 3;
/** Columns more where it is colder still, and hotter: on the way to rest a field has cells of all kinds. */
const COLDER = 32;
const HOTTER = 96;
/** As a factor on the θ of the coldest state at a pressure, from where on the gas counts as colder. */
const BESIDE = 0.75;

interface Point {
  readonly theta: number;
  readonly energy: number;
  /** θ over the temperature [J/(kg K)] */ readonly gasConstant: number;
}

export interface ExhaustGas extends FieldGas {
  /** R [J/(kg K)] at p [Pa] and θ = p/ρ [J/kg], so that the temperature is θ/R; beyond the table that at its edge. */
  gasConstantAt(pressure: number, theta: number): number;
}

export function expansionGas(expansion: Expansion): ExhaustGas {
  const { chamber, chemistry } = expansion;
  if (chemistry === 'perfect') {
    const { gasConstant } = pointOf(chamber);
    return { ...perfectFieldGas(chamber.gammaFrozen), gasConstantAt: () => gasConstant };
  }
  const low = Math.max(LOWEST_SHARE * chamber.pressure, 1.02 * expansion.lowestPressure);
  const lnHigh = Math.log(chamber.pressure);
  const lnStep = (lnHigh - Math.log(low)) / (ROWS - 1);
  const pressureAt = (row: number): number => Math.exp(lnHigh - (ROWS - 1 - row) * lnStep);
  const rows = withNeighbours(
    expansion.afterLoss === undefined
      ? sameForAll(expansion, pressureAt)
      : rowsBehindShocks(expansion, expansion.afterLoss, pressureAt),
  );
  const all = rows.flat();
  const lnCold = Math.log(Math.min(...all.map(({ theta }) => theta)) / COLD_ROOM);
  const thetaStep = (Math.log(Math.max(...all.map(({ theta }) => theta)) * ROOM) - lnCold) / (COLUMNS - 1);
  const lnLow = lnCold - COLDER * thetaStep;
  const base = Math.min(...all.map(({ energy }) => energy));
  const pressures = { from: Math.log(low) - THINNER * lnStep, step: lnStep, count: THINNER + ROWS };
  const thetas = { from: lnLow, step: thetaStep, count: COLDER + COLUMNS + HOTTER };
  const columns = Array.from({ length: COLDER + COLUMNS + HOTTER }, (_, column) =>
    Math.exp(lnLow + column * thetaStep),
  );
  const filledWith = (value: (points: readonly Point[], theta: number) => number): Float64Array[] =>
    rows.map((points) => Float64Array.from(columns, (theta) => value(points, theta)));
  const tableOf = (values: readonly Float64Array[]): EvenTable => {
    const of = (row: number): Float64Array => values[Math.max(0, row - THINNER)]!;
    const all = Array.from({ length: pressures.count }, (_, row) => [...of(row)]);
    return evenTable(pressures, thetas, Float64Array.from(all.flat()));
  };
  const cold = inOrder(
    Array.from({ length: ROWS }, (_, row) => pointAt(expansion, pressureAt(row)) ?? []).flat(),
  );
  const energies = filledWith((points, theta) => energyWithCold(points, cold, theta) - base);
  soundEnergies(energies, columns, lnStep);
  const table = tableOf(energies);
  const constants = tableOf(filledWith(gasConstantAt));
  return {
    ...tabledFieldGas(table),
    gasConstantAt(pressure, theta) {
      constants.read(within(pressures, Math.log(pressure)), within(thetas, Math.log(theta)));
      return constants.value;
    },
  };
}

/** The nearest place on the axis. */
function within({ from, step, count }: EvenAxis, at: number): number {
  return Math.min(from + (count - 1) * step, Math.max(from, at));
}

function pointOf({ pressure, density, enthalpy, temperature }: FlowState): Point {
  const theta = pressure / density;
  return { theta, energy: enthalpy - theta, gasConstant: theta / temperature };
}

function sameForAll(
  expansion: Expansion,
  pressureAt: (row: number) => number,
): readonly (readonly Point[])[] {
  const points = Array.from({ length: ROWS }, (_, row) => pointAt(expansion, pressureAt(row))).flatMap(
    (point) => point ?? [],
  );
  return Array.from({ length: ROWS }, () => inOrder(points));
}

function rowsBehindShocks(
  expansion: Expansion,
  afterLoss: (stagnationPressure: number) => Expansion,
  pressureAt: (row: number) => number,
): readonly (readonly Point[])[] {
  const { pressure } = expansion.chamber;
  const flows = [expansion];
  for (let n = 1; n <= LOSSES; n++) {
    const found = attempt(() => afterLoss(pressure * LOSS ** n));
    if (found.ok) flows.push(found.value);
  }
  const rows: (readonly Point[])[] = [];
  for (let row = 0; row < ROWS; row++) {
    const here = pressureAt(row);
    const moving = flows.flatMap((flow) => (flow.chamber.pressure > here ? (pointAt(flow, here) ?? []) : []));
    // The hottest at this pressure: at rest.
    const atRest = row === ROWS - 1 ? expansion : attempt(() => afterLoss(here));
    const rest =
      'ok' in atRest ? (atRest.ok ? [pointOf(atRest.value.chamber)] : []) : [pointOf(atRest.chamber)];
    rows.push(inOrder([...moving, ...rest]));
  }
  return rows;
}

/** A row of one state, as that of the chamber's own pressure, takes the slopes of the nearest row of more. */
function withNeighbours(rows: readonly (readonly Point[])[]): readonly (readonly Point[])[] {
  return rows.map((points, row) => {
    if (points.length >= 2) return points;
    const [own] = points;
    const neighbour = nearestWhole(rows, row);
    return own === undefined ? neighbour : movedTo(neighbour, own);
  });
}

function nearestWhole(rows: readonly (readonly Point[])[], row: number): readonly Point[] {
  for (let away = 1; away < rows.length; away++) {
    const found = [rows[row - away], rows[row + away]].find((points) => (points?.length ?? 0) >= 2);
    if (found !== undefined) return found;
  }
  throw new ProblemError({
    code: 'flow-gas-unknown',
    what: 'The whole flow is not computed: the states of the exhaust behind a shock are not found.',
    why: 'At every pressure at most one state of the gas could be computed; a field needs two.',
    mend: 'Take the composition as held (chemistry: frozen).',
  });
}

function movedTo(points: readonly Point[], { theta, energy }: Point): readonly Point[] {
  const shift = energy - energyAt(points, theta);
  return points.map((point) => ({ ...point, energy: point.energy + shift }));
}

function pointAt(flow: Expansion, pressure: number): Point | null {
  if (pressure >= flow.chamber.pressure) return pointOf(flow.chamber);
  const found = attempt(() => pointOf(flow.atPressure(pressure)));
  return found.ok ? found.value : null;
}

function inOrder(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a.theta - b.theta);
  return sorted.filter((point, i) => i === 0 || point.theta > sorted[i - 1]!.theta * (1 + 1e-6));
}

/** Straight between two states, and straight on beyond the first and the last. */
function energyAt(points: readonly Point[], theta: number): number {
  let k = 1;
  while (k < points.length - 1 && points[k]!.theta < theta) k++;
  const [a, b] = [points[k - 1]!, points[k]!];
  return a.energy + ((b.energy - a.energy) * (theta - a.theta)) / (b.theta - a.theta);
}

/**
 * Colder than all states at a pressure, as gas that goes on expanding unsteadily gets, the composition changes no more: energy as
 * along the steady expansion, at whatever pressure.
 */
function energyWithCold(points: readonly Point[], cold: readonly Point[], theta: number): number {
  // A little aside of the steady expansion, which must not run along the bend.
  const edge = BESIDE * points[0]!.theta;
  if (cold.length < 2 || theta >= edge) return energyAt(points, theta);
  return energyAt(points, edge) + energyAt(cold, theta) - energyAt(cold, edge);
}

/** Straight between two states; the nearest one’s beyond them. */
function gasConstantAt(points: readonly Point[], theta: number): number {
  const next = points.findIndex((point) => point.theta >= theta);
  if (next <= 0) return points[next < 0 ? points.length - 1 : 0]!.gasConstant;
  const [a, b] = [points[next - 1]!, points[next]!];
  return a.gasConstant + ((b.gasConstant - a.gasConstant) * (theta - a.theta)) / (b.theta - a.theta);
}

/** From what was told at some points to draws over all that is not known. */

import { normalQuantile } from '../../numerics/normalQuantile.ts';
import { randomStream } from '../../numerics/randomStream.ts';
import { MOST_SOBOL_DIMENSIONS, sobolPoints } from '../../numerics/sobol.ts';
import type { Told } from '../asked/model.ts';
import { modelError, movedBy } from './distribution.ts';
import type { Drawn, DrawnAlternative, DrawnAsk, Unknown } from './model.ts';
import { type AskNumbers, askNumbers } from './numbersAt.ts';
import { type FittedSurface, type Surfaces, surfacesOver, type ValuesAtPoints } from './surfaces.ts';
import { tooManyUnknowns, type UnknownInput } from './unknowns.ts';

export interface DrawCounts {
  readonly count: number;
  readonly blocks: number;
  readonly seed: number;
}

/** Points where the engines were solved, inputs from −1 to 1, and what was told there. */
export interface SolvedPoints {
  readonly places: readonly Float64Array[];
  /** How many of the last ones only test. */ readonly heldOut: number;
  readonly told: readonly (readonly Told[])[];
}

/** One ask, ready to be drawn. */
interface Fitted {
  readonly value: FittedSurface | null;
  readonly scatter: readonly {
    readonly unknown: number;
    readonly low: FittedSurface;
    readonly high: FittedSurface;
  }[];
  /** Null: told at every point. */ readonly toldAt: readonly boolean[] | null;
}

/** @param middle what was told of each ask at the study's middle values */
export function drawnFrom(
  inputs: readonly UnknownInput[],
  middle: readonly Told[],
  { places, heldOut, told }: SolvedPoints,
  counts: DrawCounts,
  provisional: boolean,
): Drawn {
  const numbers = middle.map((_, ask) => askNumbers(told, ask));
  const unknowns = [...inputs.map(({ unknown }) => unknown), ...modelUnknowns(told)];
  if (unknowns.length > MOST_SOBOL_DIMENSIONS) throw tooManyUnknowns(unknowns.length, MOST_SOBOL_DIMENSIONS);
  const modelAt = new Map(
    unknowns.flatMap((each, i) => (each.kind === 'model' ? [[each.name, i] as const] : [])),
  );
  const surfaces = surfacesOver(places, heldOut);

  const fitOf = ({ value, scatter }: AskNumbers, instead: ValuesAtPoints = value): Fitted => ({
    value: surfaces.fit(instead),
    scatter: [...scatter].flatMap(([name, { low, high }]) => {
      const unknown = modelAt.get(name);
      const [lowFit, highFit] = [surfaces.fit(low), surfaces.fit(high)];
      return unknown === undefined || lowFit === null || highFit === null
        ? []
        : [{ unknown, low: lowFit, high: highFit }];
    }),
    toldAt: instead.includes(null) ? instead.map((one) => one !== null) : null,
  });

  const draws = drawPlaces(inputs, unknowns.length, counts);
  const fits = numbers.map((each) => fitOf(each));
  const others = alternativesOf(numbers).map(({ of, by, values }) => ({
    of,
    by,
    fits: values.map((instead, ask) => (instead === null ? null : fitOf(numbers[ask]!, instead))),
  }));
  const all = [fits, ...others.map((each) => each.fits)].flatMap((list) =>
    list.flatMap((fitted, ask) =>
      fitted === null ? [] : [{ fitted, ask, drawn: emptyDraws(draws.count, fitted, middle[ask]!) }],
    ),
  );
  drawInto(all, draws, surfaces, { places, heldOut }, counts.seed);
  const drawnOf = new Map(all.map(({ fitted, drawn }) => [fitted, drawn]));
  const asks = fits.map((fitted) => drawnOf.get(fitted)!);
  const alternatives = others.map(
    ({ of, by, fits: own }): DrawnAlternative => ({
      of,
      by,
      asks: own.map((fitted, ask) => (fitted === null ? asks[ask]! : drawnOf.get(fitted)!)),
    }),
  );

  return {
    count: draws.count,
    blocks: counts.blocks,
    seed: counts.seed,
    unknowns,
    asks,
    alternatives,
    method: places.length === 1 ? 'exact' : 'surface',
    solved: places.length,
    provisional,
    at(unit, which) {
      const deviations = unknowns.map((each, i) => (each.kind === 'model' ? modelError(unit[i]!) : 0));
      surfaces.moveTo(placeOf(inputs, unit));
      return which.map((ask) => {
        const { value } = fits[ask]!;
        return value === null ? null : valueIn(fits[ask]!, value, deviations, surfaces);
      });
    },
  };
}

function modelUnknowns(told: readonly (readonly Told[])[]): readonly Unknown[] {
  const sources = new Map<string, string>();
  for (const one of told.flat()) {
    for (const { name, source } of one.ok ? one.scatter : []) sources.set(name, source);
  }
  return [...sources].map(([name, source]) => ({ kind: 'model', name, source }));
}

interface DrawPlaces {
  readonly count: number;
  /** Inputs of each draw, from −1 to 1. */ readonly places: readonly Float64Array[];
  /** Deviations of the models' errors in each draw, at the place of their unknown. */
  readonly deviations: readonly Float64Array[];
}

function drawPlaces(
  inputs: readonly UnknownInput[],
  unknowns: number,
  { count, blocks, seed }: DrawCounts,
): DrawPlaces {
  const each = Math.ceil(count / blocks);
  const places: Float64Array[] = [];
  const deviations: Float64Array[] = [];
  for (let block = 0; block < blocks; block++) {
    const points = sobolPoints(each, unknowns, seed * blocks + block);
    for (let i = 0; i < each; i++) {
      const unit = Float64Array.from({ length: unknowns }, (_, d) => points.at(i, d));
      places.push(placeOf(inputs, unit));
      deviations.push(unit.map((chance, d) => (d < inputs.length ? 0 : modelError(chance))));
    }
  }
  return { count: each * blocks, places, deviations };
}

/** Inputs of a point of the unit cube, from −1 to 1 over the range that is drawn. */
function placeOf(inputs: readonly UnknownInput[], unit: ArrayLike<number>): Float64Array {
  return Float64Array.from(inputs, ({ distribution }, i) => {
    const { low, high } = distribution;
    const place = (2 * (distribution.quantile(unit[i]!) - low)) / (high - low) - 1;
    return Math.min(1, Math.max(-1, place));
  });
}

function valueIn(
  { scatter }: Fitted,
  value: FittedSurface,
  deviations: ArrayLike<number>,
  surfaces: Surfaces,
): number {
  let sum = surfaces.at(value);
  for (const { unknown, low, high } of scatter) {
    sum += movedBy(deviations[unknown]!, 0, surfaces.at(low), surfaces.at(high));
  }
  return sum;
}

interface Drawing {
  readonly fitted: Fitted;
  readonly ask: number;
  readonly drawn: DrawnAsk;
}

function emptyDraws(count: number, { value, toldAt }: Fitted, middle: Told): DrawnAsk {
  const never = value === null;
  const absent = never ? new Uint8Array(count).fill(1) : toldAt === null ? null : new Uint8Array(count);
  return { values: new Float64Array(count), absent, surfaceError: value?.error ?? 0, middle };
}

function drawInto(
  all: readonly Drawing[],
  { count, places, deviations }: DrawPlaces,
  surfaces: Surfaces,
  solved: Pick<SolvedPoints, 'places' | 'heldOut'>,
  seed: number,
): void {
  const chance = randomStream(seed);
  const missed = new Float64Array(solved.heldOut);
  const partly = all.some(({ fitted }) => fitted.toldAt !== null);
  for (let draw = 0; draw < count; draw++) {
    const place = places[draw]!;
    surfaces.moveTo(place);
    const near = partly ? nearest(solved.places, place) : 0;
    for (let i = 0; i < missed.length; i++) missed[i] = normalQuantile(chance());
    for (const { fitted, drawn } of all) {
      const { values, absent } = drawn;
      const { value, toldAt } = fitted;
      if (value === null) continue;
      if (toldAt !== null && !toldAt[near]!) {
        absent![draw] = 1;
        continue;
      }
      let sum = valueIn(fitted, value, deviations[draw]!, surfaces);
      // What the surfaces miss together at the points held out, they miss together in a draw: it cancels in differences.
      for (let i = 0; i < missed.length; i++) sum += missed[i]! * value.misses[i]!;
      values[draw] = sum;
    }
  }
}

/** By each model of each family: its values for the asks that it touches, null for the others. */
function alternativesOf(numbers: readonly AskNumbers[]): readonly {
  readonly of: string;
  readonly by: string;
  readonly values: readonly (ValuesAtPoints | null)[];
}[] {
  const families = new Map<string, Set<string>>();
  for (const { alternatives } of numbers) {
    for (const [of, by] of alternatives) {
      families.set(of, new Set([...(families.get(of) ?? []), ...by.keys()]));
    }
  }
  return [...families].flatMap(([of, models]) =>
    [...models].map((by) => ({
      of,
      by,
      values: numbers.map(({ alternatives }) => alternatives.get(of)?.get(by) ?? null),
    })),
  );
}

/** Where a number is told at some points only, a draw goes by the point next to it. */
function nearest(points: readonly Float64Array[], place: Float64Array): number {
  let best = 0;
  let least = Infinity;
  points.forEach((point, i) => {
    let distance = 0;
    for (let d = 0; d < place.length; d++) distance += (point[d]! - place[d]!) ** 2;
    if (distance < least) [best, least] = [i, distance];
  });
  return best;
}

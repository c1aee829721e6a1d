/** Response surfaces of all that was told at a set of points, each of the degree that fits points it has not seen best. */

import {
  type SurfaceFit,
  surfaceFit,
  type TermPowers,
  termCount,
  termsUpTo,
  termValuesInto,
} from '../../numerics/responseSurface.ts';
import { sumTermsInto } from '../../numerics/termSums.ts';

/** Values of one number at the points; null where it has none. */
export type ValuesAtPoints = readonly (number | null)[];

export interface FittedSurface {
  readonly degree: number;
  readonly coefficients: Float64Array;
  /** Root mean square miss at the points held out [SI] */ readonly error: number;
  /** Its miss at each point held out over the root of their number [SI]: their squares add up to that of `error`. */
  readonly misses: Float64Array;
}

export interface Surfaces {
  /** @param values of one number at all points, those held out last */ fit(
    values: ValuesAtPoints,
  ): FittedSurface | null;
  /** The same surfaces at several places, inputs from −1 to 1. */ over(
    places: readonly ArrayLike<number>[],
  ): SurfacesAt;
}

/** Surfaces at several places; what they share there is worked out once. */
export interface SurfacesAt {
  /** @param place its number among the places */ at(surface: FittedSurface, place: number): number;
  /** The same at all places at once, quicker. @param into one entry a place */ fill(
    into: Float64Array,
    surface: FittedSurface,
  ): void;
}

/** No surface at all: every draw has been worked out, and the values are its own. */
export function eachDrawItself(): Surfaces {
  return {
    fit: (values) =>
      values.every((value) => value === null)
        ? null
        : {
            degree: 0,
            coefficients: Float64Array.from(values, (value) => value ?? 0),
            error: 0,
            misses: new Float64Array(0),
          },
    over: () => ({
      at: ({ coefficients }, draw) => coefficients[draw]!,
      fill: (into, { coefficients }) => into.set(coefficients),
    }),
  };
}

const HIGHEST_DEGREE = 4;
/** Points a term at least, beside those held out: fewer follow noise. */
const POINTS_A_TERM = 1.3;

/** How many points a degree asks for. */
export function pointsFor(degree: number, inputs: number): number {
  return Math.ceil(POINTS_A_TERM * termCount(degree, inputs));
}

/**
 * @param points all of them, inputs from −1 to 1
 * @param heldOut how many of the last ones test the surface
 */
export function surfacesOver(points: readonly ArrayLike<number>[], heldOut: number): Surfaces {
  const inputs = points[0]?.length ?? 0;
  const terms: TermPowers[][] = [];
  for (let degree = 0; degree <= HIGHEST_DEGREE; degree++) {
    terms.push([...termsUpTo(degree, inputs)]);
    if (pointsFor(degree, inputs) > points.length - heldOut) break;
  }
  const atPoints = surfacesAt(terms, points);
  const worked = new Map<number, SurfaceFit | null>();
  /** The first points without a gap are worked through once for all numbers. */
  const fitOver = (some: readonly number[], degree: number): SurfaceFit | null => {
    const work = (): SurfaceFit | null =>
      surfaceFit(
        some.map((i) => points[i]!),
        terms[degree]!,
      );
    if (some[some.length - 1] !== some.length - 1) return work();
    const key = degree * (points.length + 1) + some.length;
    const known = worked.get(key);
    if (known !== undefined) return known;
    const fit = work();
    worked.set(key, fit);
    return fit;
  };

  return {
    fit(values) {
      const present = placesWithValue(values);
      const seen = present.filter((i) => i < points.length - heldOut);
      const tests = present.filter((i) => i >= points.length - heldOut);
      if (seen.length === 0) return null;
      const numbers = (some: readonly number[]): readonly number[] => some.map((i) => values[i]!);
      const all = numbers(present);
      const spread = Math.max(...all) - Math.min(...all);
      let best: FittedSurface | null = null;
      for (let degree = 0; degree < terms.length; degree++) {
        if (degree > 0 && pointsFor(degree, inputs) > seen.length) break;
        const surface = fitOver(seen, degree)?.fit(numbers(seen));
        if (surface === undefined) break;
        const misses = new Float64Array(heldOut);
        const fitted: FittedSurface = { degree, coefficients: surface.coefficients, error: 0, misses };
        const missAt = (i: number): number => values[i]! - atPoints.at(fitted, i);
        for (const i of tests) misses[i - (points.length - heldOut)] = missAt(i) / Math.sqrt(tests.length);
        const unseen = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0));
        const error =
          tests.length > 0
            ? unseen
            : Math.sqrt(seen.reduce((sum, i) => sum + missAt(i) ** 2, 0) / seen.length);
        // None of the points held out has a value: the misses at the others stand for them.
        if (tests.length === 0 && heldOut > 0) misses[0] = error;
        if (best === null || error < best.error) {
          best = { ...fitted, error };
        }
        if (spread === 0) break;
      }
      if (best === null) return null;
      // The points held out have done their work: they sharpen the surface that they have judged.
      const whole = fitOver(present, best.degree)?.fit(all);
      return whole === undefined ? best : { ...best, coefficients: whole.coefficients };
    },
    over: (places) => surfacesAt(terms, places),
  };
}

function placesWithValue(values: ValuesAtPoints): readonly number[] {
  const found: number[] = [];
  for (let i = 0; i < values.length; i++) if (values[i] !== null) found.push(i);
  return found;
}

/** @param terms of each degree */
function surfacesAt(
  terms: readonly (readonly TermPowers[])[],
  places: readonly ArrayLike<number>[],
): SurfacesAt {
  const worked: (Float64Array | undefined)[] = terms.map(() => undefined);
  const termsOf = (degree: number): Float64Array => {
    const known = worked[degree];
    if (known !== undefined) return known;
    const found = termValuesAt(terms[degree]!, places);
    worked[degree] = found;
    return found;
  };
  return {
    at({ degree, coefficients }, place) {
      const all = termsOf(degree);
      const count = coefficients.length;
      let sum = 0;
      for (let i = 0, at = place * count; i < count; i++, at++) sum += coefficients[i]! * all[at]!;
      return sum;
    },
    fill: (into, { degree, coefficients }) => sumTermsInto(into, termsOf(degree), coefficients),
  };
}

/** By place, then by term. */
function termValuesAt(terms: readonly TermPowers[], places: readonly ArrayLike<number>[]): Float64Array {
  const all = new Float64Array(places.length * terms.length);
  places.forEach((place, row) => {
    termValuesInto(all.subarray(row * terms.length, (row + 1) * terms.length), place, terms);
  });
  return all;
}

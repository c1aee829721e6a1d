/** Response surfaces of all that was told at a set of points, each of the degree that fits points it has not seen best. */

import {
  type SurfaceFit,
  surfaceFit,
  type TermPowers,
  termCount,
  termsUpTo,
  termValuesInto,
} from '../../numerics/responseSurface.ts';

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
  /** Value of a surface at the place last given to {@link moveTo}. */ at(surface: FittedSurface): number;
  /** Inputs from −1 to 1, and the number of the draw. */ moveTo(
    place: ArrayLike<number>,
    draw: number,
  ): void;
}

/** No surface at all: every draw has been worked out, and the values are its own. */
export function eachDrawItself(): Surfaces {
  let row = 0;
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
    moveTo(_, draw) {
      row = draw;
    },
    at: ({ coefficients }) => coefficients[row]!,
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
  const place = terms.map((each) => new Float64Array(each.length));
  const worked = new Map<string, SurfaceFit | null>();
  /** Points that all numbers have are worked through once. */
  const fitOver = (some: readonly { readonly i: number }[], degree: number): SurfaceFit | null => {
    const work = (): SurfaceFit | null =>
      surfaceFit(
        some.map(({ i }) => points[i]!),
        terms[degree]!,
      );
    if (some.length !== points.length && some.length !== points.length - heldOut) return work();
    const key = `${degree} ${some.map(({ i }) => i).join(' ')}`;
    const known = worked.get(key);
    if (known !== undefined) return known;
    const fit = work();
    worked.set(key, fit);
    return fit;
  };

  return {
    fit(values) {
      const present = points.flatMap((point, i) =>
        values[i] === null ? [] : [{ point, value: values[i]!, i }],
      );
      const seen = present.filter(({ i }) => i < points.length - heldOut);
      const tests = present.filter(({ i }) => i >= points.length - heldOut);
      if (seen.length === 0) return null;
      const spread =
        Math.max(...present.map(({ value }) => value)) - Math.min(...present.map(({ value }) => value));
      let best: FittedSurface | null = null;
      for (let degree = 0; degree < terms.length; degree++) {
        if (degree > 0 && pointsFor(degree, inputs) > seen.length) break;
        const surface = fitOver(seen, degree)?.fit(seen.map(({ value }) => value));
        if (surface === undefined) break;
        const misses = new Float64Array(heldOut);
        for (const { point, value, i } of tests) {
          misses[i - (points.length - heldOut)] = (value - surface.at(point)) / Math.sqrt(tests.length);
        }
        const unseen = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0));
        const error =
          tests.length > 0
            ? unseen
            : Math.sqrt(
                seen.reduce((sum, { point, value }) => sum + (surface.at(point) - value) ** 2, 0) /
                  seen.length,
              );
        // None of the points held out has a value: the misses at the others stand for them.
        if (tests.length === 0 && heldOut > 0) misses[0] = error;
        if (best === null || error < best.error) {
          best = { degree, coefficients: surface.coefficients, error, misses };
        }
        if (spread === 0) break;
      }
      if (best === null) return null;
      // The points held out have done their work: they sharpen the surface that they have judged.
      const whole = fitOver(present, best.degree)?.fit(present.map(({ value }) => value));
      return whole === undefined ? best : { ...best, coefficients: whole.coefficients };
    },
    moveTo(at) {
      for (let degree = 0; degree < terms.length; degree++)
        termValuesInto(place[degree]!, at, terms[degree]!);
    },
    at({ degree, coefficients }) {
      const own = place[degree]!;
      let sum = 0;
      for (let i = 0; i < own.length; i++) sum += coefficients[i]! * own[i]!;
      return sum;
    },
  };
}

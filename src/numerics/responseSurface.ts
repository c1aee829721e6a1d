/**
 * A smooth function of a few inputs by a polynomial: least squares over points where it is known, products of Legendre
 * polynomials in inputs that run from −1 to 1.
 *
 * Source: D. Xiu, Numerical Methods for Stochastic Computations, Princeton 2010, ch. 5 and 7 (from memory);
 * least squares by Householder's reflections: G. H. Golub, C. F. Van Loan, Matrix Computations, ch. 5 (from memory).
 */

/** Powers of one term, an entry for each input. */
export type TermPowers = readonly number[];

export interface ResponseSurface {
  readonly terms: readonly TermPowers[];
  readonly coefficients: Float64Array;
  /** Value at a point; inputs run from −1 to 1. */ at(point: ArrayLike<number>): number;
}

/** All terms whose powers add up to `degree` at most: (inputs + degree)! / (inputs! degree!) of them. */
export function termsUpTo(degree: number, inputs: number): readonly TermPowers[] {
  if (inputs === 0) return [[]];
  return Array.from({ length: degree + 1 }, (_, power) =>
    termsUpTo(degree - power, inputs - 1).map((rest) => [power, ...rest]),
  ).flat();
}

/** How many they are. */
export function termCount(degree: number, inputs: number): number {
  let count = 1;
  for (let i = 1; i <= degree; i++) count = (count * (inputs + i)) / i;
  return Math.round(count);
}

/** Many functions over the same points: the points are worked through once. */
export interface SurfaceFit {
  /** @param values one for each point */ fit(values: ArrayLike<number>): ResponseSurface;
}

/**
 * @param points each with inputs from −1 to 1
 * @returns null where there are too few points, or they lie so that the terms cannot be told apart
 */
export function surfaceFit(
  points: readonly ArrayLike<number>[],
  terms: readonly TermPowers[],
): SurfaceFit | null {
  const rows = points.length;
  const columns = terms.length;
  if (rows < columns) return null;
  const matrix = new Float64Array(rows * columns);
  const into = new Float64Array(columns);
  points.forEach((point, row) => {
    termValuesInto(into, point, terms);
    matrix.set(into, row * columns);
  });
  const diagonal = triangulate(matrix, rows, columns);
  if (diagonal === null) return null;
  const right = new Float64Array(rows);
  return {
    fit(values) {
      right.set(values);
      return surfaceOf(terms, solveTriangulated(matrix, diagonal, rows, columns, right));
    },
  };
}

function surfaceOf(terms: readonly TermPowers[], coefficients: Float64Array): ResponseSurface {
  return {
    terms,
    coefficients,
    at(point) {
      const values = new Float64Array(terms.length);
      termValuesInto(values, point, terms);
      let sum = 0;
      for (let i = 0; i < values.length; i++) sum += coefficients[i]! * values[i]!;
      return sum;
    },
  };
}

/** Every term at a point; surfaces of the same terms share them. */
export function termValuesInto(
  into: Float64Array,
  point: ArrayLike<number>,
  terms: readonly TermPowers[],
): void {
  terms.forEach((powers, term) => {
    let product = 1;
    for (let i = 0; i < powers.length; i++) if (powers[i]! > 0) product *= legendre(powers[i]!, point[i]!);
    into[term] = product;
  });
}

/** P_n(x) by (n+1) P_{n+1} = (2n+1) x P_n − n P_{n−1}. */
function legendre(degree: number, x: number): number {
  let before = 1;
  let value = x;
  for (let n = 1; n < degree; n++)
    [before, value] = [value, ((2 * n + 1) * x * value - n * before) / (n + 1)];
  return value;
}

const SMALLEST_PIVOT = 1e-11;

/** Reflections below, triangle above the diagonal, both in `matrix`; returns the triangle's diagonal, null where it vanishes. */
function triangulate(matrix: Float64Array, rows: number, columns: number): Float64Array | null {
  const diagonal = new Float64Array(columns);
  for (let k = 0; k < columns; k++) {
    let norm = 0;
    for (let i = k; i < rows; i++) norm = Math.hypot(norm, matrix[i * columns + k]!);
    if (norm <= SMALLEST_PIVOT * Math.sqrt(rows)) return null;
    if (matrix[k * columns + k]! < 0) norm = -norm;
    for (let i = k; i < rows; i++) matrix[i * columns + k]! /= norm;
    matrix[k * columns + k]! += 1;
    for (let j = k + 1; j < columns; j++) {
      let sum = 0;
      for (let i = k; i < rows; i++) sum += matrix[i * columns + k]! * matrix[i * columns + j]!;
      sum = -sum / matrix[k * columns + k]!;
      for (let i = k; i < rows; i++) matrix[i * columns + j]! += sum * matrix[i * columns + k]!;
    }
    diagonal[k] = -norm;
  }
  return diagonal;
}

function solveTriangulated(
  matrix: Float64Array,
  diagonal: Float64Array,
  rows: number,
  columns: number,
  right: Float64Array,
): Float64Array {
  for (let k = 0; k < columns; k++) {
    let sum = 0;
    for (let i = k; i < rows; i++) sum += matrix[i * columns + k]! * right[i]!;
    sum = -sum / matrix[k * columns + k]!;
    for (let i = k; i < rows; i++) right[i]! += sum * matrix[i * columns + k]!;
  }
  const solution = new Float64Array(columns);
  for (let k = columns - 1; k >= 0; k--) {
    let sum = right[k]!;
    for (let j = k + 1; j < columns; j++) sum -= matrix[k * columns + j]! * solution[j]!;
    solution[k] = sum / diagonal[k]!;
  }
  return solution;
}

/** Nodes along a line, as close together as a wanted length of cell says. */

import { ProblemError } from '../../numerics/problem.ts';

/** Samples of the wanted length between the ends. */
const SAMPLES = 2000;

/**
 * `count` + 1 places from one end to the other, the cells between them as long as wanted times one common factor near 1.
 *
 * @param lengthAt wanted length of a cell at a place, above 0
 * @param count number of cells; absent: as many as the lengths ask for
 */
export function placesAlong(
  from: number,
  to: number,
  lengthAt: (place: number) => number,
  count?: number,
): readonly number[] {
  const h = (to - from) / SAMPLES;
  const cells = [0];
  for (let k = 0; k < SAMPLES; k++) {
    const length = lengthAt(from + (k + 0.5) * h);
    if (!(length > 0) || !(h > 0))
      throw new ProblemError({
        code: 'mesh-length',
        what: `A mesh from ${from} m to ${to} m with cells of ${length} m cannot be.`,
        mend: 'Give ends in rising order and lengths above 0.',
      });
    cells.push(cells[k]! + h / length);
  }
  const all = cells[SAMPLES]!;
  const parts = count ?? Math.max(1, Math.round(all));
  const places = [from];
  let k = 0;
  for (let i = 1; i < parts; i++) {
    const wanted = (all * i) / parts;
    while (cells[k + 1]! < wanted) k++;
    places.push(from + (k + (wanted - cells[k]!) / (cells[k + 1]! - cells[k]!)) * h);
  }
  places.push(to);
  return places;
}

/** The places drawn together or apart on both sides, so that the k-th of them lies where it must. */
export function throughPlace(places: readonly number[], at: number, k: number): readonly number[] {
  const [last, from, end, own] = [places.length - 1, places[0]!, places.at(-1)!, places[k]!];
  if (k === 0 || k === last) return places;
  return places.map((place, i) =>
    i === k
      ? at
      : i < k
        ? from + ((place - from) * (at - from)) / (own - from)
        : end - ((end - place) * (end - at)) / (end - own),
  );
}

export function nearestPlace(places: readonly number[], at: number): number {
  return places.reduce(
    (best, place, i) => (Math.abs(place - at) < Math.abs(places[best]! - at) ? i : best),
    0,
  );
}

/** Shares from 0 to 1 of `count` cells, each longer than the one before, the first `first` of the whole. */
export function stretchedShares(count: number, first: number): readonly number[] {
  if (first * count >= 1) return Array.from({ length: count + 1 }, (_, i) => i / count);
  const sum = (q: number): number => (Math.abs(q - 1) < 1e-9 ? count : (q ** count - 1) / (q - 1));
  let [low, high] = [1, 10];
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    if (first * sum(middle) < 1) low = middle;
    else high = middle;
  }
  const q = (low + high) / 2;
  const whole = sum(q);
  const shares = [0];
  for (let i = 1; i <= count; i++) shares.push(shares[i - 1]! + q ** (i - 1) / whole);
  shares[count] = 1;
  return shares;
}

/** A line through places in a plane, read by its length. */

export type Place = readonly [axial: number, radius: number];

export interface PolyLine {
  readonly length: number;
  /** @param along from 0 to the length */ at(along: number): Place;
}

/** @param places at least two */
export function polyLine(places: readonly Place[]): PolyLine {
  const sums = [0];
  for (let k = 1; k < places.length; k++) sums.push(sums[k - 1]! + apart(places[k - 1]!, places[k]!));
  const length = sums.at(-1)!;
  return {
    length,
    at(along) {
      let [low, high] = [0, places.length - 1];
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if (sums[middle]! <= along) low = middle;
        else high = middle;
      }
      const t = (along - sums[low]!) / (sums[high]! - sums[low]!);
      const [a, b] = [places[low]!, places[high]!];
      return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    },
  };
}

export function apart([x, r]: Place, [a, b]: Place): number {
  return Math.hypot(a - x, b - r);
}

/** Where a line passes an axial distance for the first time, by its length. */
export function radiusAt(line: PolyLine, axial: number): number {
  let [low, high] = [0, line.length];
  for (let n = 0; n < 50; n++) {
    const middle = (low + high) / 2;
    if (line.at(middle)[0] < axial) low = middle;
    else high = middle;
  }
  return line.at((low + high) / 2)[1];
}

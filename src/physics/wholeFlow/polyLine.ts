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

/** Parts between two points of a wall. */
const PARTS = 6;

/** Places of a wall on cubics with its own angle at each point; a corner, two points in one place, stays one. */
export function smoothPlaces(
  wall: readonly { readonly axial: number; readonly radius: number; readonly angle: number }[],
): readonly Place[] {
  const places: Place[] = [[wall[0]!.axial, wall[0]!.radius]];
  for (let k = 1; k < wall.length; k++) {
    const [a, b] = [wall[k - 1]!, wall[k]!];
    const length = Math.hypot(b.axial - a.axial, b.radius - a.radius);
    if (length === 0) continue;
    for (let n = 1; n <= PARTS; n++) {
      const t = n / PARTS;
      const s = 1 - t;
      const cubic = (from: number, to: number, out: number, into: number): number =>
        from * s * s * (1 + 2 * t) + to * t * t * (1 + 2 * s) + length * s * t * (out * s - into * t);
      places.push([
        cubic(a.axial, b.axial, Math.cos(a.angle), Math.cos(b.angle)),
        cubic(a.radius, b.radius, Math.sin(a.angle), Math.sin(b.angle)),
      ]);
    }
  }
  return places;
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

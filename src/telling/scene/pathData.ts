/** SVG path data with two decimals, so that the same drawing is the same bytes everywhere. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A number with at most two decimals, no trailing zeros, never `-0`. */
export function short(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`A drawing cannot contain the number ${value}`);
  const rounded = Math.round(value * 100) / 100;
  return rounded === 0 ? '0' : String(rounded);
}

export function polyline(points: readonly Point[], closed = false): string {
  let d = '';
  for (const point of points) d += `${d === '' ? 'M' : 'L'}${short(point.x)} ${short(point.y)}`;
  return closed ? `${d}Z` : d;
}

export const segment = (x1: number, y1: number, x2: number, y2: number): string =>
  `M${short(x1)} ${short(y1)}L${short(x2)} ${short(y2)}`;

export const rectangle = (x: number, y: number, width: number, height: number): string =>
  `M${short(x)} ${short(y)}H${short(x + width)}V${short(y + height)}H${short(x)}Z`;

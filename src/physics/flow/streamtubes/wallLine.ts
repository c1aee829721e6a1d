/** A wall as a line of straight pieces on which a front's end node is moved. */

export interface WallLine {
  readonly x: Float64Array;
  readonly r: Float64Array;
  /** [m] length along the line to each point */ readonly along: Float64Array;
}

/** @param points in the direction of the flow, axial and radius [m] */
export function wallLine(points: readonly { readonly axial: number; readonly radius: number }[]): WallLine {
  const x = Float64Array.from(points, ({ axial }) => axial);
  const r = Float64Array.from(points, ({ radius }) => radius);
  const along = new Float64Array(points.length);
  for (let i = 1; i < points.length; i++) {
    along[i] = along[i - 1]! + Math.hypot(x[i]! - x[i - 1]!, r[i]! - r[i - 1]!);
  }
  return { x, r, along };
}

export function lengthOf({ along }: WallLine): number {
  return along[along.length - 1]!;
}

/** Piece of the line that holds length `s`, looked for from piece `from` on. */
export function pieceAt({ along }: WallLine, s: number, from: number): number {
  let piece = from;
  while (piece < along.length - 2 && along[piece + 1]! < s) piece++;
  return piece;
}

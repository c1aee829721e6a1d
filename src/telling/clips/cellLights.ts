/** A frame as means of linear light over small cells, over a ground. */

/** Cells across and down. */
export const CELLS = { across: 48, down: 48 } as const;
/** About so many points are read across a cell. */
const POINTS = 5;

export type Rgb = readonly [number, number, number];

/** Linear light of each cell, row by row, 0 to 1. */
export interface CellLights {
  readonly red: Float64Array;
  readonly green: Float64Array;
  readonly blue: Float64Array;
}

export function newCellLights(): CellLights {
  const cells = CELLS.across * CELLS.down;
  return { red: new Float64Array(cells), green: new Float64Array(cells), blue: new Float64Array(cells) };
}

/** Linear light of an sRGB component as WCAG has it, by its byte. */
const LINEAR = Float64Array.from({ length: 256 }, (_, byte) => {
  const c = byte / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
});

/** Relative luminance (WCAG 2.2). */
export const luminanceOf = ({ red, green, blue }: CellLights, cell: number): number =>
  0.2126 * (red[cell] as number) + 0.7152 * (green[cell] as number) + 0.0722 * (blue[cell] as number);

/** Mean light of each cell, from a few points of it. */
export function cellLights(
  { red, green, blue }: CellLights,
  rgba: Uint8Array | Uint8ClampedArray,
  width: number,
  height: number,
  [groundRed, groundGreen, groundBlue]: Rgb,
): void {
  const { across: columns, down: rows } = CELLS;
  for (let row = 0; row < rows; row++) {
    const [top, bottom] = [Math.floor((row * height) / rows), Math.floor(((row + 1) * height) / rows)];
    const down = Math.max(1, Math.floor((bottom - top) / POINTS));
    for (let column = 0; column < columns; column++) {
      const left = Math.floor((column * width) / columns);
      const right = Math.max(left + 1, Math.floor(((column + 1) * width) / columns));
      const across = Math.max(1, Math.floor((right - left) / POINTS));
      let [reds, greens, blues, points] = [0, 0, 0, 0];
      for (let y = top; y < Math.max(bottom, top + 1); y += down)
        for (let x = left; x < right; x += across) {
          const i = 4 * (y * width + x);
          const alpha = (rgba[i + 3] as number) / 255;
          const over = (byte: number, ground: number): number =>
            LINEAR[alpha === 1 ? byte : Math.round(alpha * byte + (1 - alpha) * ground)] as number;
          reds += over(rgba[i] as number, groundRed);
          greens += over(rgba[i + 1] as number, groundGreen);
          blues += over(rgba[i + 2] as number, groundBlue);
          points += 1;
        }
      const cell = row * columns + column;
      red[cell] = reds / points;
      green[cell] = greens / points;
      blue[cell] = blues / points;
    }
  }
}

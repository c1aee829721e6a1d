/** Highest and lowest place of a map, from the best point of its grid. */

import type { MapGrid } from './mapGrid.ts';
import type { MapExtreme } from './model.ts';
import type { Scale } from './spacing.ts';
import type { ExpressionValue } from './valueWithBand.ts';

/** The pattern begins at half a cell and is halved so often: to a 32nd of a cell. */
const HALVINGS = 4;
const MOST_ROUNDS = 16;

/**
 * A pattern of eight neighbours: the best of them becomes the middle where it is better, else the pattern is halved.
 *
 * @param sign 1: highest; −1: lowest
 * @param at the value at a place, worked out; null: only the grid's own places exist
 * Source: R. Hooke, T. A. Jeeves, "Direct search solution of numerical and statistical problems", J. ACM 8 (1961) 212–229
 * (from memory; the search by pattern, without its accelerating moves).
 */
export async function bestOnMap(
  grid: MapGrid,
  scales: readonly [Scale, Scale],
  sign: 1 | -1,
  at: ((x: number, y: number) => Promise<ExpressionValue>) | null,
): Promise<MapExtreme | null> {
  const columns = grid.across.length;
  let best = null as number | null;
  const valueAt = (place: number): number | null => {
    const value = grid.values[place];
    return value?.ok ? sign * value.value : null;
  };
  grid.values.forEach((_, place) => {
    const value = valueAt(place);
    if (value !== null && (best === null || value > valueAt(best)!)) best = place;
  });
  if (best === null) return null;
  const [column, row] = [best % columns, Math.floor(best / columns)];
  const found = { x: grid.across[column]!, y: grid.up[row]!, value: sign * valueAt(best)! };
  const onEdge = column === 0 || row === 0 || column === columns - 1 || row === grid.up.length - 1;
  if (onEdge) return { ...found, at: 'end' };
  const around = NEIGHBOURS.map(([dx, dy]) => valueAt((row + dy) * columns + column + dx));
  if (around.includes(null)) return { ...found, at: 'hole' };
  if (at === null || around.every((value) => value === valueAt(best!))) return { ...found, at: 'inside' };
  return search(found, grid, scales, sign, at);
}

const NEIGHBOURS = [-1, 0, 1].flatMap((dx) =>
  [-1, 0, 1].flatMap((dy): [number, number][] => (dx === 0 && dy === 0 ? [] : [[dx, dy]])),
);

async function search(
  start: { readonly x: number; readonly y: number; readonly value: number },
  { across, up }: MapGrid,
  [scaleX, scaleY]: readonly [Scale, Scale],
  sign: 1 | -1,
  at: (x: number, y: number) => Promise<ExpressionValue>,
): Promise<MapExtreme> {
  let best = start;
  let step = 0.5;
  for (let round = 0; round < MOST_ROUNDS && step >= 0.5 ** (HALVINGS + 1); round++) {
    const [shareX, shareY] = [scaleX.shareOf(best.x), scaleY.shareOf(best.y)];
    const tried = await Promise.all(
      NEIGHBOURS.map(async ([dx, dy]) => {
        const x = scaleX.at(clamped(shareX + (dx * step) / (across.length - 1)));
        const y = scaleY.at(clamped(shareY + (dy * step) / (up.length - 1)));
        const value = await at(x, y);
        return value.ok ? { x, y, value: value.value } : null;
      }),
    );
    const better = tried
      .filter((each) => each !== null)
      .reduce((top, each) => (sign * each.value > sign * top.value ? each : top), best);
    if (better === best) step /= 2;
    best = better;
  }
  return { ...best, at: 'inside' };
}

function clamped(share: number): number {
  return Math.min(1, Math.max(0, share));
}

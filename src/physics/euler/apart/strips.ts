/** Blocks cut into strips, each a block of its own that is joined to those beside it. */

import type { FlowSetup } from '../advance.ts';
import { CELL_VALUES, type Field } from '../field.ts';
import { cellAt, type MeshBlock, meshBlock } from '../mesh.ts';
import type { SideKind, SidePart } from '../sides.ts';

type Blocks = FlowSetup['blocks'];

/** Columns `from` up to but not with `to` of a block. */
export interface Strip {
  readonly block: number;
  readonly from: number;
  readonly to: number;
}

/** @param cuts of each block the columns at which it is cut, rising */
export function stripsOf(blocks: Blocks, cuts: readonly (readonly number[])[]): readonly Strip[] {
  return blocks.flatMap(({ mesh: { ni } }, block) => {
    const ends = [0, ...cuts[block]!, ni];
    return ends.slice(1).map((to, k): Strip => ({ block, from: ends[k]!, to }));
  });
}

export function cutBlocks(blocks: Blocks, strips: readonly Strip[]): Blocks {
  return strips.map((strip, s) => {
    const { mesh, sides } = blocks[strip.block]!;
    return {
      mesh: meshOf(mesh, strip),
      sides: [
        ...sides.flatMap((part) => partsOf(part, strip, mesh.ni, strips)),
        ...(strip.from > 0 ? [joinedTo(s - 1, 'iLow', mesh.nj)] : []),
        ...(strip.to < mesh.ni ? [joinedTo(s + 1, 'iHigh', mesh.nj)] : []),
      ],
    };
  });
}

function meshOf({ symmetry, ni, nj, x, y }: MeshBlock, { from, to }: Strip): MeshBlock {
  return meshBlock(symmetry, to - from, nj, (i, j) => {
    const node = j * (ni + 1) + from + i;
    return [x[node]!, y[node]!];
  });
}

const joinedTo = (block: number, side: 'iLow' | 'iHigh', rows: number): SidePart => ({
  side,
  from: 0,
  to: rows,
  kind: { is: 'joined', block, side: side === 'iLow' ? 'iHigh' : 'iLow', from: 0, up: true },
});

/** What of a part of a block’s side is of the strip. */
function partsOf(
  part: SidePart,
  strip: Strip,
  columns: number,
  strips: readonly Strip[],
): readonly SidePart[] {
  const across = part.side === 'iLow' || part.side === 'iHigh';
  if (part.side === 'iLow' && strip.from > 0) return [];
  if (part.side === 'iHigh' && strip.to < columns) return [];
  const from = across ? part.from : Math.max(part.from, strip.from);
  const to = across ? part.to : Math.min(part.to, strip.to);
  if (to <= from) return [];
  const shift = across ? 0 : strip.from;
  const skipped = from - part.from;
  const own = { side: part.side, from: from - shift, to: to - shift };
  const { kind } = part;
  if (kind.is === 'joined') return joinedParts(own, kind, skipped, strips);
  if (kind.is === 'given') return [{ ...own, kind: { is: 'given', at: (face) => kind.at(face + shift) } }];
  return [{ ...own, kind }];
}

/** One for each strip on the other side. */
function joinedParts(
  own: Pick<SidePart, 'side' | 'from' | 'to'>,
  kind: Extract<SideKind, { is: 'joined' }>,
  skipped: number,
  strips: readonly Strip[],
): readonly SidePart[] {
  const parts: { side: SidePart['side']; from: number; to: number; kind: typeof kind }[] = [];
  for (let k = own.from; k < own.to; k++) {
    const away = skipped + k - own.from;
    const cell = kind.from + (kind.up ? away : -away);
    const along = kind.side === 'jLow' || kind.side === 'jHigh';
    const block = strips.findIndex((strip, s) => {
      if (strip.block !== kind.block) return false;
      if (along) return cell >= strip.from && cell < strip.to;
      return kind.side === 'iLow' ? strip.from === 0 : strips[s + 1]?.block !== strip.block;
    });
    const last = parts.at(-1);
    if (last !== undefined && last.kind.block === block) last.to = k + 1;
    else {
      const from = along ? cell - strips[block]!.from : cell;
      parts.push({ side: own.side, from: k, to: k + 1, kind: { ...kind, block, from } });
    }
  }
  return parts;
}

/** The strips’ values into the whole blocks, ghosts aside. */
export function gather(parts: readonly Field[], strips: readonly Strip[], whole: readonly Field[]): void {
  for (const [s, { block, from, to }] of strips.entries()) {
    const [part, into] = [parts[s]!, whole[block]!];
    for (let j = 0; j < into.mesh.nj; j++) {
      const [own, its] = [cellAt(part.mesh, 0, j), cellAt(into.mesh, from, j)];
      for (const key of CELL_VALUES) into[key].set(part[key].subarray(own, own + to - from), its);
    }
  }
}

/** Columns fewer than this are no strip of their own: what is at its sides would cost more than its cells. */
const LEAST_COLUMNS = 6;

/**
 * Where a block is best cut: between columns whose narrowest cells differ by a factor of two.
 * @param whole columns that stay in one strip with those beside them, as at a sharp corner
 */
export function cutsOf(mesh: MeshBlock, whole: readonly number[]): readonly number[] {
  const widths = Array.from({ length: mesh.ni }, (_, i) => narrowest(mesh, i));
  const least = Math.min(...widths);
  const level = (i: number): number => Math.floor(Math.log2(widths[i]! / least) + 1e-9);
  const cuts: number[] = [];
  let from = 0;
  for (let i = 1; i < mesh.ni; i++) {
    const isFar = i - from >= LEAST_COLUMNS && mesh.ni - i >= LEAST_COLUMNS;
    const isFree = whole.every((at) => Math.abs(i - at) > 3);
    if (!isFar || !isFree || level(i) === lowestLevel(level, from, i)) continue;
    cuts.push(i);
    from = i;
  }
  return cuts;
}

function lowestLevel(level: (i: number) => number, from: number, to: number): number {
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = from; i < to; i++) lowest = Math.min(lowest, level(i));
  return lowest;
}

/** [m] of the cells of a column: what a wave of 1 m/s in all directions crosses in as many seconds. */
function narrowest(mesh: MeshBlock, i: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let j = 0; j < mesh.nj; j++) least = Math.min(least, widthOf(mesh, i, j));
  return least;
}

function widthOf({ ni, volume, iFaceX, iFaceY, jFaceX, jFaceY }: MeshBlock, i: number, j: number): number {
  const [a, b] = [j * (ni + 1) + i, j * ni + i];
  const across = Math.hypot(iFaceX[a]! + iFaceX[a + 1]!, iFaceY[a]! + iFaceY[a + 1]!);
  const along = Math.hypot(jFaceX[b]! + jFaceX[b + ni]!, jFaceY[b]! + jFaceY[b + ni]!);
  return (2 * volume[cellAt({ ni }, i, j)]!) / (across + along);
}

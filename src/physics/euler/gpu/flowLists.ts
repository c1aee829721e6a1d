/** The cells, faces, ghosts and marks of a flow as lists of words, which the shaders go through one entry a thread. */

import { ProblemError } from '../../../numerics/problem.ts';
import { MENDED, type SharpCorner } from '../corners.ts';
import type { FlowPoint } from '../field.ts';
import { joinedPlace } from '../ghosts.ts';
import { cellAt, GHOSTS, type MeshBlock, strideOf } from '../mesh.ts';
import { cellFrom, hasArea, outward, type SideName } from '../sideGeometry.ts';
import type { SideKind, SidePart } from '../sides.ts';
import { GHOST, RESERVOIR_PLACES } from './words.ts';

interface SidedBlock {
  readonly mesh: MeshBlock;
  readonly sides: readonly SidePart[];
}

/** One face on a side of a block. */
interface SideFace {
  readonly blocks: readonly SidedBlock[];
  /** Place of each block’s first cell. */ readonly first: readonly number[];
  readonly block: number;
  readonly part: SidePart;
  /** Its place along the side. */ readonly along: number;
}

export interface FlowLists {
  readonly cells: readonly number[];
  readonly faces: readonly number[];
  readonly ghosts: readonly number[];
  readonly marks: readonly number[];
  readonly corners: readonly number[];
}

/** Place of each block’s first cell, and that behind the last. */
export function firstCells(blocks: readonly SidedBlock[]): readonly number[] {
  return blocks.reduce<readonly number[]>(
    (places, { mesh }) => [...places, places.at(-1)! + mesh.volume.length],
    [0],
  );
}

/** @param numbers what ghosts refer to is added to these */
export function flowLists(
  blocks: readonly SidedBlock[],
  corners: readonly SharpCorner[],
  numbers: number[],
): FlowLists {
  const first = firstCells(blocks);
  const reservoirs = tabledReservoirs(blocks, numbers);
  const lists = {
    cells: [] as number[],
    faces: [] as number[],
    ghosts: [] as number[],
    marks: [] as number[],
  };
  for (const [b, block] of blocks.entries()) {
    const { ni, nj } = block.mesh;
    const stride = strideOf(block.mesh);
    for (let j = 0; j < nj; j++)
      for (let i = 0; i < ni; i++) {
        const cell = first[b]! + cellAt(block.mesh, i, j);
        lists.cells.push(cell, stride);
        lists.marks.push(cell, cell, stride, 0);
      }
    addFaces(lists.faces, first[b]!, block);
    for (const part of block.sides)
      for (let along = part.from; along < part.to; along++) {
        const face = { blocks, first, block: b, part, along };
        addGhosts(lists.ghosts, { numbers, reservoirs }, face);
        addMark(lists.marks, face);
      }
  }
  return { ...lists, corners: cornerCells(blocks, first, corners) };
}

function addFaces(faces: number[], first: number, { mesh, sides }: SidedBlock): void {
  const { ni, nj } = mesh;
  const isWall = (side: SideName, along: number): boolean =>
    sides.some(
      (part) => part.side === side && part.kind.is === 'wall' && part.from <= along && along < part.to,
    );
  const wall = (low: SideName, high: SideName, at: number, last: number, along: number): number =>
    at === 0 && isWall(low, along) ? 2 : at === last && isWall(high, along) ? 4 : 0;
  for (let j = 0; j < nj; j++)
    for (let i = 0; i <= ni; i++)
      faces.push(first + cellAt(mesh, i - 1, j), 1, wall('iLow', 'iHigh', i, ni, j));
  for (let j = 0; j <= nj; j++)
    for (let i = 0; i < ni; i++)
      faces.push(first + cellAt(mesh, i, j - 1), strideOf(mesh), 1 + wall('jLow', 'jHigh', j, nj, i));
}

function addGhosts(
  ghosts: number[],
  { numbers, reservoirs }: { readonly numbers: number[]; readonly reservoirs: ReadonlyMap<SideKind, number> },
  { blocks, first, block, part: { side, from, kind }, along }: SideFace,
): void {
  const { mesh } = blocks[block]!;
  const place = (depth: number): number => first[block]! + cellFrom(mesh, side, along, depth);
  const inside = place(0);
  const at = numbers.length;
  const put = (layer: number, word: number, source: number, next = 0): void => {
    ghosts.push(word, place(-1 - layer), source, next, layer, at);
  };
  if (kind.is === 'joined') {
    const other = blocks[kind.block]!.mesh;
    const there = joinedPlace(kind, along - from);
    for (let layer = 0; layer < GHOSTS; layer++)
      put(layer, GHOST.copy, first[kind.block]! + cellFrom(other, kind.side, there, layer));
    return;
  }
  numbers.push(...outward(mesh, side, along));
  const layers = Array.from({ length: GHOSTS }, (_, layer) => layer);
  switch (kind.is) {
    case 'wall': {
      const deep = side.startsWith('i') ? mesh.ni > 1 : mesh.nj > 1;
      const carried = hasArea(mesh, side, along) && deep;
      for (const layer of layers)
        if (carried) put(layer, GHOST.carried, inside, place(1));
        else put(layer, GHOST.mirror, inside, place(layer));
      return;
    }
    case 'free':
      for (const layer of layers) put(layer, GHOST.copy, inside);
      return;
    case 'given':
      numbers.push(...pointNumbers(kind.at(along)));
      for (const layer of layers) put(layer, GHOST.given, inside);
      return;
    case 'far':
      numbers.push(...pointNumbers(kind.air));
      for (const layer of layers) put(layer, GHOST.far, inside);
      return;
    case 'pressed':
      numbers.push(kind.pressure);
      for (const layer of layers) put(layer, GHOST.pressed, inside);
      return;
    case 'reservoir':
      numbers.push(reservoirs.get(kind)!);
      for (const layer of layers) put(layer, GHOST.reservoir, inside);
  }
}

type Reservoir = Extract<SideKind, { is: 'reservoir' }>;

/** Adds their tables to the numbers. @returns where each stands @throws ProblemError where one has no pressure at rest */
function tabledReservoirs(blocks: readonly SidedBlock[], numbers: number[]): ReadonlyMap<SideKind, number> {
  const kinds = blocks.flatMap(({ sides }) => sides.map(({ kind }) => kind));
  const found = new Set(kinds.filter((kind): kind is Reservoir => kind.is === 'reservoir'));
  return new Map(
    [...found].map((kind) => {
      if (!Number.isFinite(kind.highest)) throw fedInTime();
      const place = numbers.push(kind.highest, kind.share) - 2;
      for (let k = 0; k < RESERVOIR_PLACES; k++) {
        const { density, speed } = kind.at(kind.highest * (1 - (k / (RESERVOIR_PLACES - 1)) ** 2));
        numbers.push(density, speed);
      }
      return [kind, place] as const;
    }),
  );
}

function fedInTime(): ProblemError {
  return new ProblemError({
    code: 'flow-gpu-side',
    what: 'A chamber that is fed in time is not computed on the graphics processor.',
    why: 'What comes in is tabled there over the pressure of a chamber at rest.',
    mend: 'Compute it without one, as plumeline flow does.',
  });
}

/** The cells behind sharp corners that are mended, each with the one ahead of its corner. */
function cornerCells(
  blocks: readonly SidedBlock[],
  first: readonly number[],
  corners: readonly SharpCorner[],
): readonly number[] {
  return corners.flatMap(({ block, side, at }) => {
    const place = (along: number, depth: number): number =>
      first[block]! + cellFrom(blocks[block]!.mesh, side, along, depth);
    return MENDED.flatMap((count, depth) =>
      Array.from({ length: count }, (_, k) => [place(at - 1, 0), place(at + k, depth)]).flat(),
    );
  });
}

function pointNumbers({ density, u, v, pressure, share }: FlowPoint): readonly number[] {
  return [density, u, v, pressure, share];
}

/** Of the ghost beside a side: that of the cell inside, or of the other block’s where one is joined. */
function addMark(
  marks: number[],
  { blocks, first, block, part: { side, from, kind }, along }: SideFace,
): void {
  const { mesh } = blocks[block]!;
  const ghost = first[block]! + cellFrom(mesh, side, along, -1);
  if (kind.is !== 'joined') {
    marks.push(ghost, first[block]! + cellFrom(mesh, side, along, 0), strideOf(mesh), 0);
    return;
  }
  const other = blocks[kind.block]!.mesh;
  const there = joinedPlace(kind, along - from);
  const source = first[kind.block]! + cellFrom(other, kind.side, there, 0);
  const swapped = side.startsWith('i') !== kind.side.startsWith('i');
  marks.push(ghost, source, strideOf(other), swapped ? 1 : 0);
}

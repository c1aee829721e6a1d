/** Where the kernel finds the values of a field: arrays one behind the other, and a block’s words that say where. */

import type { Field, FieldRoom, Reals } from '../field.ts';
import type { FieldGas } from '../fieldGas.ts';
import { cellAt, type MeshBlock, strideOf } from '../mesh.ts';
import { unitFaces } from '../unitFaces.ts';
import { talkBytes } from './talk.ts';

/** Values read beyond the end of an array, and not used. */
const SLACK = 8;
/** Rows of work space of each thread: as HAND_ROWS of kernels/flow/source/stage.ts. */
const HAND_ROWS = 44;
/** Words of a block, in the order of kernels/flow/source/block.ts. */
const WORDS = 39;
const KEPT = 9;

/** One block in the kernel’s memory. */
export interface KernelBlock {
  /** Place of its words. */ readonly words: number;
  readonly room: FieldRoom;
  readonly kept: readonly Reals[];
  readonly seconds: Reals;
  readonly broken: Int32Array;
  readonly iWall: Uint8Array;
  readonly jWall: Uint8Array;
}

/** Hands out places of a memory that is as large as all of it together. */
export interface Places {
  take(bytes: number): number;
}

/** @returns bytes that the blocks, two gases and what `threads` threads tell each other ask for */
export function bytesFor(
  meshes: readonly MeshBlock[],
  bits: 64 | 32,
  gases: readonly FieldGas[],
  threads: number,
): number {
  let most = 1024;
  const count: Places = { take: (bytes) => (most += up(bytes)) };
  for (const mesh of meshes) placesOf(mesh, bits / 8, threads, count);
  for (const gas of gases) count.take(gasBytes(gas));
  count.take(talkBytes(meshes.length, threads));
  return most;
}

export function placesIn(): Places {
  let next = 1024;
  return {
    take(bytes) {
      const at = next;
      next += up(bytes);
      return at;
    },
  };
}

function up(bytes: number): number {
  return Math.ceil(bytes / 16) * 16;
}

function placesOf(mesh: MeshBlock, size: number, threads: number, places: Places) {
  const cells = mesh.volume.length;
  const reals = (): number => places.take((cells + SLACK) * size);
  const bytes = (): number => places.take(cells + 2 * SLACK);
  const rowBytes = up((strideOf(mesh) + SLACK) * size);
  const many = <T>(count: number, of: () => T): readonly T[] => Array.from({ length: count }, of);
  return {
    words: places.take(4 * WORDS),
    values: many(9, reals),
    kept: many(KEPT, reals),
    mesh: many(8, reals),
    marks: many(3, bytes),
    walls: many(2, bytes),
    seconds: reals(),
    rows: places.take(threads * HAND_ROWS * rowBytes),
    rowBytes,
    broken: places.take(4 * cells),
  };
}

/** Lay a block out and write its words and its mesh. */
export function layOut(
  mesh: MeshBlock,
  bits: 64 | 32,
  threads: number,
  memory: WebAssembly.Memory,
  places: Places,
): KernelBlock {
  const at = placesOf(mesh, bits / 8, threads, places);
  const cells = mesh.volume.length;
  const { buffer } = memory;
  const reals = (from: number): Reals =>
    bits === 64 ? new Float64Array(buffer, from, cells) : new Float32Array(buffer, from, cells);
  const bytes = (from: number): Uint8Array => new Uint8Array(buffer, from, cells);
  new Uint32Array(buffer, at.words, WORDS).set([
    mesh.ni,
    mesh.nj,
    strideOf(mesh),
    mesh.symmetry === 'round' ? 1 : 0,
    ...at.values,
    ...at.kept,
    ...at.mesh,
    ...at.marks,
    ...at.walls,
    at.seconds,
    at.rows,
    at.rowBytes,
    at.broken,
  ]);
  writeMesh(mesh, at.mesh.map(reals));
  const [values, marks] = [at.values.map(reals), at.marks.map(bytes)];
  let [nextValue, nextMark] = [0, 0];
  return {
    words: at.words,
    // In the order in which a field asks for them: density, u, v, pressure, share, kappa, eta, zeta, energy; then the marks.
    room: { reals: () => values[nextValue++]!, bytes: () => marks[nextMark++]! },
    kept: at.kept.map(reals),
    seconds: reals(at.seconds),
    broken: new Int32Array(buffer, at.broken, cells),
    iWall: bytes(at.walls[0]!),
    jWall: bytes(at.walls[1]!),
  };
}

/** Volumes, areas in the plane, and the faces. */
function writeMesh(mesh: MeshBlock, [volume, plane, iX, iY, iArea, jX, jY, jArea]: readonly Reals[]): void {
  volume!.set(mesh.volume);
  plane!.set(mesh.planeArea);
  unitFaces(mesh, [iX!, iY!, iArea!], [jX!, jY!, jArea!]);
}

/** Walls of the field as the kernel reads them: 1 where the block lies behind the face, 2 where it lies ahead of it. */
export function writeWalls({ mesh, iWalls, jWalls }: Field, { iWall, jWall }: KernelBlock): void {
  const { ni, nj } = mesh;
  for (let j = 0; j < nj; j++) {
    if (iWalls[j * (ni + 1)] === 1) iWall[cellAt(mesh, -1, j)] = 1;
    if (iWalls[j * (ni + 1) + ni] === 1) iWall[cellAt(mesh, ni - 1, j)] = 2;
  }
  for (let i = 0; i < ni; i++) {
    if (jWalls[i] === 1) jWall[cellAt(mesh, i, -1)] = 1;
    if (jWalls[nj * ni + i] === 1) jWall[cellAt(mesh, i, nj - 1)] = 2;
  }
}

/** Bytes of a table’s head: kind, rows, columns, place of the values; then from and places a unit of both axes. */
const HEAD = 48;

function gasBytes({ as }: FieldGas): number {
  return 'kappa' in as ? HEAD : HEAD + 8 * as.table.padded.length;
}

/** @returns the place of the gas */
export function writeGas(gas: FieldGas, memory: WebAssembly.Memory, places: Places): number {
  const { as } = gas;
  const at = places.take(gasBytes(gas));
  const head = new DataView(memory.buffer, at, HEAD);
  if ('kappa' in as) {
    head.setInt32(0, 0, true);
    head.setFloat64(8, as.kappa, true);
    return at;
  }
  const { x, y, padded } = as.table;
  for (const [k, value] of [1, x.count, y.count, at + HEAD].entries()) head.setInt32(4 * k, value, true);
  for (const [k, value] of [x.from, 1 / x.step, y.from, 1 / y.step].entries())
    head.setFloat64(16 + 8 * k, value, true);
  new Float64Array(memory.buffer, at + HEAD, padded.length).set(padded);
  return at;
}

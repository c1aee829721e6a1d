/** A flow on a graphics processor: the step of the reference on floats of 32 bits, all cells at once; many steps before it is read. */

import { ProblemError } from '../../../numerics/problem.ts';
import type { Flow } from '../advance.ts';
import { CELL_VALUES, type Field } from '../field.ts';
import type { FieldGas } from '../fieldGas.ts';
import type { MeshBlock } from '../mesh.ts';
import { brokeAt } from '../stage.ts';
import { unitFaces } from '../unitFaces.ts';
import { type FlowDevice, flowDevice, mostEntries, type PassOver } from './device.ts';
import { firstCells, flowLists } from './flowLists.ts';
import { STATUS, WIDE } from './words.ts';

/** Words of an entry of each list, in their order. */
const WORDS = [WIDE.cells, WIDE.faces, WIDE.ghosts, WIDE.marks, WIDE.corners];

export interface GpuFlow {
  /** Taken here, and how many of them at first order somewhere. */ readonly steps: number;
  readonly rescued: number;
  /** [s] */ stableStep(courant: number): Promise<number>;
  /** @throws ProblemError where the field breaks; it then is as before the step that broke */
  step(seconds: number): Promise<void>;
  /** So many steps, each cell its own longest. */
  relax(courant: number, steps: number, blurred?: boolean): Promise<void>;
  /** Gives its memory back. */ destroy(): void;
}

/** Bits of an endless number. */
const NONE_YET = 0x7f800000;

/** Attempts that are given in one piece: a browser must not think that the processor hangs. */
const PIECE = 50;

/**
 * Takes a flow on from where it is; its fields are read after each call, so that all that is told of a flow is told of them.
 * @throws ProblemError where a side is none that the shaders know, the field is too large for the device, or it refuses it
 */
export async function gpuFlow(device: GPUDevice, { setup, fields }: Flow): Promise<GpuFlow> {
  const { blocks, gases, corners = [], spread = Number.POSITIVE_INFINITY } = setup;
  const isSpread = spread < Number.POSITIVE_INFINITY;
  const first = firstCells(blocks);
  const cells = first.at(-1)!;
  const numbers: number[] = [];
  const inner = putGas(gases.inner, numbers);
  const outer = gases.inner === gases.outer ? inner : putGas(gases.outer, numbers);
  const { lists, counts, places } = inOne(flowLists(blocks, corners, numbers));
  const most = Math.max(cells, ...counts);
  if (most > mostEntries(device)) throw tooLarge(most, mostEntries(device));
  const on = await flowDevice(device, {
    field: contentsOf(fields, first),
    mesh: metricsOf(
      blocks.map(({ mesh }) => mesh),
      first,
    ),
    lists,
    numbers: Float32Array.from(numbers),
    cells,
  });
  const attempt = passesOf(counts, cells, isSpread);
  const state = { steps: 0, rescued: 0 };

  function say(own: boolean, flat: boolean, courant: number, seconds: number): void {
    const words = new Uint32Array(20);
    words.set([cells, ...counts, ...places, inner, outer, own ? 1 : 0, flat ? 1 : 0]);
    new Float32Array(words.buffer).set([courant, seconds, isSpread ? spread : 0], 15);
    on.write(words);
  }

  async function take(steps: number): Promise<void> {
    on.status(Uint32Array.of(0, 0, 0, 0, steps), STATUS.broke);
    on.status(Uint32Array.of(0, 0xffffffff), STATUS.failed);
    on.status(Uint32Array.of(NONE_YET), STATUS.shortest);
    let [left, tries] = [steps, 0];
    let told: Uint32Array;
    do {
      on.run(attempt, Math.min(steps, PIECE));
      told = await on.readStatus();
      if (told[STATUS.failed] !== 0) break;
      // A step may be taken back, and is then counted as tried.
      if (told[STATUS.left] === left && told[STATUS.tries] === tries) throw standsStill();
      [left, tries] = [told[STATUS.left]!, told[STATUS.tries]!];
    } while (left > 0);
    state.steps = told[STATUS.steps]!;
    state.rescued = told[STATUS.rescued]!;
    await readInto(on, fields, first);
    if (told[STATUS.failed] !== 0) throw new ProblemError(brokenAt(told[STATUS.firstBroken]!));
  }

  function brokenAt(cell: number) {
    const block = first.findLastIndex((place) => place <= cell);
    return brokeAt(fields[block]!, cell - first[block]!);
  }

  return {
    get steps() {
      return state.steps;
    },
    get rescued() {
      return state.rescued;
    },
    async stableStep(courant) {
      say(true, false, courant, 0);
      on.status(Uint32Array.of(NONE_YET), STATUS.shortest);
      on.run([{ pass: 'shortest', over: counts[0]! }], 1);
      const told = await on.readStatus();
      return courant * new Float32Array(told.buffer)[STATUS.shortest]!;
    },
    async step(seconds) {
      say(false, false, 0, seconds);
      await take(1);
    },
    async relax(courant, steps, blurred = false) {
      say(true, blurred, courant, 0);
      await take(steps);
    },
    destroy: () => on.destroy(),
  };
}

function tooLarge(entries: number, most: number): ProblemError {
  return new ProblemError({
    code: 'flow-gpu-too-large',
    what: `The flow has ${entries} cells or faces; this graphics processor goes through ${most} at a time.`,
    mend: 'Compute it without one, as plumeline flow does, or on a coarser mesh.',
    facts: { entries, most },
  });
}

function standsStill(): ProblemError {
  return new ProblemError({
    code: 'flow-gpu-still',
    what: 'The graphics processor takes no steps.',
    why: 'It refused the work without saying so, or was lost.',
    mend: 'Ask again, or compute it without one, as plumeline flow does.',
  });
}

/** One attempt at a step: taken again without slopes where it broke, which the shaders see to themselves. */
function passesOf(
  [inside, faces, ghosts, marks, corners]: readonly number[],
  cells: number,
  isSpread: boolean,
): readonly PassOver[] {
  const stages = ([0, 1] as const).flatMap((stage): PassOver[] => [
    { pass: 'ghosts', stage, over: ghosts! },
    { pass: 'shocks', stage, over: marks! },
    { pass: 'faces', stage, over: faces! },
    { pass: 'advance', stage, over: inside! },
  ]);
  return [
    { pass: 'shortest', over: isSpread ? inside! : 0 },
    { pass: 'steps', over: inside! },
    ...stages,
    { pass: 'settle', over: inside! },
    { pass: 'corners', over: corners! },
    { pass: 'finish', over: cells },
    { pass: 'count', over: 1 },
  ];
}

/** @returns where it stands */
function putGas({ as }: FieldGas, numbers: number[]): number {
  const at = numbers.length;
  if ('kappa' in as) numbers.push(0, as.kappa);
  else {
    const { x, y, padded } = as.table;
    numbers.push(1, x.count, y.count, x.from, 1 / x.step, y.from, 1 / y.step);
    for (const value of padded) numbers.push(value);
  }
  return at;
}

/** The lists one behind the other, how many entries each has, and where it begins. */
function inOne({ cells, faces, ghosts, marks, corners }: ReturnType<typeof flowLists>) {
  const all = [cells, faces, ghosts, marks, corners];
  const places = all.map((_, k) => all.slice(0, k).reduce((sum, { length }) => sum + length, 0));
  const lists = new Uint32Array(all.reduce((sum, { length }) => sum + length, 0));
  for (const [k, list] of all.entries()) lists.set(list, places[k]);
  return { lists, places, counts: all.map(({ length }, k) => length / WORDS[k]!) };
}

/** Values, room for those kept, and for the seconds. */
function contentsOf(fields: readonly Field[], first: readonly number[]): Float32Array<ArrayBuffer> {
  const cells = first.at(-1)!;
  const all = new Float32Array((2 * CELL_VALUES.length + 1) * cells);
  for (const [b, field] of fields.entries())
    for (const [k, name] of CELL_VALUES.entries()) all.set(field[name], k * cells + first[b]!);
  return all;
}

async function readInto(on: FlowDevice, fields: readonly Field[], first: readonly number[]): Promise<void> {
  const cells = first.at(-1)!;
  const all = await on.readField(4 * CELL_VALUES.length * cells);
  for (const [b, field] of fields.entries())
    for (const [k, name] of CELL_VALUES.entries()) {
      const from = k * cells + first[b]!;
      field[name].set(all.subarray(from, from + field[name].length));
    }
}

/** Volumes, areas in the plane, and the faces' unit normals and areas at the place of the cell before them. */
function metricsOf(meshes: readonly MeshBlock[], first: readonly number[]): Float32Array<ArrayBuffer> {
  const cells = first.at(-1)!;
  const all = new Float32Array(8 * cells);
  for (const [b, mesh] of meshes.entries()) {
    const into = (kind: number): Float32Array =>
      all.subarray(kind * cells + first[b]!, kind * cells + first[b + 1]!);
    into(0).set(mesh.volume);
    into(1).set(mesh.planeArea);
    unitFaces(mesh, [into(2), into(3), into(4)], [into(5), into(6), into(7)]);
  }
  return all;
}

/** A field in time: Heun’s two stages that keep what one stage keeps (Shu & Osher 1988), and a way back where one breaks. */

import { type Problem, ProblemError } from '../../numerics/problem.ts';
import {
  type Field,
  type FlowPoint,
  fieldOn,
  type GasPair,
  middleOf,
  putTangent,
  soundSpeedAt,
} from './field.ts';
import { mixedTangent, type Tangent } from './fieldGas.ts';
import { cellAt, type MeshBlock, strideOf } from './mesh.ts';
import { addInflow, type Inflow, inflowFor } from './residual.ts';
import { markShocks } from './shockMarks.ts';
import { cellFrom } from './sideGeometry.ts';
import { fillGhosts, fillMarks, markWalls, requireClosed, type SidePart } from './sides.ts';

export interface FlowSetup {
  readonly blocks: readonly { readonly mesh: MeshBlock; readonly sides: readonly SidePart[] }[];
  readonly gases: GasPair;
  /** The flow to begin with, at the middle of each cell. */ readonly start: (
    x: number,
    y: number,
    block: number,
  ) => FlowPoint;
}

export interface Flow {
  readonly fields: readonly Field[];
  /** [s] since the beginning; stands still while each cell takes its own steps */ readonly time: number;
  /** Steps taken, and how many of them at first order because the second broke. */ readonly steps: number;
  readonly rescued: number;
  /** [s] the longest step that is stable for all cells, times the share `courant` */ stableStep(
    courant: number,
  ): number;
  /** One step of `seconds`. @throws ProblemError where the field breaks; it then is as before the step. */ step(
    seconds: number,
  ): void;
  /** What goes out through a part of a side, by the fluxes of the faces themselves. */ through(
    block: number,
    part: Pick<SidePart, 'side' | 'from' | 'to'>,
  ): SideFlow;
  /** One step, each cell its own longest: towards a steady flow, not through time. */ relax(
    courant: number,
  ): void;
}

/** Out of a block each second: round fields for the whole turn, flat ones a metre deep. */
export interface SideFlow {
  /** [kg/s] */ readonly mass: number;
  /** Momentum, pressure counted [N]; of a round field along the axis only. */ readonly x: number;
  /** [N]; null for a round field, whose sideways push cancels */ readonly y: number | null;
  /** [W] */ readonly energy: number;
  /** Of the inner gas [kg/s]. */ readonly share: number;
}

/** Above this share of another gas a cell is mixed. */
const MIXED = 1e-9;
/** Newton steps from the old pressure to that of the new energy; exact at once where the gas is perfect. */
const PRESSURE_STEPS = 4;

/** @throws ProblemError where a side of a block is open or the start is no flow */
export function newFlow({ blocks, gases, start }: FlowSetup): Flow {
  for (const { mesh, sides } of blocks) requireClosed(mesh, sides);
  const fields = blocks.map(({ mesh }, block) => fieldOn(mesh, gases, (x, y) => start(x, y, block)));
  for (const [i, { sides }] of blocks.entries()) markWalls(fields[i]!, sides);
  const inflows = fields.map(inflowFor);
  const before = fields.map(keptFor);
  const state = { time: 0, steps: 0, rescued: 0 };

  function findInflow(firstOrder: boolean): void {
    for (const [i, { sides }] of blocks.entries()) fillGhosts(fields, i, sides, gases);
    for (const field of fields) markShocks(field);
    for (const [i, { sides }] of blocks.entries()) fillMarks(fields, i, sides);
    for (const [i, field] of fields.entries()) addInflow(field, inflows[i]!, firstOrder);
  }

  function attemptStep(seconds: readonly Float64Array[] | number, firstOrder: boolean): Problem | null {
    for (const stage of [0, 1]) {
      findInflow(firstOrder);
      for (const [i, field] of fields.entries()) {
        const step = typeof seconds === 'number' ? seconds : seconds[i]!;
        const broken = takeStage(field, inflows[i]!, before[i]!, step, stage as 0 | 1);
        if (broken !== null) return broken;
      }
    }
    const tangent: Tangent = { kappa: 1, eta: 0, zeta: 0 };
    for (const field of fields) {
      const broken = settle(field, gases, tangent);
      if (broken !== null) return broken;
    }
    return null;
  }

  const keepAll = (): void => {
    for (const [i, field] of fields.entries()) keep(field, before[i]!);
  };
  const restoreAll = (): void => {
    for (const [i, field] of fields.entries()) restore(field, before[i]!);
  };

  function take(seconds: readonly Float64Array[] | number): void {
    keepAll();
    if (attemptStep(seconds, false) !== null) {
      restoreAll();
      const broken = attemptStep(seconds, true);
      if (broken !== null) {
        restoreAll();
        throw new ProblemError(broken);
      }
      state.rescued += 1;
    }
    state.steps += 1;
  }

  return {
    fields,
    get time() {
      return state.time;
    },
    get steps() {
      return state.steps;
    },
    get rescued() {
      return state.rescued;
    },
    stableStep: (courant) => courant * Math.min(...fields.map(shortestStep)),
    step(seconds) {
      take(seconds);
      state.time += seconds;
    },
    through(block, { side, from, to }) {
      findInflow(false);
      const { mesh } = fields[block]!;
      const { mass, x, y, energy, share } = inflows[block]!;
      const round = mesh.symmetry === 'round';
      const ghosts = Array.from({ length: to - from }, (_, n) => cellFrom(mesh, side, from + n, -1));
      const sum = (of: Float64Array): number =>
        (round ? 2 * Math.PI : 1) * ghosts.reduce((total, ghost) => total + of[ghost]!, 0);
      return { mass: sum(mass), x: sum(x), y: round ? null : sum(y), energy: sum(energy), share: sum(share) };
    },
    relax(courant) {
      take(fields.map((field) => ownSteps(field, courant)));
    },
  };
}

interface Kept {
  readonly density: Float64Array;
  readonly u: Float64Array;
  readonly v: Float64Array;
  readonly pressure: Float64Array;
  readonly share: Float64Array;
  readonly energy: Float64Array;
  readonly kappa: Float64Array;
  readonly eta: Float64Array;
  readonly zeta: Float64Array;
}
const KEPT = ['density', 'u', 'v', 'pressure', 'share', 'energy', 'kappa', 'eta', 'zeta'] as const;

function keptFor(field: Field): Kept {
  return Object.fromEntries(KEPT.map((key) => [key, new Float64Array(field[key].length)])) as unknown as Kept;
}
function keep(field: Field, kept: Kept): void {
  for (const key of KEPT) kept[key].set(field[key]);
}
function restore(field: Field, kept: Kept): void {
  for (const key of KEPT) field[key].set(kept[key]);
}

/** Stage 0: forward. Stage 1: forward again, then the mean with what was before. The tangents stay as they are. */
function takeStage(
  field: Field,
  inflow: Inflow,
  old: Kept,
  seconds: Float64Array | number,
  stage: 0 | 1,
): Problem | null {
  const { mesh, density, u, v, pressure, share, energy, kappa, eta, zeta } = field;
  for (let j = 0; j < mesh.nj; j++) {
    const from = cellAt(mesh, 0, j);
    for (let at = from; at < from + mesh.ni; at++) {
      const over = (typeof seconds === 'number' ? seconds : seconds[at]!) / mesh.volume[at]!;
      const rho = density[at]!;
      let mass = rho + over * inflow.mass[at]!;
      let x = rho * u[at]! + over * inflow.x[at]!;
      let y = rho * v[at]! + over * inflow.y[at]!;
      let held = energy[at]! + over * inflow.energy[at]!;
      let inner = rho * share[at]! + over * inflow.share[at]!;
      if (stage === 1) {
        const was = old.density[at]!;
        mass = (mass + was) / 2;
        x = (x + was * old.u[at]!) / 2;
        y = (y + was * old.v[at]!) / 2;
        held = (held + old.energy[at]!) / 2;
        inner = (inner + was * old.share[at]!) / 2;
      }
      const within = held - (x * x + y * y) / (2 * mass);
      const p = (within - eta[at]! * mass - zeta[at]!) / kappa[at]!;
      if (!(mass > 0) || !(p > 0)) return broke(mesh, at, mass, p);
      density[at] = mass;
      u[at] = x / mass;
      v[at] = y / mass;
      share[at] = inner / mass;
      energy[at] = held;
      pressure[at] = p;
    }
  }
  return null;
}

/** New tangents. Cells of one gas keep their energy, mixed ones their pressure (see docs: two gases). */
function settle(field: Field, { inner, outer }: GasPair, tangent: Tangent): Problem | null {
  const { mesh, density, u, v, pressure, share, energy } = field;
  const onlyOne = inner === outer;
  for (let j = 0; j < mesh.nj; j++) {
    const from = cellAt(mesh, 0, j);
    for (let at = from; at < from + mesh.ni; at++) {
      const rho = density[at]!;
      const part = share[at]!;
      const moving = (rho * (u[at]! ** 2 + v[at]! ** 2)) / 2;
      let p = pressure[at]!;
      mixedTangent(inner, outer, part, rho, p, tangent);
      if (onlyOne || part < MIXED || part > 1 - MIXED) {
        for (let n = 0; n < PRESSURE_STEPS; n++) {
          const next = (energy[at]! - moving - tangent.eta * rho - tangent.zeta) / tangent.kappa;
          const near = Math.abs(next - p) <= 1e-13 * p;
          p = next;
          if (!(p > 0)) return broke(mesh, at, rho, p);
          if (near) break;
          mixedTangent(inner, outer, part, rho, p, tangent);
        }
        pressure[at] = p;
      } else {
        energy[at] = tangent.kappa * p + tangent.eta * rho + tangent.zeta + moving;
      }
      putTangent(field, at, tangent);
    }
  }
  return null;
}

function broke(mesh: MeshBlock, at: number, density: number, pressure: number): Problem {
  const stride = strideOf(mesh);
  const i = (at % stride) - 2;
  const j = Math.floor(at / stride) - 2;
  const [x, y] = middleOf(mesh, i, j);
  return {
    code: 'field-broke',
    what: `The flow field has no state at x = ${x.toPrecision(4)} m, y = ${y.toPrecision(4)} m: density ${density.toPrecision(3)} kg/m³, pressure ${pressure.toPrecision(3)} Pa.`,
    why: 'The flow changes faster there than the mesh and the step can follow.',
    mend: 'Take shorter steps, a finer mesh, or go to this surrounding pressure in steps.',
    facts: { x, y, density, pressure },
  };
}

/** Volume over what the fastest waves sweep in a second [s]. */
function sweepTime(field: Field, i: number, j: number): number {
  const { mesh, u, v } = field;
  const { ni, iFaceX, iFaceY, jFaceX, jFaceY } = mesh;
  const at = cellAt(mesh, i, j);
  const a = j * (ni + 1) + i;
  const b = j * ni + i;
  const sound = soundSpeedAt(field, at);
  const swept = (x: number, y: number): number =>
    Math.abs(u[at]! * x + v[at]! * y) + sound * Math.sqrt(x * x + y * y);
  const across = swept((iFaceX[a]! + iFaceX[a + 1]!) / 2, (iFaceY[a]! + iFaceY[a + 1]!) / 2);
  const along = swept((jFaceX[b]! + jFaceX[b + ni]!) / 2, (jFaceY[b]! + jFaceY[b + ni]!) / 2);
  return mesh.volume[at]! / (across + along);
}

function shortestStep(field: Field): number {
  let shortest = Number.POSITIVE_INFINITY;
  for (let j = 0; j < field.mesh.nj; j++) {
    for (let i = 0; i < field.mesh.ni; i++) {
      const own = sweepTime(field, i, j);
      if (own < shortest) shortest = own;
    }
  }
  return shortest;
}

function ownSteps(field: Field, courant: number): Float64Array {
  const steps = new Float64Array(field.density.length);
  for (let j = 0; j < field.mesh.nj; j++) {
    for (let i = 0; i < field.mesh.ni; i++)
      steps[cellAt(field.mesh, i, j)] = courant * sweepTime(field, i, j);
  }
  return steps;
}

/** A whole march: from a front to the end of its walls, a place, or the first subsonic flow. */

import { attempt, type Problem } from '../../../numerics/problem.ts';
import { type Boundary, marchWork, type StepForces, stepTubes } from './step.ts';
import type { TubeGas } from './tubeGas.ts';
import type { TubeFront } from './tubes.ts';
import { lengthOf } from './wallLine.ts';

/** What one boundary felt, a sample a step that moved it, at the middle of the step. */
export interface SideSamples {
  readonly count: number;
  /** [m] */ readonly x: Float64Array;
  readonly r: Float64Array;
  /** ln of p in Pa */ readonly lnP: Float64Array;
  /** of the tube beside it */ readonly lnSigma: Float64Array;
  /** Axial force on this side up to and with this sample [N], per radian or per metre of width. */
  readonly force: Float64Array;
}

/** The field as kept fronts: node numbers × fronts, for pictures and for sampling. */
export interface KeptFronts {
  readonly tubes: number;
  /** One after the other, count + 1 nodes each. */ readonly x: readonly Float64Array[];
  readonly r: readonly Float64Array[];
  /** One value a tube. */ readonly lnP: readonly Float64Array[];
  readonly speed: readonly Float64Array[];
  readonly theta: readonly Float64Array[];
  readonly lnSigma: readonly Float64Array[];
}

export interface TubeMarch {
  readonly lower: SideSamples;
  readonly upper: SideSamples;
  /** The last front. */ readonly front: TubeFront;
  readonly kept: KeptFronts;
  /** Why the march ended before its end; null when it did not. */ readonly stopped: Problem | null;
  readonly steps: number;
}

export interface TubeMarchRun {
  readonly gas: TubeGas;
  /** Changed by the march. */ readonly front: TubeFront;
  /** One after the other: when a wall ends the next takes over; the march ends with the last wall of a side without next. */
  readonly lower: readonly Boundary[];
  readonly upper: readonly Boundary[];
  /** The march also ends when both end nodes are past this [m]. */ readonly axialEnd?: number;
  /** Round flow: a free lower boundary that comes down to this radius ends the march [m]; absent: 1 % of the outer radius. */
  readonly closesAt?: number;
  readonly mostSteps?: number;
  /** Keep a front every so many steps; 0 none. */ readonly keepEvery?: number;
}

/** @returns always: an end before the end is told in `stopped` */
export function marchTubes(run: TubeMarchRun): TubeMarch {
  const { gas, front, axialEnd = Number.POSITIVE_INFINITY, mostSteps = 20_000, keepEvery = 0 } = run;
  const lowers = [...run.lower];
  const uppers = [...run.upper];
  const work = marchWork(front.count);
  const forces: StepForces = { lower: 0, upper: 0 };
  const lower = new Recorder();
  const upper = new Recorder();
  const kept = keeper(front, keepEvery > 0);
  let stopped: Problem | null = null;
  let steps = 0;
  let closed = false;
  while (steps < mostSteps) {
    if (nextBoundary(lowers) || nextBoundary(uppers)) break;
    lower.start(front, 0);
    upper.start(front, front.count);
    const done = attempt(() => stepTubes(front, gas, lowers[0]!, uppers[0]!, work, forces));
    if (!done.ok) {
      stopped = done.problem;
      break;
    }
    steps++;
    lower.note(front, 0, 0, forces.lower);
    upper.note(front, front.count, front.count - 1, forces.upper);
    if (keepEvery > 0 && steps % keepEvery === 0) kept.note(front);
    if (Math.min(front.x[0]!, front.x[front.count]!) >= axialEnd) break;
    // A free boundary that comes down to the axis closes the flow there.
    closed =
      front.round &&
      lowers[0]!.kind === 'pressure' &&
      front.r[0]! <= (run.closesAt ?? 0.01 * front.r[front.count]!);
    if (closed) break;
  }
  if (keepEvery > 0) kept.note(front);
  if (steps === mostSteps && stopped === null) {
    stopped = {
      code: 'march-too-long',
      what: `The march took ${mostSteps} steps and had not come to its end at x = ${front.x[0]!.toPrecision(4)} m.`,
      mend: 'Use fewer tubes, or end it earlier.',
    };
  }
  return { lower: lower.samples(), upper: upper.samples(), front, kept: kept.fronts, stopped, steps };
}

/** Take the next boundary where a wall has ended; true when there is none. */
function nextBoundary(boundaries: Boundary[]): boolean {
  const now = boundaries[0];
  if (now === undefined) return true;
  if (now.kind !== 'wall' || now.along < lengthOf(now.line) * (1 - 1e-9)) return false;
  boundaries.shift();
  return boundaries.length === 0;
}

/** Numbers per sample: x, r, ln p, ln σ, force. */
const SAMPLE = 5;

/** Samples of one side, one after the other in an array that doubles when full. */
class Recorder {
  #samples = new Float64Array(256 * SAMPLE);
  #count = 0;
  /** Where the node was before the step; force so far. */
  readonly #now = new Float64Array(3);

  start(front: TubeFront, node: number): void {
    this.#now[0] = front.x[node]!;
    this.#now[1] = front.r[node]!;
  }

  note(front: TubeFront, node: number, tube: number, force: number): void {
    const now = this.#now;
    const fromX = now[0]!;
    const fromR = now[1]!;
    if (front.x[node] === fromX && front.r[node] === fromR) return;
    const at = this.#count * SAMPLE;
    if (at === this.#samples.length) this.#grow();
    const samples = this.#samples;
    now[2] = now[2]! + force;
    samples[at] = 0.5 * (fromX + front.x[node]!);
    samples[at + 1] = 0.5 * (fromR + front.r[node]!);
    samples[at + 2] = front.faceLnP[node]!;
    samples[at + 3] = front.lnSigma[tube]!;
    samples[at + 4] = now[2]!;
    this.#count++;
  }

  samples(): SideSamples {
    const column = (k: number): Float64Array => {
      const out = new Float64Array(this.#count);
      for (let i = 0; i < this.#count; i++) out[i] = this.#samples[i * SAMPLE + k]!;
      return out;
    };
    return {
      count: this.#count,
      x: column(0),
      r: column(1),
      lnP: column(2),
      lnSigma: column(3),
      force: column(4),
    };
  }

  #grow(): void {
    const larger = new Float64Array(2 * this.#samples.length);
    larger.set(this.#samples);
    this.#samples = larger;
  }
}

function keeper(front: TubeFront, keeps: boolean): { fronts: KeptFronts; note(front: TubeFront): void } {
  const fronts = {
    tubes: front.count,
    x: [] as Float64Array[],
    r: [] as Float64Array[],
    lnP: [] as Float64Array[],
    speed: [] as Float64Array[],
    theta: [] as Float64Array[],
    lnSigma: [] as Float64Array[],
  };
  const note = (now: TubeFront): void => {
    for (const name of ['x', 'r', 'lnP', 'speed', 'theta', 'lnSigma'] as const) {
      fronts[name].push(now[name].slice());
    }
  };
  if (keeps) note(front);
  return { fronts, note };
}

/** Mass flow and axial momentum with pressure across a front, whole circumference or per metre of width. */
export function carriedBy(front: TubeFront): { readonly massFlow: number; readonly axialForce: number } {
  const turn = front.round ? 2 * Math.PI : 1;
  let massFlow = 0;
  let axialForce = 0;
  for (let j = 0; j < front.count; j++) {
    massFlow += front.mass[j]!;
    axialForce += front.momentumX[j]!;
  }
  return { massFlow: turn * massFlow, axialForce: turn * axialForce };
}

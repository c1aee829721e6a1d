/** Asks of a study drawn over all that is not known: engines are solved at a few points, a response surface does the rest. */

import { sobolPoints } from '../../numerics/sobol.ts';
import type { Study } from '../../study/model.ts';
import type { Crew, Point } from '../asked/crew.ts';
import type { Ask, Told } from '../asked/model.ts';
import { drawnFrom } from './drawn.ts';
import { type DrawCounts, drawPlaces } from './drawPlaces.ts';
import type { Drawn } from './model.ts';
import { pointsFor } from './surfaces.ts';
import { type UnknownInput, unknownInputs } from './unknowns.ts';

export interface DrawOptions extends Partial<DrawCounts> {
  /**
   * Points at which the engines are solved for a surface at most. Where it is not less than the number of draws, engines that no
   * surface follows well are solved for each draw.
   */ readonly mostSolved?: number;
  /** Inputs, by their paths, that are taken as given whatever the study says of them. */
  readonly given?: readonly string[];
  readonly signal?: AbortSignal;
  /** What was told of each ask at the study’s middle values, where it is known already. */
  readonly middle?: readonly Told[];
  /** Told a first, provisional result as soon as the engines are solved at the middle values. */
  readonly onProvisional?: (drawn: Drawn) => void;
  /** Told how many points are done, of how many known by now. */
  readonly onProgress?: (done: number, of: number) => void;
}

const DRAWS = 1024;
const BLOCKS = 8;
const FIRST_DRAWS = 256;
const MOST_SOLVED = 160;
/** A surface's error as a share of the spread of the number at which no more points are added. */
const FINE_ENOUGH = 0.03;

/**
 * First the middle values alone; then as many points as a surface of the second degree needs, and once more as many while the
 * points held out are missed by more than 3 % of a number's own spread, up to the limit; then each draw, if the limit allows.
 *
 * @throws ProblemError `too-many-unknowns`; what the crew throws
 */
export async function drawAsks(
  study: Study,
  asks: readonly Ask[],
  crew: Crew,
  { signal, onProvisional, onProgress, mostSolved = MOST_SOLVED, ...rest }: DrawOptions = {},
): Promise<Drawn> {
  const counts: DrawCounts = {
    count: rest.count ?? DRAWS,
    blocks: rest.blocks ?? BLOCKS,
    seed: rest.seed ?? 1,
  };
  const inputs = unknownInputs(study, asks).filter(({ unknown }) => !rest.given?.includes(unknown.path));
  const work = { ...(signal && { signal }) };
  const centre = new Float64Array(inputs.length);
  const atMiddle = (middle: readonly Told[], provisional: boolean): Drawn =>
    drawnFrom(
      inputs,
      middle,
      { places: [centre], heldOut: 0, told: [middle] },
      // A first look is coarse in any case.
      provisional ? { ...counts, count: Math.min(counts.count, FIRST_DRAWS) } : counts,
      provisional,
    );
  let middle = rest.middle ?? null;
  if (inputs.length === 0) return atMiddle(middle ?? (await crew.tell(asks, [{}], work))[0] ?? [], false);

  let places: readonly Float64Array[] = [];
  let told: readonly (readonly Told[])[] = [];
  for (const wanted of pointCounts(inputs.length, mostSolved)) {
    const design = designOf(inputs.length, wanted, counts.seed);
    const fresh = design.slice(places.length);
    const before = places.length;
    let done = 0;
    // The middle values go ahead of the first points: no hand stands idle between them.
    const ahead: readonly Point[] = middle === null ? [{}] : [];
    const early = toldEarly<readonly Told[]>();
    const asked = crew.tell(asks, [...ahead, ...fresh.map((place) => pointAt(inputs, place))], {
      ...work,
      onPoint(index, toldThere) {
        if (index < ahead.length) early.tell(toldThere);
        else onProgress?.(before + ++done, wanted);
      },
    });
    middle ??= await Promise.race([early.told, asked.then((rows) => rows[0] ?? [])]);
    // The first look is worked out while the crew is busy.
    if (before === 0 && onProvisional) {
      const first = middle;
      await whileWaiting(asked, () => onProvisional(atMiddle(first, true)));
    }
    const more = (await asked).slice(ahead.length);
    signal?.throwIfAborted();
    places = design;
    told = [...told, ...more];
    const heldOut = heldOutOf(wanted);
    const drawn = drawnFrom(inputs, middle, { places, heldOut, told }, counts, false);
    if (isFine(drawn)) return drawn;
    const isLast = wanted === mostPoints(inputs.length, mostSolved);
    if (isLast && mostSolved < counts.count) return drawn;
    onProvisional?.({ ...drawn, provisional: true });
    if (!isLast) continue;
    const draws = drawPlaces(inputs, inputs.length, counts).places;
    done = 0;
    const toldInDraws = await crew.tell(
      asks,
      draws.map((place) => pointAt(inputs, place)),
      { ...work, onPoint: () => onProgress?.(wanted + ++done, wanted + draws.length) },
    );
    return drawnFrom(inputs, middle, { places, heldOut, told }, counts, false, toldInDraws);
  }
  throw new RangeError('no points to solve at');
}

/** A promise and what keeps it. */
function toldEarly<T>(): { readonly told: Promise<T>; tell(this: void, value: T): void } {
  let tell: (value: T) => void = () => undefined;
  const told = new Promise<T>((resolve) => {
    tell = resolve;
  });
  return { told, tell };
}

/** A fault of what is done meanwhile must not leave the promise without a listener; the hands are given their next work first. */
async function whileWaiting(asked: Promise<unknown>, doThis: () => void): Promise<void> {
  asked.catch(() => undefined);
  await new Promise((resolve) => setTimeout(resolve));
  doThis();
}

/** Whether the surfaces are fine enough, where they are not thrown off by places without a value. */
function isFine({ asks }: Drawn): boolean {
  return asks.every(({ values, surfaceError }) => {
    if (surfaceError === 0) return true;
    let sum = 0;
    let squares = 0;
    for (const value of values) {
      sum += value;
      squares += value * value;
    }
    const mean = sum / values.length;
    const deviation = Math.sqrt(Math.max(0, squares / values.length - mean * mean));
    return surfaceError <= FINE_ENOUGH * deviation || surfaceError <= 1e-6 * Math.abs(mean);
  });
}

/** Points in the first round, and in those that follow if it is not enough. */
function pointCounts(inputs: number, mostSolved: number): readonly number[] {
  const most = mostPoints(inputs, mostSolved);
  const rounds = [
    withHeldOut(pointsFor(2, inputs)),
    withHeldOut(pointsFor(3, inputs)),
    withHeldOut(pointsFor(4, inputs)),
  ];
  return [...new Set([...rounds.filter((count) => count < most), most])];
}

function mostPoints(inputs: number, mostSolved: number): number {
  return Math.max(withHeldOut(pointsFor(1, inputs)), Math.min(mostSolved, withHeldOut(pointsFor(4, inputs))));
}

const LEAST_HELD_OUT = 4;
const SHARE_HELD_OUT = 0.25;

function withHeldOut(points: number): number {
  return points + Math.max(LEAST_HELD_OUT, Math.ceil(SHARE_HELD_OUT * points));
}

function heldOutOf(all: number): number {
  return Math.max(LEAST_HELD_OUT, Math.floor((SHARE_HELD_OUT / (1 + SHARE_HELD_OUT)) * all));
}

/** The first points of one scrambled sequence, so that a larger design holds the smaller one. */
function designOf(inputs: number, count: number, seed: number): readonly Float64Array[] {
  const points = sobolPoints(count, inputs, seed);
  return Array.from({ length: count }, (_, i) =>
    Float64Array.from({ length: inputs }, (__, d) => 2 * points.at(i, d) - 1),
  );
}

function pointAt(inputs: readonly UnknownInput[], place: Float64Array): Point {
  return Object.fromEntries(
    inputs.map(({ unknown, distribution: { low, high } }, i) => [
      unknown.path,
      low + 0.5 * (place[i]! + 1) * (high - low),
    ]),
  );
}

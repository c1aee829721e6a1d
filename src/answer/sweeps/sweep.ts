/** Follows expressions while one input moves: coarse at first, then finer where it matters, optima and crossings placed. */

import type { Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import { crossingsOf } from './crossings.ts';
import { courseOf, extremeOf } from './extremes.ts';
import { type Followed, followedOf, originOf } from './followed.ts';
import { heldOf } from './held.ts';
import { holesOf } from './holes.ts';
import type { Crossing, Extreme, Sweep, SweepCurve, SweepOptions, SweepRequest } from './model.ts';
import { type Mover, moverOf } from './mover.ts';
import { nextShares } from './refine.ts';
import { movedAsks, samplerOf } from './sampler.ts';
import { type Sample, valueIn } from './samples.ts';
import { type Scale, scaleOf } from './spacing.ts';

/** Points of the first, coarse look. */
export const COARSE = 9;
/** Points worked out before the next are chosen; the same for every crew, so that all find the same. */
const BATCH = 8;
/** Solves that place one optimum or crossing, for progress only. */
const TO_PLACE = 10;

/**
 * @throws ProblemError where the request is none: an unknown input, a range that is not allowed, a text that is no expression
 */
export async function sweep(
  study: Study,
  crew: Crew,
  request: SweepRequest,
  options: SweepOptions<Sweep> = {},
): Promise<Sweep> {
  const followed = followedOf(study, request.of, [request.range]);
  const mover = moverOf(study, request.range, request.engines, followed.engines);
  const scale = scaleOf(request.range);
  const samples: Sample[] = [];
  const most = request.points + TO_PLACE * followed.told.length;
  const sampler = samplerOf<number>(
    followed,
    crew,
    String,
    (x) => ({ asks: movedAsks(followed.asks, (ask) => mover.ask(ask, x)), point: mover.point(x) }),
    most,
    options,
  );

  const xAt = (share: number): number => (mover.whole ? Math.round(scale.at(share)) : scale.at(share));
  async function at(share: number): Promise<Sample> {
    const x = xAt(share);
    return { share: mover.whole ? scale.shareOf(x) : share, x, values: await sampler.at(x) };
  }
  async function take(shares: readonly number[]): Promise<void> {
    for (const sample of await Promise.all(shares.map(at))) addOnce(samples, sample);
  }
  const told = (parts: Parameters<typeof sweepOf>[5]): Sweep =>
    sweepOf(study, request, followed, mover, samples, parts, scale);
  const coarse: Parts = { extremes: null, crossings: [], provisional: true };

  await take(firstShares(request, mover, scale));
  if (!mover.whole) {
    while (samples.length < request.points) {
      options.onUpdate?.(told(coarse));
      const next = nextShares(samples, Math.min(BATCH, request.points - samples.length));
      if (next.length === 0) break;
      await take(next);
    }
  }
  options.onUpdate?.(told(coarse));
  const finer = mover.whole ? null : at;
  const curves = followed.told.map((_, curve) => curve);
  const valueAt = (curve: number) =>
    finer === null ? null : async (share: number) => valueIn(await finer(share), curve);
  const [crossings, ...extremes] = await Promise.all([
    crossingsOf(samples, followed.told, finer),
    ...curves.map(async (curve) => ({
      highest: await extremeOf(samples, curve, 1, valueAt(curve), xAt),
      lowest: await extremeOf(samples, curve, -1, valueAt(curve), xAt),
    })),
  ]);
  const placed = [...crossings, ...extremes.flatMap(({ highest, lowest }) => [highest, lowest])];
  await take(placed.flatMap((each) => each?.share ?? []));
  return told({ extremes, crossings, provisional: false });
}

interface Parts {
  readonly extremes: readonly { readonly highest: Extreme | null; readonly lowest: Extreme | null }[] | null;
  readonly crossings: readonly Crossing[];
  readonly provisional: boolean;
}

function addOnce(samples: Sample[], sample: Sample): void {
  const place = samples.findIndex(({ x }) => x >= sample.x);
  if (place < 0) samples.push(sample);
  else if (samples[place]!.x !== sample.x) samples.splice(place, 0, sample);
}

/** Evenly over the range; all whole numbers where only these make sense and there are not too many. */
function firstShares({ points, range }: SweepRequest, { whole }: Mover, scale: Scale): readonly number[] {
  if (whole && range.to - range.from < points) {
    const from = Math.ceil(range.from);
    return Array.from({ length: Math.floor(range.to) - from + 1 }, (_, i) => scale.shareOf(from + i));
  }
  const count = whole ? points : Math.min(COARSE, points);
  return Array.from({ length: count }, (_, i) => i / (count - 1));
}

function sweepOf(
  study: Study,
  request: SweepRequest,
  followed: Followed,
  mover: Mover,
  samples: readonly Sample[],
  parts: Parts,
  scale: Scale,
): Sweep {
  return {
    request,
    range: mover.told,
    curves: followed.told.map((told, curve) => ({
      ...told,
      ...curveOf(samples, curve, scale),
      highest: plain(parts.extremes?.[curve]?.highest ?? null),
      lowest: plain(parts.extremes?.[curve]?.lowest ?? null),
    })),
    crossings: parts.crossings.map(({ x, y, curves, jump }) => ({ x, y, curves, jump })),
    held: heldOf(study, [request.range], request.engines, followed.engines),
    origin: originOf(followed),
    provisional: parts.provisional,
  };
}

function plain(extreme: Extreme | null): Extreme | null {
  return extreme === null ? null : { x: extreme.x, y: extreme.y, at: extreme.at };
}

function curveOf(
  samples: readonly Sample[],
  curve: number,
  scale: Scale,
): Pick<SweepCurve, 'points' | 'holes' | 'course' | 'bandOf'> {
  const bandOf = new Set<string>();
  const points = samples.map(({ x, values }) => {
    const value = values[curve]!;
    const band = value.ok ? value.band : null;
    for (const name of band?.of ?? []) bandOf.add(name);
    return { x, y: value.ok ? value.value : null, low: band?.low ?? null, high: band?.high ?? null };
  });
  return {
    points,
    holes: holesOf(samples, curve, (share) => scale.at(share)),
    course: courseOf(samples, curve),
    bandOf: [...bandOf],
  };
}

/** One expression while two inputs move: a grid made finer, its lines of equal value, its optimum placed. */

import { contourLines } from '../../numerics/contourLines.ts';
import type { Problem } from '../../numerics/problem.ts';
import { roundSteps } from '../../numerics/roundSteps.ts';
import type { Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import { findQuantity } from '../catalogue.ts';
import { unitFor } from '../display.ts';
import { type Followed, followedOf, originOf } from './followed.ts';
import { heldOf } from './held.ts';
import { bestOnMap } from './mapExtremes.ts';
import type { MapGrid } from './mapGrid.ts';
import type { Level, MapExtreme, MapHole, MapRequest, SweepMap, SweepOptions, ToldOf } from './model.ts';
import { type Mover, moverOf } from './mover.ts';
import { movedAsks, samplerOf } from './sampler.ts';
import { type Scale, scaleOf } from './spacing.ts';
import type { ExpressionValue } from './valueWithBand.ts';

/** Lines of equal value, about so many. */
const LEVELS = 8;
/** The first look takes every fourth column and row, the second every second. */
const STRIDES = [4, 2, 1] as const;
/** Solves that place one optimum, for progress only. */
const TO_PLACE = 24;

/** @throws ProblemError where the request is none */
export async function sweepMap(
  study: Study,
  crew: Crew,
  request: MapRequest,
  options: SweepOptions<SweepMap> = {},
): Promise<SweepMap> {
  const followed = followedOf(study, [request.of], [request.across, request.up]);
  const movers = [request.across, request.up].map((range) =>
    moverOf(study, range, request.engines, followed.engines),
  ) as [Mover, Mover];
  const scales = [request.across, request.up].map(scaleOf) as [Scale, Scale];
  const sampler = samplerOf<readonly [number, number]>(
    followed,
    crew,
    String,
    ([x, y]) => ({
      asks: movedAsks(followed.asks, (ask) => movers[1].ask(movers[0].ask(ask, x), y)),
      point: { ...movers[0].point(x), ...movers[1].point(y) },
    }),
    request.points ** 2 + TO_PLACE,
    options,
  );
  const at = async (x: number, y: number): Promise<ExpressionValue> => (await sampler.at([x, y]))[0]!;
  const told = (grid: MapGrid, best: Best, provisional: boolean): SweepMap =>
    mapOf({ study, request, followed, movers }, grid, best, provisional);

  const last = request.points - 1;
  const strides = STRIDES.filter((stride) => last % stride === 0 && last / stride >= 2);
  let grid: MapGrid = { across: [], up: [], values: [] };
  for (const stride of strides) {
    const columns = valuesAlong(scales[0], movers[0].whole, request.points, stride);
    const rows = valuesAlong(scales[1], movers[1].whole, request.points, stride);
    const values = await Promise.all(rows.flatMap((y) => columns.map((x) => at(x, y))));
    grid = { across: columns, up: rows, values };
    options.onUpdate?.(told(grid, NONE, true));
  }
  const whole = movers.some((mover) => mover.whole);
  const place = whole ? null : at;
  const [highest, lowest] = await Promise.all([
    bestOnMap(grid, scales, 1, place),
    bestOnMap(grid, scales, -1, place),
  ]);
  return told(grid, { highest, lowest }, false);
}

interface Best {
  readonly highest: MapExtreme | null;
  readonly lowest: MapExtreme | null;
}
const NONE: Best = { highest: null, lowest: null };

function valuesAlong(scale: Scale, whole: boolean, points: number, stride: number): readonly number[] {
  const count = (points - 1) / stride + 1;
  const values = Array.from({ length: count }, (_, i) => scale.at(i / (count - 1)));
  return whole ? [...new Set(values.map(Math.round))] : values;
}

interface Asked {
  readonly study: Study;
  readonly request: MapRequest;
  readonly followed: Followed;
  readonly movers: readonly [Mover, Mover];
}

function mapOf(
  { study, request, followed, movers }: Asked,
  grid: MapGrid,
  best: Best,
  provisional: boolean,
): SweepMap {
  const told = followed.told[0]!;
  const values = grid.values.map((value) => (value.ok ? value.value : null));
  return {
    ...told,
    request,
    rangeAcross: movers[0].told,
    rangeUp: movers[1].told,
    across: grid.across,
    up: grid.up,
    values,
    holes: holesOf(grid.values),
    levels: levelsOf(told, grid, values),
    ...best,
    held: heldOf(study, [request.across, request.up], request.engines, followed.engines),
    origin: originOf(followed),
    provisional,
  };
}

/** At values that are round in the unit in which they are told. */
function levelsOf(
  told: ToldOf,
  { across, up }: MapGrid,
  values: readonly (number | null)[],
): readonly Level[] {
  const known = values.filter((value) => value !== null);
  if (known.length === 0) return [];
  const entry = told.quantity === null ? undefined : findQuantity(told.quantity);
  const perSI = entry === undefined ? 1 : unitFor(entry, known).perSI;
  const [low, high] = [Math.min(...known), Math.max(...known)];
  return roundSteps(low * perSI, high * perSI, LEVELS)
    .map((step) => step / perSI)
    .map((value) => ({ value, lines: contourLines(across, up, values, value) }));
}

function holesOf(values: readonly ExpressionValue[]): readonly MapHole[] {
  const byCode = new Map<string, { places: number[]; problem: Problem }>();
  values.forEach((value, place) => {
    if (value.ok) return;
    const hole = byCode.get(value.problem.code) ?? { places: [], problem: value.problem };
    hole.places.push(place);
    byCode.set(value.problem.code, hole);
  });
  return [...byCode.values()];
}

/** Specks carried along by the gas of a computed field: each as long as the way that it goes in a set time. */

import type { FlowField } from '../../answer/flow/index.ts';
import type { Streamline } from '../../physics/wholeFlow/index.ts';
import type { Layout } from '../look/formats.ts';
import { type Point, polyline } from '../scene/pathData.ts';
import type { SceneNode } from '../scene/scene.ts';
import { streamlinesOf } from './flowStreamlines.ts';
import type { At } from './flowWalls.ts';

/** Lines of specks on each side of the axis. */
const LINES = 14;
/** The time in which the exhaust goes from the throat to the end of the picture holds so many specks. */
const SPECKS = 22;
/** A speck is as long as the way it goes in this share of the time to the next one. */
const LENGTH = 0.35;
/** Length of the shortest speck that is drawn, over the width of a thin line. */
const SHORTEST = 1.5;
/** Spreads the lines evenly over the time between two specks, whatever their number. */
const GOLDEN = 0.618034;

/** @param phase 0 to 1: at 1 every speck has come to where the next one was at 0, so that a run can go round */
export function driftNodes(
  field: FlowField,
  phase: number,
  at: At,
  { line }: Pick<Layout, 'line'>,
): readonly SceneNode[] {
  const lines = streamlinesOf(field, LINES);
  const apart = timeBetween(field, lines);
  if (apart === null) return [];
  const way: Point[][] = lines.flatMap((each, k) => {
    const first = apart * ((phase + k * GOLDEN) % 1);
    const last = each.time.at(-1)!;
    const specks: Point[][] = [];
    for (let from = first - LENGTH * apart; from < last; from += apart)
      for (const side of [1, -1])
        specks.push(
          stretch(each, Math.max(0, from), Math.min(last, from + LENGTH * apart)).map(([x, r]) =>
            at(x, side * r),
          ),
        );
    // Where the gas hardly moves they would only darken it.
    return specks.filter((points) => lengthOf(points) > SHORTEST * line.leader);
  });
  return way.map(
    (points): SceneNode => ({
      kind: 'path',
      d: polyline(points),
      stroke: 'ink',
      strokeWidth: 1.3 * line.leader,
      ring: 1.2 * line.leader,
      cap: 'round',
    }),
  );
}

/** [s] between two specks of a line; null: the gas goes nowhere. */
function timeBetween(field: FlowField, lines: readonly Streamline[]): number | null {
  const took = timeOf(field, lines);
  return took === null ? null : took / SPECKS;
}

/** [s] in which the gas beside the axis goes from the throat to the end of its line; null: it goes nowhere. */
export const throughTime = (field: FlowField): number | null => timeOf(field, streamlinesOf(field, LINES));

function timeOf({ lip }: FlowField, [first]: readonly Streamline[]): number | null {
  if (first === undefined || first.time.length < 2) return null;
  const k = Math.max(
    0,
    first.axial.findIndex((x) => x >= Math.min(0, lip.axial)),
  );
  const took = first.time.at(-1)! - first.time[k]!;
  return took > 0 ? took : null;
}

function lengthOf(points: readonly Point[]): number {
  let length = 0;
  for (let k = 1; k < points.length; k++)
    length += Math.hypot(points[k]!.x - points[k - 1]!.x, points[k]!.y - points[k - 1]!.y);
  return length;
}

/** The part of a line between two times. */
function stretch(
  { axial, radius, time }: Streamline,
  from: number,
  to: number,
): readonly (readonly [number, number])[] {
  if (!(to > from)) return [];
  const at = (when: number): readonly [number, number] => {
    const next = Math.min(time.length - 1, Math.max(1, firstPast(time, when)));
    const share = (when - time[next - 1]!) / (time[next]! - time[next - 1]!);
    return [
      axial[next - 1]! + share * (axial[next]! - axial[next - 1]!),
      radius[next - 1]! + share * (radius[next]! - radius[next - 1]!),
    ];
  };
  const points: (readonly [number, number])[] = [at(from)];
  for (let k = firstPast(time, from); k < time.length && time[k]! < to; k++)
    points.push([axial[k]!, radius[k]!]);
  return [...points, at(to)];
}

/** The first time past one; times rise. */
function firstPast(time: readonly number[], when: number): number {
  let [low, high] = [0, time.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (time[middle]! > when) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** What stands where a picture is still being painted: the one painted of that place before, as long as it shows the same inputs the same way. */

import type { CutPanel } from '../../../telling/figures/cutPanel.ts';
import type { Box } from '../../../telling/scene/box.ts';
import type { ListedFlow } from '../../flows/flowList.ts';
import type { FlowPaint } from './messages.ts';

export interface Painted {
  readonly field: ListedFlow;
  readonly paint: FlowPaint;
}

let of = '';
const last = new Map<string, Painted>();

/** An engine in air of one pressure, in one of its modes: a finer field of it takes the coarse one’s place. */
const placeOf = ({ engine, ambientPressure, mode }: ListedFlow): string =>
  JSON.stringify([engine, ambientPressure, mode]);

/** @param mark of the inputs that the field was computed for */
export function remember(mark: string, painted: Painted): void {
  if (mark !== of) last.clear();
  of = mark;
  last.set(placeOf(painted.field), painted);
}

/** Whether anything of the field’s place was painted for these inputs, by whichever tint. */
export const isPlacePainted = (mark: string, field: ListedFlow): boolean =>
  mark === of && last.has(placeOf(field));

/** @returns null: nothing was painted of the place, or only by another tint, for another ground, with lines or without */
export function standIn(mark: string, { field, paint }: Painted): Painted | null {
  const before = mark === of ? last.get(placeOf(field)) : undefined;
  if (before === undefined) return null;
  const { shown, theme, streamlines } = before.paint;
  const isAlike = shown === paint.shown && theme === paint.theme && streamlines === paint.streamlines;
  return isAlike ? before : null;
}

/** [px] Where a picture that was painted for another drawing belongs on this one. */
export function carriedBox(
  { scale: before, axisX, topY, top, box }: FlowPaint['placing'],
  placed: CutPanel['places'][string],
  scale: number,
): Box {
  const times = scale / before;
  return {
    x: placed.axisX + times * (box.x - axisX),
    y: placed.faceY + times * (box.y - topY) + scale * (top - placed.top),
    width: times * box.width,
    height: times * box.height,
  };
}

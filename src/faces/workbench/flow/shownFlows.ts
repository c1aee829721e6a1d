/** Which picture of which field stands for each engine at an altitude. */

import type { Shown } from '../../../answer/flow/index.ts';
import type { ConditionRow } from '../../../answer/model.ts';
import type { CutPanel } from '../../../telling/figures/cutPanel.ts';
import { flowMorph } from '../../../telling/figures/flowMorph.ts';
import type { Theme } from '../../../telling/look/tokens.ts';
import type { Box } from '../../../telling/scene/box.ts';
import type { ListedFlow } from '../../flows/flowList.ts';
import type { FlowPaint } from './messages.ts';
import { pictureOf } from './painter.ts';
import { carriedBox, remember, standIn } from './standIns.ts';

export interface ShownFlow {
  readonly field: ListedFlow;
  /** Of the picture. */ readonly id: string;
  readonly picture: ImageBitmap;
  /** [px] what of it is seen */ readonly box: Box;
  /** [px] where the whole picture lies */ readonly whole: Box;
  /** [px] what lies below is drawn longer by so much */ readonly endY: number;
  readonly longer: number;
}

export interface Look {
  readonly shown: Shown;
  readonly theme: Theme;
  readonly ratio: number;
  readonly streamlines: boolean;
}

/** A sharper picture is not told from this one, and takes room. */
const SHARPEST = 1.5;

/** The fields of an engine in the mode that it is in here. */
export function fieldsInMode(
  fields: readonly ListedFlow[] | undefined,
  row: ConditionRow | undefined,
): readonly ListedFlow[] {
  const mode = row?.mode ?? null;
  return fields?.filter((field) => field.mode === mode) ?? [];
}

export function paintOf(
  field: ListedFlow,
  placed: CutPanel['places'][string],
  scale: number,
  look: Look,
): FlowPaint {
  const { axisX, faceY, top, jetBox } = placed;
  const ratio = Math.min(SHARPEST, look.ratio);
  const id = [
    field.key,
    look.shown,
    look.theme,
    ratio,
    look.streamlines,
    ...[scale, top, jetBox.x - axisX, jetBox.width, jetBox.height].map((value) => value.toFixed(2)),
  ].join(' ');
  return {
    id,
    key: field.key,
    shown: look.shown,
    theme: look.theme,
    ratio,
    streamlines: look.streamlines,
    placing: { scale, axisX, topY: faceY, top, box: jetBox },
  };
}

/**
 * The nearest field that is painted, moved along the axis so that its shock stands where its neighbours say; null: none is.
 * @param mark of the inputs that the fields were computed for
 */
export function shownFlow(
  mark: string,
  fields: readonly ListedFlow[],
  ambient: number,
  placed: CutPanel['places'][string],
  scale: number,
  look: Look,
): ShownFlow | null {
  const painted = fields.flatMap((field) => paintedOf(mark, field, paintOf(field, placed, scale, look)));
  if (painted.length === 0) return null;
  const { field, longer } = flowMorph(painted, ambient);
  const { paint, picture } = field;
  return {
    field,
    id: paint.id,
    picture,
    box: placed.jetBox,
    whole: carriedBox(paint.placing, placed, scale),
    endY: placed.faceY + scale * (field.end - placed.top),
    longer,
  };
}

type PaintedField = ListedFlow & { readonly paint: FlowPaint; readonly picture: ImageBitmap };

/** The field’s picture; while it is being painted the one that it takes the place of. */
function paintedOf(mark: string, field: ListedFlow, paint: FlowPaint): readonly PaintedField[] {
  const picture = pictureOf(paint.id);
  if (picture !== null) {
    remember(mark, { field, paint });
    return [{ ...field, paint, picture }];
  }
  const before = standIn(mark, { field, paint });
  const its = before === null ? null : pictureOf(before.paint.id);
  return before === null || its === null ? [] : [{ ...before.field, paint: before.paint, picture: its }];
}

/** All of an engine, the nearest first. */
export function nearestFirst(fields: readonly ListedFlow[], ambient: number): readonly ListedFlow[] {
  const apart = ({ ambientPressure }: ListedFlow): number =>
    Math.abs(Math.log(ambientPressure / Math.max(ambient, 1)));
  return [...fields].sort((a, b) => apart(a) - apart(b));
}

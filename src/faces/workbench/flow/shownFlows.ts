/** Which picture of which field stands for each engine at an altitude. */

import type { Shown } from '../../../answer/flow/index.ts';
import type { ConditionRow } from '../../../answer/model.ts';
import type { CutPanel } from '../../../telling/figures/cutPanel.ts';
import { flowMorph } from '../../../telling/figures/flowMorph.ts';
import type { Theme } from '../../../telling/look/tokens.ts';
import type { ListedFlow } from '../../flows/flowList.ts';
import type { FlowPaint } from './messages.ts';
import { pictureOf } from './painter.ts';

export interface ShownFlow {
  readonly field: ListedFlow;
  /** Of the picture. */ readonly id: string;
  readonly picture: ImageBitmap;
  /** [px] on the drawing */ readonly box: FlowPaint['placing']['box'];
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

/** The nearest field that is painted, moved along the axis so that its shock stands where its neighbours say; null: none is. */
export function shownFlow(
  fields: readonly ListedFlow[],
  ambient: number,
  placed: CutPanel['places'][string],
  scale: number,
  look: Look,
): ShownFlow | null {
  const painted = fields.flatMap((field) => {
    const { id } = paintOf(field, placed, scale, look);
    const picture = pictureOf(id);
    return picture === null ? [] : [{ ...field, id, picture }];
  });
  if (painted.length === 0) return null;
  const { field, longer } = flowMorph(painted, ambient);
  return {
    field,
    id: field.id,
    picture: field.picture,
    box: placed.jetBox,
    endY: placed.faceY + scale * (field.end - placed.top),
    longer,
  };
}

/** All of an engine, the nearest first. */
export function nearestFirst(fields: readonly ListedFlow[], ambient: number): readonly ListedFlow[] {
  const apart = ({ ambientPressure }: ListedFlow): number =>
    Math.abs(Math.log(ambientPressure / Math.max(ambient, 1)));
  return [...fields].sort((a, b) => apart(a) - apart(b));
}

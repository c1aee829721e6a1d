/** How engines are drawn under the pictures of their whole flows. */

import type { ConditionRow } from '../../../answer/model.ts';
import type { CutPanelOptions } from '../../../telling/figures/cutPanel.ts';
import type { ListedFlow } from '../../flows/flowList.ts';
import type { ShownEngine } from '../state/pair.ts';
import { flowAsked, flowsHere, markNow } from './flows.ts';
import { isPainted, picturesThere } from './painter.ts';
import { fieldsInMode } from './shownFlows.ts';
import { isPlacePainted } from './standIns.ts';

/** Room below the longest engine for a jet with its shocks, over its length. */
const JET_ROOM = 1.25;

/** By engine: the fields that hold for what is on screen. */
export function fieldsOnScreen(
  engines: readonly ShownEngine[],
  rows: Readonly<Record<string, ConditionRow>>,
): ReadonlyMap<string, readonly ListedFlow[]> {
  return new Map(
    engines.flatMap(({ id, result, standing }) => {
      const fields = fieldsInMode(flowsHere.value.get(id), rows[id]);
      // While an input moves no field is of this engine.
      return result.ok && standing === undefined && fields.length > 0 ? [[id, fields] as const] : [];
    }),
  );
}

/** Air and jet of an engine give way as soon as one of its fields is painted. */
export function underFlows(
  fields: ReadonlyMap<string, readonly ListedFlow[]>,
): Pick<CutPanelOptions, 'underField' | 'jetRoom'> {
  if (!flowAsked.value) return {};
  const painted = [...fields].filter(
    ([, own]) =>
      picturesThere.value > 0 &&
      own.some((field) => isPainted(field.key) || isPlacePainted(markNow.value, field)),
  );
  return { underField: painted.map(([id]) => id), jetRoom: JET_ROOM };
}

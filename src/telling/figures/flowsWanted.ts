/** Which whole flows figures and clips ask for, by their names. */

import { type FlowPlace, flowPlaceAt } from '../../answer/flow/index.ts';
import type { StudyAnswer } from '../../answer/model.ts';
import { flowEngines, flowFigureNames } from './flowKinds.ts';
import type { Altitude } from './options.ts';

export interface FlowWanted {
  /** Id. */ readonly engine: string;
  readonly at: { readonly place: FlowPlace } | { readonly from: Altitude; readonly to: Altitude };
}

/** A figure of a whole flow; null: it is none. */
export function flowOfFigure(
  answer: Pick<StudyAnswer, 'engines'>,
  figure: string,
  altitude: Altitude,
): FlowWanted | null {
  const found = flowFigureNames(answer).find(({ name }) => name === figure);
  return found === undefined ? null : { engine: found.engine, at: { place: flowPlaceAt(altitude) } };
}

/** A clip of a whole flow, by its figure; null: it is none. */
export function flowOfClip(
  answer: Pick<StudyAnswer, 'engines'>,
  {
    figure,
    kind,
    from,
    to,
    at,
  }: {
    readonly figure: string;
    readonly kind?: string;
    readonly from: Altitude;
    readonly to: Altitude;
    readonly at: Altitude;
  },
): FlowWanted | null {
  const found = flowEngines(answer).find(({ id }) => figure === `flow-${id}`);
  if (found === undefined) return null;
  return {
    engine: found.id,
    at: kind === 'drift' ? { place: flowPlaceAt(at) } : { from, to },
  };
}

/** Which whole flows of a study are there, as the local server tells the page. */

import { FINENESSES, type FlowField } from '../../answer/flow/index.ts';
import type { Problem } from '../../numerics/problem.ts';
import type { EngineInput } from '../../study/model.ts';

/** What is known of a field without its cells. */
export interface ListedFlow
  extends Pick<
    FlowField,
    | 'engine'
    | 'altitude'
    | 'ambientPressure'
    | 'thinnest'
    | 'fineness'
    | 'form'
    | 'mode'
    | 'insideBell'
    | 'mainShock'
    | 'leaves'
    | 'steady'
    | 'lip'
    | 'end'
    | 'kernel'
    | 'thrustCoefficient'
    | 'against'
  > {
  /** Under which its cells are kept. */ readonly key: string;
}

export type FlowWork =
  | { readonly is: 'none' }
  | { readonly is: 'working'; readonly done: number; readonly of: number }
  | { readonly is: 'failed'; readonly problem: Problem };

export interface FlowList {
  /** Of which inputs: see {@link enginesMark}. */ readonly mark: string;
  readonly fields: readonly ListedFlow[];
  readonly work: FlowWork;
  /** Engines that have no whole flow, and why. */ readonly without: Readonly<Record<string, Problem>>;
}

export interface FlowsWanted {
  /** Ids. */ readonly engines: readonly string[];
  /** [m] where one looks; what is near is done first. Null: vacuum. */ readonly altitude: number | null;
  /** That place alone, with those that it begins from; absent: the whole climb. */ readonly only?: 'here';
}

export const NO_FLOWS: FlowList = { mark: '', fields: [], work: { is: 'none' }, without: {} };

export function listedFlow(field: FlowField, key: string): ListedFlow {
  const {
    engine,
    altitude,
    ambientPressure,
    thinnest,
    fineness,
    form,
    mode,
    insideBell,
    mainShock,
    leaves,
    steady,
    lip,
    end,
    kernel,
    thrustCoefficient,
    against,
  } = field;
  return {
    key,
    engine,
    altitude,
    ambientPressure,
    thinnest,
    fineness,
    form,
    mode,
    insideBell,
    mainShock,
    leaves,
    steady,
    lip,
    end,
    kernel,
    thrustCoefficient,
    against,
  };
}

/** Takes a field in unless a finer one of the same place is there. */
export function takeIn(fields: Map<string, ListedFlow>, field: ListedFlow): void {
  const place = `${field.engine} ${field.ambientPressure}`;
  const before = fields.get(place);
  if (before !== undefined && FINENESSES.indexOf(before.fineness) > FINENESSES.indexOf(field.fineness))
    return;
  fields.set(place, field);
}

/** Tells one set of engines from another, here and in the page: FNV-1a over their inputs, twice 32 bits. */
export function enginesMark(engines: readonly EngineInput[]): string {
  const text = JSON.stringify(engines);
  let [a, b] = [0x811c9dc5, 0x050c5d1f];
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    a = Math.imul(a ^ unit, 0x01000193);
    b = Math.imul(b ^ (unit + i), 0x01000193);
  }
  return [a, b].map((part) => (part >>> 0).toString(16).padStart(8, '0')).join('');
}

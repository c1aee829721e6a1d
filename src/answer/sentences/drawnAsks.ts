/** Draws as rows: the values of every ask in one draw, by the program's own models or by one that stands beside them. */

import type { Study } from '../../study/model.ts';
import { ownersOf } from '../../study/owners.ts';
import type { Told } from '../asked/model.ts';
import { type Drawn, type DrawnAsk, eachDraw } from '../spread/index.ts';
import { movableInputs } from './inputLabels.ts';

/** One thing that is not known. */
export interface SpreadSource {
  /** Path of an input in the study, or the name of a model’s error. */ readonly name: string;
  readonly kind: 'input' | 'model';
  /** For people, e.g. `mixture ratio of Alder B`, `friction on the wall`. */ readonly label: string;
}

export interface AlternativeChoice {
  readonly of: string;
  readonly by: string;
}

export type Row = readonly (number | null)[];

export interface DrawnAsks {
  readonly drawn: Drawn;
  readonly sources: readonly SpreadSource[];
  /** At the study's middle values. */ readonly middle: readonly Told[];
  readonly count: number;
  readonly alternatives: readonly AlternativeChoice[];
  /** One row a draw. */ rows(alternative?: AlternativeChoice): readonly Row[];
  /** How it was drawn, one line each. */ readonly conditions: readonly string[];
}

export function drawnAsks(drawn: Drawn, study: Study): DrawnAsks {
  const inputs = movableInputs(ownersOf(study));
  const sources = drawn.unknowns.map((unknown): SpreadSource => {
    if (unknown.kind === 'model') return { name: unknown.name, kind: 'model', label: unknown.name };
    const label = inputs.get(unknown.path)?.label ?? unknown.path.replace(/^engines\./, '');
    return { name: unknown.path, kind: 'input', label };
  });
  const known = new Map<DrawnAsks | AlternativeChoice | string, readonly Row[]>();
  return {
    drawn,
    sources,
    middle: drawn.asks.map(({ middle }) => middle),
    count: drawn.count,
    alternatives: drawn.alternatives.map(({ of, by }) => ({ of, by })),
    rows(alternative) {
      const key = alternative === undefined ? '' : `${alternative.of}\n${alternative.by}`;
      const found = known.get(key) ?? rowsOf(drawn, asksBy(drawn, alternative));
      known.set(key, found);
      return found;
    },
    conditions: conditionsOf(drawn, sources),
  };
}

function asksBy({ asks, alternatives }: Drawn, choice: AlternativeChoice | undefined): readonly DrawnAsk[] {
  if (choice === undefined) return asks;
  return alternatives.find(({ of, by }) => of === choice.of && by === choice.by)?.asks ?? asks;
}

function rowsOf({ count }: Drawn, asks: readonly DrawnAsk[]): readonly Row[] {
  const rows: Row[] = [];
  eachDraw(asks, count, (values) => {
    rows.push([...values]);
  });
  return rows;
}

function conditionsOf({ method, count, solved }: Drawn, sources: readonly SpreadSource[]): readonly string[] {
  if (sources.length === 0) return [];
  return [
    method === 'exact'
      ? `${count} draws.`
      : `${count} draws on response surfaces through ${solved} solved points.`,
  ];
}

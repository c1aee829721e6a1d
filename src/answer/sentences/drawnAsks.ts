/** Draws as rows: the values of every ask in one draw, by the program's own models or by one that stands beside them. */

import type { Study } from '../../study/model.ts';
import { ownersOf } from '../../study/owners.ts';
import type { Told } from '../asked/model.ts';
import type { Drawn, DrawnAsk } from '../spread/index.ts';
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

/** The values of the asks, by their places in the list. */
export type Row = readonly (number | null)[];

/** Reads the values at some places of a row, always into the same array. */
export function readerAt(places: readonly number[]): (row: Row) => Row {
  const own: (number | null)[] = places.map(() => Number.NaN);
  return (row) => {
    for (let i = 0; i < places.length; i++) {
      const value = row[places[i]!];
      if (value === null || value === undefined) own[i] = null;
      else own[i] = value;
    }
    return own;
  };
}

export interface RowsWanted {
  /** The asks whose values are wanted, by their places; a row holds NaN for all others. */
  readonly places: readonly number[];
  readonly alternative?: AlternativeChoice | undefined;
  /** So many draws at most, the first ones. */ readonly most?: number;
}

export interface DrawnAsks {
  readonly drawn: Drawn;
  readonly sources: readonly SpreadSource[];
  /** At the study's middle values. */ readonly middle: readonly Told[];
  readonly count: number;
  readonly alternatives: readonly AlternativeChoice[];
  /** Calls `use` with one row a draw; the array is filled again each time. */
  eachRow(this: void, wanted: RowsWanted, use: (row: Row) => void): void;
  /** One ask, by its place in the list, over all draws. */ askBy(
    this: void,
    place: number,
    alternative: AlternativeChoice | undefined,
  ): DrawnAsk;
  /** How it was drawn, one line each. */ readonly conditions: readonly string[];
}

export function drawnAsks(drawn: Drawn, study: Study): DrawnAsks {
  const inputs = movableInputs(ownersOf(study));
  const sources = drawn.unknowns.map((unknown): SpreadSource => {
    if (unknown.kind === 'model') return { name: unknown.name, kind: 'model', label: unknown.name };
    const label = inputs.get(unknown.path)?.label ?? unknown.path.replace(/^engines\./, '');
    return { name: unknown.path, kind: 'input', label };
  });
  return {
    drawn,
    sources,
    middle: drawn.asks.map(({ middle }) => middle),
    count: drawn.count,
    alternatives: drawn.alternatives.map(({ of, by }) => ({ of, by })),
    eachRow: (wanted, use) => eachRow(drawn, wanted, use),
    askBy: (place, alternative) => asksBy(drawn, alternative)[place]!,
    conditions: conditionsOf(drawn, sources),
  };
}

function asksBy({ asks, alternatives }: Drawn, choice: AlternativeChoice | undefined): readonly DrawnAsk[] {
  if (choice === undefined) return asks;
  return alternatives.find(({ of, by }) => of === choice.of && by === choice.by)?.asks ?? asks;
}

function eachRow(drawn: Drawn, { places, alternative, most }: RowsWanted, use: (row: Row) => void): void {
  const asks = asksBy(drawn, alternative);
  // Plain numbers to begin with: an array of them costs no memory for each.
  const row: (number | null)[] = asks.map(() => Number.NaN);
  const wanted = places.map((place) => ({ place, ...asks[place]! }));
  const count = Math.min(most ?? drawn.count, drawn.count);
  for (let draw = 0; draw < count; draw++) {
    for (const { place, absent, values } of wanted) {
      // Two ways of storing, so that a list of plain numbers stays one.
      if (absent !== null && absent[draw] === 1) row[place] = null;
      else row[place] = values[draw]!;
    }
    use(row);
  }
}

function conditionsOf({ method, count, solved }: Drawn, sources: readonly SpreadSource[]): readonly string[] {
  if (sources.length === 0) return [];
  return [
    method === 'exact'
      ? `${count} draws.`
      : `${count} draws on response surfaces through ${solved} solved points.`,
  ];
}

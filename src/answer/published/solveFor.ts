/**
 * The value of one input that makes the computed figures meet the published ones.
 *
 * Each row allows the input where its computed value stays inside the row's ± (or its rounding): a band, or several
 * where the value rises and falls. What all rows allow together is the answer; its value is the one that meets the
 * row exactly where one row decides, else the middle.
 */

import { attempt, type Problem } from '../../numerics/problem.ts';
import type { EngineInput, PublishedRow, SolveFor } from '../../study/model.ts';
import { quantity } from '../catalogue.ts';
import type { EngineSolution } from '../solution.ts';
import { bandsWithin, common, crossing, type Sampled } from './bands.ts';
import { computedValue } from './computedValue.ts';
import { leeway } from './figures.ts';
import type { PublishedBand, PublishedSolve } from './model.ts';
import { sought, withInput } from './settledInput.ts';
import { disagreement, noEffect, nothingComputed, outOfReach, severalValues } from './solveProblems.ts';
import { placeWords } from './statedRows.ts';

/** What was found, and why there is no one value where there is none. */
export interface Settled {
  readonly solve: Omit<PublishedSolve, 'used'>;
  readonly problem: Problem | null;
  /** The input itself at that value: a throat diameter where the flow is sought. */ readonly input:
    | number
    | null;
}

interface RowBands {
  readonly row: PublishedRow;
  readonly name: string;
  readonly bands: readonly PublishedBand[];
}

/** Rows whose values change by less than this share over the whole range do not depend on the input. */
const NO_EFFECT = 1e-6;
/** Least leeway, where a row claims to be exact. */
const LEAST_LEEWAY = 1e-6;

export function settleByRows(
  engine: EngineInput,
  rows: readonly PublishedRow[],
  { input, stated, path }: SolveFor,
  solveWith: (engine: EngineInput) => EngineSolution,
): Settled {
  const range = sought[input];
  const sampler = samplerOf(engine, rows, input, solveWith);
  const first = Math.log(range.from);
  const step = (Math.log(range.to) - first) / (range.points - 1);
  const grid = Array.from({ length: range.points }, (_, i) => first + i * step);
  const told = (x: number): number => sampler.told(Math.exp(x));
  const toldBands = (some: readonly PublishedBand[]): readonly PublishedBand[] =>
    some.map(({ low, high }) => ({ low: told(low), high: told(high) }));
  const named = rows.map((row, i) => ({ row, name: `published[${i}]`, sampled: sampler.row(i) }));
  const others = named.filter(({ row }) => !range.itself.includes(row.quantity));
  const acting = others.filter(({ sampled }) => acts(sampled, grid));
  const found = acting.map(({ row, name, sampled }) => ({
    row,
    name,
    bands: bandsWithin(sampled, grid, row.value.value - allowed(row), row.value.value + allowed(row)),
  }));
  const bands = found.reduce<readonly PublishedBand[]>(
    (left, { bands: own }) => common(left, own),
    [{ low: grid[0]!, high: grid.at(-1)! }],
  );
  const problem = problemOf(found, bands);
  const [band] = bands;
  const at = problem === null && band !== undefined ? middleOf(band, acting) : null;
  return {
    solve: {
      quantity: range.quantity,
      stated,
      value: at === null ? null : told(at),
      bands: found.length === 0 ? [] : toldBands(bands),
      rows: found.map(({ name, bands: own }) => ({ row: name, bands: toldBands(own) })),
      withoutEffect: named
        .filter(({ name }) => !acting.some((one) => one.name === name))
        .map(({ name }) => name),
    },
    problem: problem && { ...problem, where: path },
    input: at === null ? null : Math.exp(at),
  };

  function problemOf(all: readonly RowBands[], together: readonly PublishedBand[]): Problem | null {
    if (others.length === 0) return noEffect(range.words);
    if (sampler.solved() === 0) return nothingComputed(range.words, sampler.failure());
    if (all.length === 0) return noEffect(range.words);
    const empty = all.find((one) => one.bands.length === 0);
    if (empty !== undefined) return outOfReach(range, rowWords(empty.row), reachOf(empty.row));
    const asked = all.map((one) => ({ words: rowWords(one.row), bands: toldBands(one.bands) }));
    if (together.length === 0) return disagreement(range, asked);
    return together.length > 1 ? severalValues(range, toldBands(together)) : null;
  }

  function reachOf(row: PublishedRow): readonly number[] {
    const { sampled } = named[rows.indexOf(row)]!;
    return grid.map(sampled).filter((value) => value !== null);
  }

  /** Where the one row that acts is met exactly, else the middle. */
  function middleOf({ low, high }: PublishedBand, all: typeof acting): number {
    const middle = 0.5 * (low + high);
    const [only, second] = all;
    if (only === undefined || second !== undefined) return middle;
    const [a, b] = [only.sampled(low), only.sampled(high)];
    if (a === null || b === null) return middle;
    const target = only.row.value.value;
    const [root] = crossing(only.sampled, { x: low, y: a }, { x: high, y: b }, target, 1e-9);
    return root?.x ?? middle;
  }
}

function allowed(row: PublishedRow): number {
  return Math.max(leeway(row), LEAST_LEEWAY * row.value.value);
}

function acts(sampled: Sampled, grid: readonly number[]): boolean {
  const values = grid.map(sampled).filter((value) => value !== null);
  return Math.max(...values) - Math.min(...values) > NO_EFFECT * Math.abs(values[0] ?? 0);
}

export function rowWords(row: PublishedRow): string {
  const where = row.at === null ? '' : ` ${placeWords(row.at)}`;
  return `${quantity(row.quantity).label} ${row.value.text}${where}`;
}

/** Every row's computed value at ln(input): each engine is solved once, each row's value worked out when asked for. */
function samplerOf(
  engine: EngineInput,
  rows: readonly PublishedRow[],
  input: SolveFor['input'],
  solveWith: (engine: EngineInput) => EngineSolution,
) {
  const engines = kept((x) => attempt(() => solveWith(withInput(engine, input, Math.exp(x)))));
  const values = rows.map((row) =>
    kept((x) => {
      const solved = engines.of(x);
      return solved.ok ? computedValue(solved.value, row).value : null;
    }),
  );
  return {
    row:
      (i: number): Sampled =>
      (x) =>
        values[i]!.of(x),
    /** The quantity that is told, at that value of the input. */
    told: (value: number): number => {
      if (input !== 'massFlow') return value;
      const solved = engines.of(Math.log(value));
      return solved.ok ? solved.value.massFlow : value;
    },
    solved: (): number => engines.all().filter(({ ok }) => ok).length,
    failure: (): Problem | null => {
      const failed = engines.all().find((outcome) => !outcome.ok);
      return failed === undefined || failed.ok ? null : failed.problem;
    },
  };
}

/** A function of one number that works out each value once. */
function kept<T>(compute: (x: number) => T): { of(x: number): T; all(): readonly T[] } {
  const known = new Map<number, T>();
  return {
    of: (x) => {
      const before = known.get(x);
      if (before !== undefined) return before;
      const value = compute(x);
      known.set(x, value);
      return value;
    },
    all: () => [...known.values()],
  };
}

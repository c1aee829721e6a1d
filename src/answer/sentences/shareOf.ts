/** In which share of the draws a test holds, and how well that share is known. */

import type { CompiledTest } from '../expression/model.ts';
import { shareOf } from '../spread/index.ts';
import type { AlternativeChoice, DrawnAsks, Row } from './drawnAsks.ts';

export interface HoldingShare {
  /** Of the draws that have a value; 0 where none has [–]. */ readonly share: number;
  /** Standard error of `share` [–]. */ readonly error: number;
  /** Share of the draws in which a needed number is absent [–]. */ readonly absent: number;
  /** Share of the draws that the error of what stands in for the model could turn [–]. */
  readonly unsure: number;
}

/** A test and where its asks stand in the list that was drawn. */
export interface PlacedTest {
  readonly test: CompiledTest;
  /** Index in the drawn list of each ask of the test. */ readonly places: readonly number[];
}

/** The values of this test's asks out of those of all. */
export function ownValues({ places }: Pick<PlacedTest, 'places'>, all: Row): readonly (number | null)[] {
  return places.map((place) => all[place] ?? null);
}

export function holdingShare(
  placed: PlacedTest,
  draws: DrawnAsks,
  alternative?: AlternativeChoice,
): HoldingShare {
  const { drawn } = draws;
  const own = asksOf(placed, drawn, alternative);
  const { share, error, undecided } = shareOf(drawn, own, placed.test.holds);
  if (own.every(({ surfaceError }) => surfaceError === 0)) {
    return { share: share ?? 0, error, absent: undecided, unsure: 0 };
  }
  const misses = own.map(({ surfaceMisses }) => surfaceMisses);
  const looked: Values[] = [];
  draws.eachRow({ places: placed.places, alternative, most: ROWS_LOOKED_AT }, (row) => {
    looked.push(ownValues(placed, row));
  });
  return {
    share: share ?? 0,
    error,
    absent: undecided,
    unsure: turnable(placed, looked, misses) / looked.length,
  };
}

type Values = readonly (number | null)[];

/** How many of these draws the errors could turn; those nearest to the edge are looked at first. */
function turnable(placed: PlacedTest, looked: readonly Values[], misses: readonly Float64Array[]): number {
  const byMargin = looked
    .flatMap((values) => {
      const margin = placed.test.margin(values);
      return margin === null ? [] : [{ values, margin }];
    })
    .sort((one, other) => Math.abs(one.margin) - Math.abs(other.margin));
  let turned = 0;
  let firmInARow = 0;
  for (const { values, margin } of byMargin) {
    if (couldTurn(placed, values, margin, misses)) {
      turned += 1;
      firmInARow = 0;
    } else if (++firmInARow === ENOUGH_FIRM) break;
  }
  return turned;
}

/** After so many that stand firm, those farther from the edge do too. */
const ENOUGH_FIRM = 4;

function asksOf(
  { places }: PlacedTest,
  { asks, alternatives }: DrawnAsks['drawn'],
  choice: AlternativeChoice | undefined,
): DrawnAsks['drawn']['asks'] {
  const by = alternatives.find(({ of, by: name }) => of === choice?.of && name === choice?.by);
  return places.map((place) => (by?.asks ?? asks)[place]!);
}

/** So many draws tell which share could turn. */
const ROWS_LOOKED_AT = 64;

/** Two standard deviations, as everywhere. */
const COVER = 2;

/**
 * Whether the error of what stands in for the model could turn this draw. What the surfaces of all numbers miss at the same point,
 * they miss together: it moves them together, one way or the other.
 */
function couldTurn(
  { test }: PlacedTest,
  values: Values,
  margin: number,
  misses: readonly Float64Array[],
): boolean {
  const moved = [...values];
  const points = Math.max(...misses.map(({ length }) => length));
  let squares = 0;
  for (let point = 0; point < points; point++) {
    let most = 0;
    for (const way of [COVER, -COVER]) {
      for (let i = 0; i < moved.length; i++) {
        const value = values[i] ?? null;
        moved[i] = value === null ? null : value + way * (misses[i]![point] ?? 0);
      }
      const there = test.margin(moved);
      if (there !== null) most = Math.max(most, Math.abs(there - margin));
    }
    squares += most * most;
  }
  return Math.abs(margin) < Math.sqrt(squares);
}

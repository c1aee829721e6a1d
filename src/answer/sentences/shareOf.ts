/** In which share of the draws a test holds, and how well that share is known. */

import type { CompiledTest } from '../expression/model.ts';
import type { AlternativeChoice, DrawnAsks } from '../spread/model.ts';

export interface HoldingShare {
  /** Of the draws that have a value; 0 where none has [–]. */ readonly share: number;
  /** Standard error of `share` [–]. */ readonly error: number;
  /** Share of the draws in which a needed number is absent [–]. */ readonly absent: number;
  /** If what is absent, or within the error of what stands in for the model, all failed; all held [–]. */
  readonly least: number;
  readonly most: number;
}

/** A test and where its asks stand in the list that was drawn. */
export interface PlacedTest {
  readonly test: CompiledTest;
  /** Index in the drawn list of each ask of the test. */ readonly places: readonly number[];
}

/** The values of this test's asks out of those of all. */
export function ownValues({ places }: PlacedTest, all: ArrayLike<number | null>): readonly (number | null)[] {
  return places.map((place) => all[place] ?? null);
}

/**
 *   share = k/n,  error = √(p (1 − p)/n) with p = (k + 1)/(n + 2)
 *
 * The error is that of independent draws, p by the rule of succession so that it is not 0 where all hold; draws spread evenly
 * do better. Source: B. W. Brown, L. D. Cai, A. DasGupta, Statistical Science 16 (2001) 101–133 (shrunk shares; from memory).
 */
export function holdingShare(
  placed: PlacedTest,
  drawn: DrawnAsks,
  alternative?: AlternativeChoice,
): HoldingShare {
  let [holding, absent, unsure, unsureHolding] = [0, 0, 0, 0];
  for (let draw = 0; draw < drawn.count; draw++) {
    const values = ownValues(placed, drawn.values(draw, alternative));
    const holds = placed.test.holds(values);
    if (holds === null) absent += 1;
    else {
      if (holds) holding += 1;
      if (withinStandIn(placed, drawn, values)) {
        unsure += 1;
        if (holds) unsureHolding += 1;
      }
    }
  }
  const n = drawn.count;
  const told = n - absent;
  const share = told === 0 ? 0 : holding / told;
  const certain = drawn.sources.length === 0;
  const shrunk = (holding + 1) / (told + 2);
  return {
    share,
    error: certain || told === 0 ? 0 : Math.sqrt((shrunk * (1 - shrunk)) / told),
    absent: absent / n,
    least: (holding - unsureHolding) / n,
    most: (holding + absent + unsure - unsureHolding) / n,
  };
}

/** Two standard deviations, as everywhere. */
const COVER = 2;

/** Whether the error of what stands in for the model could turn this draw. */
function withinStandIn(
  { test, places }: PlacedTest,
  { standInError }: DrawnAsks,
  values: readonly (number | null)[],
): boolean {
  if (places.every((place) => (standInError[place] ?? 0) === 0)) return false;
  const margin = test.margin(values);
  if (margin === null) return false;
  let squares = 0;
  places.forEach((place, i) => {
    const error = standInError[place] ?? 0;
    const value = values[i] ?? null;
    if (error === 0 || value === null) return;
    const moved = test.margin(values.map((each, k) => (k === i ? value + COVER * error : each)));
    if (moved !== null) squares += (moved - margin) ** 2;
  });
  return Math.abs(margin) < Math.sqrt(squares);
}

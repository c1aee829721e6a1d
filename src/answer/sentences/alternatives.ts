/** Published models that stand beside each other, and what a sentence is by each of them. */

import type { AlternativeChoice, DrawnAsks } from './drawnAsks.ts';
import type { SentenceByModel } from './model.ts';
import { holdingShare, type PlacedTest } from './shareOf.ts';

/** By the model that the program takes (undefined), and by each that stands beside it. */
export type Choices = readonly (AlternativeChoice | undefined)[];

/**
 * Those that one of the test's numbers brings in any draw, its own model first: at the middle values all may agree, and part where
 * an input moves. What a model does not touch is the same object by it as by the program's own.
 */
export function choicesOf({ places }: Pick<PlacedTest, 'places'>, { drawn }: DrawnAsks): Choices {
  const touched = drawn.alternatives.filter(({ asks }) =>
    places.some((place) => asks[place] !== drawn.asks[place]),
  );
  return [undefined, ...touched.map(({ of, by }) => ({ of, by }))];
}

export function byEachModel(
  placed: PlacedTest,
  drawn: DrawnAsks,
  choices: Choices,
): readonly SentenceByModel[] {
  return choices.flatMap((choice) => {
    if (choice === undefined) return [];
    const found = holdingShare(placed, drawn, choice);
    return [{ of: choice.of, by: choice.by, share: found.absent > 0.5 ? null : found.share }];
  });
}

/** Published models that stand beside each other, and what a sentence is by each of them. */

import type { AlternativeChoice, DrawnAsks } from './drawnAsks.ts';
import type { SentenceByModel } from './model.ts';
import { holdingShare, type PlacedTest } from './shareOf.ts';

/** By the model that the program takes (undefined), and by each that stands beside it. */
export type Choices = readonly (AlternativeChoice | undefined)[];

/** Those that one of the test's numbers brings, its own model first. */
export function choicesOf({ places }: Pick<PlacedTest, 'places'>, drawn: DrawnAsks): Choices {
  const own = new Set(
    places.flatMap((place) => {
      const told = drawn.middle[place];
      return told?.ok ? told.alternatives.map(({ of, by }) => `${of}\n${by}`) : [];
    }),
  );
  return [undefined, ...drawn.alternatives.filter(({ of, by }) => own.has(`${of}\n${by}`))];
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

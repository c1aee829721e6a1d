/** Quantities of the catalogue by plain words. */

import { once } from '../../numerics/once.ts';
import { needsOf } from '../asked/askProblem.ts';
import { type CatalogueEntry, catalogue } from '../catalogue.ts';
import { type Findable, indexOf, type Ranked, rank } from './rank.ts';
import type { Wanted } from './readWanted.ts';

interface FoundQuantity extends Findable {
  readonly entry: CatalogueEntry;
}

/** What a search most often means comes first of what fits alike. */
const WEIGHT: Readonly<Partial<Record<CatalogueEntry['place'], number>>> = {
  altitude: 0.05,
  engine: 0.04,
  vehicle: 0.03,
  input: 0.02,
  wall: -0.05,
  comparison: -0.1,
};
/** A name without a dot is that of the engine as a whole. */
const PLAIN_NAME = 0.1;
/** What is stated of a vehicle comes after what is computed of it. */
const STATED = -0.1;
/** With a place named, what is different from place to place is meant. */
const IN_THIS_AIR = 0.3;

/** Found once somebody looks. */
const index = once(() =>
  indexOf(
    catalogue.map(
      (entry): FoundQuantity => ({
        entry,
        label: entry.label,
        also: [entry.name, ...(entry.aliases ?? [])].join(' '),
        about: entry.meaning,
        weight:
          (WEIGHT[entry.place] ?? 0) +
          (entry.name.includes('.') ? 0 : PLAIN_NAME) +
          (entry.name.startsWith('vehicle.') ? STATED : 0),
      }),
    ),
  ),
);

export function findQuantities({ words, at }: Wanted): readonly Ranked<CatalogueEntry>[] {
  return rank(words, index())
    .map(({ item: { entry }, score }) => ({
      item: entry,
      score: at !== null && needsOf(entry).ambient ? score + IN_THIS_AIR : score,
    }))
    .sort((a, b) => b.score - a.score);
}

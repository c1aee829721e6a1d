/** The data rows that a study needs, fetched once, so that solving itself needs no waiting. */

import type { PropellantRecord, SpeciesRecord, TransportRecord } from '../physics/gas/index.ts';
import type { EngineInput, Ingredient, Propellants } from '../study/model.ts';
import type { DataShelf } from './shelf.ts';

export interface Materials {
  readonly propellants: ReadonlyMap<string, PropellantRecord>;
  /** By the sorted elements of an engine, see {@link elementsKey}; one array each, so compiled mixtures are kept. */
  readonly species: ReadonlyMap<string, readonly SpeciesRecord[]>;
  readonly transport: readonly TransportRecord[];
}

/** Rows for all these engines, added to what `known` holds already. */
export async function gatherMaterials(
  engines: readonly EngineInput[],
  shelf: DataShelf,
  known?: Materials,
): Promise<Materials> {
  const propellants =
    known?.propellants ?? new Map((await shelf.propellants()).map((row) => [row.id, row] as const));
  const species = new Map(known?.species ?? []);
  for (const { propellants: input } of engines) {
    const elements = elementsOf(ingredientsOf(input), propellants);
    const key = elements.join(' ');
    if (elements.length > 0 && !species.has(key)) species.set(key, await shelf.species(elements));
  }
  return { propellants, species, transport: known?.transport ?? (await shelf.transport()) };
}

export function elementsKey(elements: Readonly<Record<string, number>>): string {
  return Object.keys(elements).sort().join(' ');
}

export function ingredientsOf(propellants: Propellants): readonly Ingredient[] {
  switch (propellants.kind) {
    case 'burnt':
      return [...propellants.oxidiser, ...propellants.fuel];
    case 'mixed':
    case 'heated':
      return propellants.parts;
    case 'perfect':
      return [];
  }
}

/** Elements of the ingredients that are known; an unknown one is told when it is looked up. */
function elementsOf(
  ingredients: readonly Ingredient[],
  propellants: ReadonlyMap<string, PropellantRecord>,
): readonly string[] {
  const elements = ingredients.flatMap(({ id, custom, share }) => {
    const formula = custom?.elements ?? propellants.get(id)?.elements ?? {};
    return share.value > 0 ? Object.keys(formula).filter((element) => (formula[element] ?? 0) > 0) : [];
  });
  return [...new Set(elements)].sort();
}

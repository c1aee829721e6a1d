/** The data rows that a study needs, fetched once, so that solving itself needs no waiting. */

import type { PropellantRecord, SpeciesRecord, TransportRecord } from '../physics/gas/index.ts';
import { type CoolantFluid, coolantFluid, type WallMaterialRecord } from '../physics/heat/index.ts';
import type { Cooling, EngineInput, Ingredient, Propellants } from '../study/model.ts';
import type { CoolantRow, DataShelf } from './shelf.ts';

export interface Materials {
  readonly propellants: ReadonlyMap<string, PropellantRecord>;
  /** By the sorted elements of an engine, see {@link elementsKey}; one array each, so compiled mixtures are kept. */
  readonly species: ReadonlyMap<string, readonly SpeciesRecord[]>;
  readonly transport: readonly TransportRecord[];
  /** Coolants, walls and their tables; null where no engine says anything of its cooling. */
  readonly cooling: CoolingMaterials | null;
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
  const transport = known?.transport ?? (await shelf.transport());
  const cooling = await coolingMaterials(engines, shelf, known?.cooling ?? null);
  return { propellants, species, transport, cooling };
}

export interface CoolingMaterials {
  readonly coolants: readonly CoolantRow[];
  readonly walls: readonly WallMaterialRecord[];
  /** By id, those that the engines need. */ readonly fluids: ReadonlyMap<string, CoolantFluid>;
}

async function coolingMaterials(
  engines: readonly EngineInput[],
  shelf: DataShelf,
  known: CoolingMaterials | null,
): Promise<CoolingMaterials | null> {
  if (engines.every(({ cooling }) => cooling === null)) return known;
  const coolants = known?.coolants ?? (await shelf.coolants());
  const walls = known?.walls ?? (await shelf.walls());
  const fluids = new Map(known?.fluids ?? []);
  for (const engine of engines) {
    for (const id of coolantsOf(engine, coolants)) {
      if (!fluids.has(id)) fluids.set(id, coolantFluid(await shelf.coolant(id)));
    }
  }
  return { coolants, walls, fluids };
}

/** Ids of the coolants in channels and film. */
function coolantsOf(engine: EngineInput, coolants: readonly CoolantRow[]): readonly string[] {
  const { cooling } = engine;
  if (cooling === null) return [];
  const [channel, film] = [
    coolantRowOf(engine, cooling.coolant, coolants),
    coolantRowOf(engine, 'fuel', coolants),
  ];
  return [channel, film].flatMap((row) => (row === null ? [] : [row.id]));
}

/** The coolant that a word of the study stands for; null where its propellant is none. */
export function coolantRowOf(
  { propellants }: EngineInput,
  word: Cooling['coolant'],
  coolants: readonly CoolantRow[],
): CoolantRow | null {
  if (word !== 'fuel' && word !== 'oxidiser') return coolants.find(({ id }) => id === word) ?? null;
  const parts =
    propellants.kind === 'burnt' ? propellants[word] : word === 'fuel' ? ingredientsOf(propellants) : [];
  const [lone] = parts;
  if (lone === undefined || parts.length > 1 || lone.custom !== null) return null;
  return coolants.find((row) => row.propellants.includes(lone.id)) ?? null;
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

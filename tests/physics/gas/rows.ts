import { openDataShelf } from '../../../src/faces/disk/data.ts';
import {
  blendReactants,
  burntReactants,
  type Reactants,
  type SpeciesRecord,
} from '../../../src/physics/gas/index.ts';

const shelf = openDataShelf();
const propellants = new Map((await shelf.propellants()).map((row) => [row.id, row]));

/** Every species of the data. */
export const species: readonly SpeciesRecord[] = await shelf.species([
  'H',
  'C',
  'N',
  'O',
  'Al',
  'Cl',
  'F',
  'He',
  'Ar',
]);

export function propellant(id: string): Reactants {
  const row = propellants.get(id);
  if (row === undefined) throw new Error(`no propellant ${id}`);
  return blendReactants([{ ...row, share: 1 }]);
}

export function burnt(oxidiser: string, fuel: string, ratio: number): Reactants {
  return burntReactants(propellant(oxidiser), propellant(fuel), ratio);
}

export function mixed(shares: Readonly<Record<string, number>>): Reactants {
  return blendReactants(
    Object.entries(shares).map(([id, share]) => {
      const row = propellants.get(id);
      if (row === undefined) throw new Error(`no propellant ${id}`);
      return { ...row, share };
    }),
  );
}

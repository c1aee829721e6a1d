import { openDataShelf } from '../../../src/faces/disk/data.ts';
import type { FedPropellants } from '../../../src/physics/cycle/index.ts';
import { blendReactants } from '../../../src/physics/gas/index.ts';

const shelf = openDataShelf();
const rows = await shelf.propellants();

/** Two propellants of the data, with the species that may form. */
export async function fedWith(oxidiserId: string, fuelId: string): Promise<FedPropellants> {
  const [oxidiser, fuel] = [oxidiserId, fuelId].map((id) =>
    blendReactants([{ ...rows.find((row) => row.id === id)!, share: 1 }]),
  );
  const elements = new Set([...Object.keys(oxidiser!.elements), ...Object.keys(fuel!.elements)]);
  return { oxidiser: oxidiser!, fuel: fuel!, species: await shelf.species([...elements].sort()) };
}

/** A crew of one: works out what is asked in this thread. */

import type { Study } from '../../study/model.ts';
import { gatherMaterials } from '../materials.ts';
import type { DataShelf } from '../shelf.ts';
import type { Crew } from './crew.ts';
import { crewOf } from './crewOf.ts';
import { workmate } from './workmate.ts';

/** @throws ProblemError where rows of the data cannot be read */
export async function localCrew(study: Study, shelf: DataShelf): Promise<Crew> {
  const materials = await gatherMaterials(study.engines, shelf);
  const mate = workmate(study, materials);
  return crewOf([
    {
      async work(asks, point) {
        // Lets go of the thread, so that what waits for it (a signal to stop, a screen) has its turn.
        await new Promise((resolve) => setTimeout(resolve));
        return mate(asks, point);
      },
    },
  ]);
}

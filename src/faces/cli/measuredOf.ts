/** The measured points of a study held against what is computed; empty where it has none. */

import { localCrew } from '../../answer/asked/localCrew.ts';
import { holdMeasured } from '../../answer/measured/holdMeasured.ts';
import type { MeasuredSeries } from '../../answer/measured/model.ts';
import type { DataShelf } from '../../answer/shelf.ts';
import type { Study } from '../../study/model.ts';
import { readMeasuredFiles } from '../disk/measuredFiles.ts';
import { BadInput } from './badInput.ts';

/** @throws BadInput with the problems of the files */
export async function measuredOf(
  study: Study,
  folder: string,
  shelf: DataShelf,
): Promise<readonly MeasuredSeries[]> {
  if (study.measured.length === 0) return [];
  const { sets, problems } = await readMeasuredFiles(folder, study);
  if (problems.length > 0) throw new BadInput(problems);
  return holdMeasured(study, sets, await localCrew(study, shelf));
}

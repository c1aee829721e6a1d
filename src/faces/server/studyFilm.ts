/** A clip of a study as a film in a folder; returns its path. */

import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { localCrew } from '../../answer/asked/localCrew.ts';
import { gatherMaterials } from '../../answer/materials.ts';
import { solveStudyLive } from '../../answer/solve.ts';
import { sweep, sweepRequestOf } from '../../answer/sweeps/index.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { knownNames } from '../../study/names.ts';
import { readStudy } from '../../study/read.ts';
import { clipOf, frameRateOf, movementOf, namedClips, USUAL_TIMING } from '../../telling/clips/index.ts';
import { flowOfClip } from '../../telling/figures/flowsWanted.ts';
import { openDataShelf } from '../disk/data.ts';
import { wantedFlows } from '../disk/wantedFlows.ts';
import { launchProblem } from '../film/chromium.ts';
import type { FilmWanted, WriteOptions } from '../film/filmModel.ts';
import { writeClip } from '../film/writeClip.ts';
import { keptAside } from './flowsAside.ts';

export async function studyFilm(
  text: string,
  { clip: name, size, alpha, seconds, theme }: FilmWanted,
  folder: string,
  options: WriteOptions,
): Promise<string> {
  const missing = launchProblem();
  if (missing !== null) throw new ProblemError(missing);
  const shelf = openDataShelf();
  const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok)
    throw new ProblemError({
      code: 'film-of-faulty-study',
      what: 'The study has mistakes, so there is no film of it.',
      mend: 'Mend what the page points out, then ask again.',
    });
  const { study } = outcome;
  const solved = await solveStudyLive(study, shelf);
  const ids = study.sweeps.map(({ id }) => id);
  const named = namedClips(solved.answer, ids).find((each) => each.name === name);
  if (named === undefined)
    throw new ProblemError({
      code: 'film-unknown',
      what: `The study has no clip ${name} any more.`,
      mend: 'Choose another one.',
    });
  options.signal?.throwIfAborted();
  const input = study.sweeps.find(({ id }) => named.asked.figure === `sweep-${id}`);
  const swept =
    input === undefined
      ? []
      : [await sweep(study, await localCrew(study, shelf), sweepRequestOf(study, input))];
  const flow = flowOfClip(solved.answer, { from: 0, to: 'vacuum', at: 0, ...named.asked });
  await keptAside(text, flow === null ? [] : [flow], options.signal);
  const { signal } = options;
  const flows =
    flow === null
      ? []
      : await wantedFlows(solved, [flow], {
          ...(signal !== undefined && { signal }),
        });
  const movement = movementOf(solved, swept, ids, {
    ...named.asked,
    size,
    theme,
    transparent: alpha,
    from: 0,
    to: 'vacuum',
    at: 0,
    flows,
    anew: { study, materials: await gatherMaterials(study.engines, shelf) },
  });
  const path = join(folder, `${name.replace(/[^\w-]/g, '-')}.${alpha ? 'webm' : 'mp4'}`);
  await rm(path, { force: true });
  const clip = clipOf(movement, { ...USUAL_TIMING, seconds, rate: frameRateOf('25') });
  return (await writeClip(clip, path, options)).path;
}

/** The climb of a study's engines as a film in a folder; returns its path. */

import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { solveStudyLive } from '../../answer/solve.ts';
import { ProblemError } from '../../numerics/problem.ts';
import { knownNames } from '../../study/names.ts';
import { readStudy } from '../../study/read.ts';
import { clipOf, frameRateOf, movementOf, USUAL_TIMING } from '../../telling/clips/index.ts';
import { openDataShelf } from '../disk/data.ts';
import { launchProblem } from '../film/chromium.ts';
import type { FilmWanted, WriteOptions } from '../film/filmModel.ts';
import { writeClip } from '../film/writeClip.ts';

const NAME = 'climb.mp4';

export async function climbFilm(
  text: string,
  { seconds, theme }: FilmWanted,
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
  const solved = await solveStudyLive(outcome.study, shelf);
  const movement = movementOf(solved, [], [], {
    figure: 'cut',
    size: '16:9',
    theme,
    transparent: false,
    from: 0,
    to: 'vacuum',
    at: 0,
  });
  const path = join(folder, NAME);
  await rm(path, { force: true });
  const clip = clipOf(movement, { ...USUAL_TIMING, seconds, rate: frameRateOf('25') });
  return (await writeClip(clip, path, options)).path;
}

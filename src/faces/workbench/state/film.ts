/** The film of the climb: asked of the local server, which makes it; progress, stop, and where it can be had. */

import { computed, signal } from '@preact/signals';
import { type NamedClip, namedClips } from '../../../telling/clips/namedClips.ts';
import type { FilmState, FilmWanted } from '../../film/filmModel.ts';
import { climbSeconds } from './climb.ts';
import { flightsInSight } from './flights.ts';
import { askFilm } from './studyLink.ts';
import { solved } from './studyStore.ts';

export const filmState = signal<FilmState>({ is: 'none' });

/** What is filmed: the engines as they climb, unless something else is chosen. */
export const filmChosen = signal<Pick<FilmWanted, 'clip' | 'size' | 'alpha'>>({
  clip: 'cut-climb',
  size: '16:9',
  alpha: false,
});

/** All that can be filmed of the study as it is. */
export const filmsThere = computed((): readonly NamedClip[] => {
  const found = solved.value;
  return found === null
    ? []
    : namedClips(
        { engines: found.answer.engines, vehicles: flightsInSight.value ?? [] },
        found.study.sweeps.map(({ id }) => id),
      );
});

/** Where the film that is ready can be saved from. */
export const filmAddress = '/api/film/file';

/** [ms] between two looks at how far it is */
const LOOK = 400;

export async function beginFilm(): Promise<void> {
  const theme = matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
  filmState.value = { is: 'working', done: 0, of: 1 };
  filmState.value = await askFilm({ ...filmChosen.value, seconds: climbSeconds.value, theme });
  while (filmState.value.is === 'working') {
    await new Promise((resolve) => setTimeout(resolve, LOOK));
    filmState.value = await askFilm(null);
  }
}

export async function stopFilm(): Promise<void> {
  filmState.value = await askFilm('stop');
}

/** The film of the climb: asked of the local server, which makes it; progress, stop, and where it can be had. */

import { signal } from '@preact/signals';
import type { FilmState } from '../../film/filmModel.ts';
import { climbSeconds } from './climb.ts';
import { askFilm } from './studyLink.ts';

export const filmState = signal<FilmState>({ is: 'none' });

/** Where the film that is ready can be saved from. */
export const filmAddress = '/api/film/file';

/** [ms] between two looks at how far it is */
const LOOK = 400;

export async function beginFilm(): Promise<void> {
  const theme = matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
  filmState.value = { is: 'working', done: 0, of: 1 };
  filmState.value = await askFilm({ seconds: climbSeconds.value, theme });
  while (filmState.value.is === 'working') {
    await new Promise((resolve) => setTimeout(resolve, LOOK));
    filmState.value = await askFilm(null);
  }
}

export async function stopFilm(): Promise<void> {
  filmState.value = await askFilm('stop');
}

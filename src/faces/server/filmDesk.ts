/** Films asked for in the workbench: one at a time, made from the study as it stands in its file. */

import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { type Problem, ProblemError } from '../../numerics/problem.ts';
import type { FilmState, FilmWanted } from '../film/filmModel.ts';

export interface FilmDesk {
  state(): FilmState;
  /** Begins a film; one that is being made goes on instead. */ begin(text: string, wanted: FilmWanted): void;
  stop(): Promise<void>;
  /** The film that is ready; null: none is. */ film(): Promise<{
    readonly name: string;
    readonly bytes: Buffer;
  } | null>;
  close(): Promise<void>;
}

export function filmDesk(): FilmDesk {
  let state: FilmState = { is: 'none' };
  let ending = new AbortController();
  let work: Promise<void> = Promise.resolve();
  let folder: string | null = null;
  let path: string | null = null;

  async function make(text: string, wanted: FilmWanted, signal: AbortSignal): Promise<void> {
    folder ??= await mkdtemp(join(tmpdir(), 'plumeline-film-'));
    // All that it takes is loaded only now: most runs of the workbench make no film.
    const { studyFilm } = await import('./studyFilm.ts');
    const written = await studyFilm(text, wanted, folder, {
      signal,
      onProgress: (done, of) => {
        state = { is: 'working', done, of };
      },
    });
    path = written;
    state = { is: 'ready', name: basename(written) };
  }

  return {
    state: () => state,
    begin(text, wanted) {
      if (state.is === 'working') return;
      state = { is: 'working', done: 0, of: 1 };
      ending = new AbortController();
      const { signal } = ending;
      work = make(text, wanted, signal).catch((error: unknown) => {
        state = signal.aborted ? { is: 'none' } : { is: 'failed', problem: problemOf(error) };
      });
    },
    async stop() {
      ending.abort();
      await work;
      if (state.is === 'working') state = { is: 'none' };
    },
    async film() {
      if (state.is !== 'ready' || path === null) return null;
      return { name: state.name, bytes: await readFile(path) };
    },
    async close() {
      ending.abort();
      await work;
      if (folder !== null) await rm(folder, { recursive: true, force: true });
    },
  };
}

/** What is no problem of the study or machine is told too: there is no other place to see it. */
function problemOf(error: unknown): Problem {
  if (error instanceof ProblemError) return error.problem;
  return {
    code: 'film-failed',
    what: `The film could not be made: ${error instanceof Error ? error.message : String(error)}.`,
    mend: 'Try again; plumeline clip makes the same film from the command line.',
  };
}

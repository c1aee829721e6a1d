/** Tells open pages that the study file was changed by someone else. */

import type { StudyFile } from './studyFile.ts';

/** How often the file is looked at while a page listens [ms]. Looking works on network drives too; watching may not. */
const lookEvery = 400;

export interface Changes {
  /**
   * Calls `tell` with `listening` once the file's present state is known, so that what happened between reading the study
   * and listening is not missed, and with `changed` after each change. Returns the way to stop; null when too many
   * listen already.
   */
  listen(tell: (what: 'listening' | 'changed') => void): (() => void) | null;
  close(): void;
}

const mostListeners = 32;

export function watchStudy(file: StudyFile): Changes {
  const listeners = new Set<(what: 'listening' | 'changed') => void>();
  let timer: NodeJS.Timeout | null = null;
  let last: string | null = null;
  let looking = false;
  /** Settles when the state of the file at the first look is known. */
  let known: Promise<void> = Promise.resolve();

  const look = async () => {
    if (looking) return;
    looking = true;
    try {
      const now = await file.fingerprint();
      const changed = last !== null && now !== last;
      last = now;
      if (changed) for (const tell of listeners) tell('changed');
    } finally {
      looking = false;
    }
  };
  const stop = () => {
    if (timer !== null) clearInterval(timer);
    timer = null;
    last = null;
  };

  return {
    listen(tell) {
      if (listeners.size >= mostListeners) return null;
      listeners.add(tell);
      if (timer === null) {
        known = look();
        timer = setInterval(() => void look(), lookEvery);
        timer.unref();
      }
      void known.then(() => {
        if (listeners.has(tell)) tell('listening');
      });
      return () => {
        listeners.delete(tell);
        if (listeners.size === 0) stop();
      };
    },
    close() {
      listeners.clear();
      stop();
    },
  };
}

/** Tells open pages that the study file was changed by someone else. */

import type { StudyFile } from './studyFile.ts';

/** How often the file is looked at while a page listens [ms]. Looking works on network drives too; watching may not. */
const lookEvery = 400;

export interface Changes {
  /** Calls `tell` after each change of the file; returns the way to stop. Null when too many listen already. */
  listen(tell: () => void): (() => void) | null;
  close(): void;
}

const mostListeners = 32;

export function watchStudy(file: StudyFile): Changes {
  const listeners = new Set<() => void>();
  let timer: NodeJS.Timeout | null = null;
  let last: string | null = null;
  let looking = false;

  const look = async () => {
    if (looking) return;
    looking = true;
    try {
      const now = await file.fingerprint();
      const changed = last !== null && now !== last;
      last = now;
      if (changed) for (const tell of listeners) tell();
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
        void look();
        timer = setInterval(() => void look(), lookEvery);
        timer.unref();
      }
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

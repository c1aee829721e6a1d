/** The first answer of the page, worked out in a thread of its own from the moment the server starts. */

import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import type { StudyFile } from './studyFile.ts';

/** A solved study, as the page reads it. */
type Block = Uint8Array<ArrayBuffer>;

export interface FirstAnswer {
  /** The solved study as the file has it now, if that has this hash; null where there is none to be had here. */
  read(hash: string): Promise<Block | null>;
  close(): Promise<void>;
}

/** Lies beside this file once it is built; what runs from the sources leaves the work to the page. */
const threadFile = new URL('./firstAnswerThread.js', import.meta.url);

export function firstAnswerFor(file: StudyFile): FirstAnswer {
  if (!existsSync(threadFile)) return { read: async () => null, close: async () => undefined };
  const thread = new Worker(threadFile);
  // While it waits it keeps no program alive.
  thread.unref();
  let isGone = false;
  /** Takes what comes of the text under way; null where the thread fails. */
  let take: (answer: Block | null) => void = () => undefined;
  thread.on('message', (answer: Block | null) => take(answer));
  thread.on('error', () => take(null));
  thread.on('exit', () => {
    isGone = true;
    take(null);
  });
  let known: { readonly hash: string; readonly answer: Promise<Block | null> } | null = null;
  let before: Promise<unknown> = Promise.resolve();

  /** One text after the other: the thread answers in the order in which it is asked. */
  function solve(text: string): Promise<Block | null> {
    const answer = before.then(
      () =>
        new Promise<Block | null>((resolve) => {
          if (isGone) return resolve(null);
          take = resolve;
          thread.postMessage(text);
        }),
    );
    before = answer;
    return answer;
  }

  async function read(hash: string): Promise<Block | null> {
    const now = await file.read();
    if (now.hash !== hash) return null;
    if (known?.hash !== hash) known = { hash, answer: solve(now.text) };
    return known.answer;
  }

  // Begun at once; what goes wrong with the file is told where it is asked for.
  void file
    .read()
    .then(({ hash }) => read(hash))
    .catch(() => null);
  return {
    read,
    async close() {
      await thread.terminate();
    },
  };
}

/** PNG pictures made on threads of their own, in the order in which they are asked for; which thread makes one changes nothing. */

import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { pngAside } from './pngPicture.ts';

export interface PictureOrder {
  readonly order: number;
  readonly svg: string;
  /** [px] */ readonly width: number;
  readonly words: Readonly<Record<string, string>>;
}

export type PictureDone =
  | { readonly order: number; readonly png: Uint8Array }
  | { readonly order: number; readonly fault: string };

export interface PictureMakers {
  make(svg: string, width: number, words: Readonly<Record<string, string>>): Promise<Buffer>;
  /** Ends the threads; pictures under way fail. */ dismiss(): Promise<void>;
}

const MOST_THREADS = 4;
/** Lies beside this file once it is built; what runs from the sources draws beside this thread. */
const handFile = new URL('./pictureHand.js', import.meta.url);

interface Waiting {
  readonly taken: PictureOrder;
  resolve(png: Buffer): void;
  reject(error: Error): void;
}

export function pictureMakers(size = Math.min(MOST_THREADS, availableParallelism())): PictureMakers {
  if (!existsSync(handFile)) return { make: pngAside, dismiss: async () => undefined };
  return makersOn(() => new Worker(handFile), size);
}

/** At most `size` threads; one that dies takes its own picture with it, the others go on. */
export function makersOn(newThread: () => Worker, size: number): PictureMakers {
  const queue: Waiting[] = [];
  const started = new Set<Worker>();
  const idle: Worker[] = [];
  const atWork = new Map<Worker, Waiting>();
  let orders = 0;

  function next(thread: Worker): void {
    const waiting = queue.shift();
    if (waiting === undefined) {
      idle.push(thread);
      // Idle threads keep no program alive.
      thread.unref();
      return;
    }
    atWork.set(thread, waiting);
    thread.ref();
    thread.postMessage(waiting.taken);
  }

  function failed(thread: Worker, error: Error): void {
    atWork.get(thread)?.reject(error);
    atWork.delete(thread);
  }

  function start(): Worker {
    const thread = newThread();
    thread.on('message', (done: PictureDone) => {
      const waiting = atWork.get(thread);
      atWork.delete(thread);
      if ('png' in done) waiting?.resolve(Buffer.from(done.png));
      else waiting?.reject(new Error(done.fault));
      next(thread);
    });
    thread.on('error', (error) => lost(thread, error instanceof Error ? error : new Error(String(error))));
    thread.on('exit', (code) => lost(thread, new Error(`a maker of pictures ended with ${code}`)));
    started.add(thread);
    return thread;
  }

  /** Told twice of one that died, or after all were dismissed: nothing more to do. */
  function lost(thread: Worker, error: Error): void {
    if (!started.delete(thread)) return;
    if (idle.includes(thread)) idle.splice(idle.indexOf(thread), 1);
    failed(thread, error);
    goOn();
  }

  /** Gives what waits to whoever is free; refuses it where nobody is and nobody can be started. */
  function goOn(): void {
    try {
      while (queue.length > 0 && (idle.length > 0 || started.size < size)) next(idle.pop() ?? start());
    } catch (error) {
      if (started.size > 0) return;
      for (const waiting of queue.splice(0))
        waiting.reject(error instanceof Error ? error : new Error(String(error)));
    }
  }

  return {
    make(svg, width, words) {
      return new Promise<Buffer>((resolve, reject) => {
        queue.push({ taken: { order: orders++, svg, width, words }, resolve, reject });
        goOn();
      });
    },
    async dismiss() {
      const gone = new Error('the makers of pictures were dismissed');
      for (const waiting of queue.splice(0)) waiting.reject(gone);
      const leaving = [...started];
      started.clear();
      idle.length = 0;
      for (const thread of leaving) failed(thread, gone);
      await Promise.all(leaving.map((thread) => thread.terminate()));
    },
  };
}

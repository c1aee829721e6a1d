/** The first answer of the page, worked out in a thread of its own from the moment the server starts: engines first, then flights. */

import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import type { Flights } from '../solved/solvedStudy.ts';
import type { FirstPieces } from '../solved/solveFirst.ts';
import type { StudyFile } from './studyFile.ts';

/** A piece of a solved study, as the page reads it; or several. */
type Block = Uint8Array<ArrayBuffer>;

/** What the thread says of the text in hand; `end`: no more of it. */
export type FirstPiece = { readonly piece: Block } | { readonly flights: Flights } | 'end';

/** Of the study with this hash, which the file has now or had when it was asked last; null where there is none to be had here. */
export interface FirstAnswer {
  /** The piece of this number, from 0, of the study and its engines, as soon as it is there; null where there are no more. */
  piece(hash: string, which: number): Promise<Block | null>;
  /** Those that did not come with the engines. */ flights(hash: string): Promise<Flights | null>;
  close(): Promise<void>;
}

interface Answer {
  piece(which: number): Promise<Block | null>;
  readonly flights: Promise<Flights | null>;
}

/** Works out one text; done when it has come to its end, whatever that was. */
type Solve = (text: string, tell: FirstPieces) => Promise<unknown>;

export function firstAnswerFor(file: StudyFile): FirstAnswer {
  const thread = startThread();
  const solve = thread?.solve ?? solveHere;
  let known: { readonly hash: string; readonly answer: Answer } | null = null;
  let before: Promise<unknown> = Promise.resolve();

  async function read(hash: string): Promise<Answer | null> {
    if (known?.hash !== hash) {
      const now = await file.read();
      if (now.hash !== hash) return null;
      // Another request may have begun it meanwhile.
      if (known?.hash !== hash) known = { hash, answer: begun(now.text) };
    }
    return known.answer;
  }

  /** One text after the other. */
  function begun(text: string): Answer {
    const { answer, tell, end } = answerToCome();
    before = before.then(() => solve(text, tell)).then(end, end);
    return answer;
  }

  // Begun at once where it holds up nothing else; what goes wrong with the file is told where it is asked for.
  if (thread !== null) {
    void file
      .read()
      .then(({ hash }) => read(hash))
      .catch(() => null);
  }
  return {
    piece: async (hash, which) => (await read(hash))?.piece(which) ?? null,
    flights: async (hash) => (await read(hash))?.flights ?? null,
    async close() {
      await thread?.end();
    },
  };
}

/** An answer, and how it comes; what has not come by the end is null. */
function answerToCome(): { readonly answer: Answer; readonly tell: FirstPieces; readonly end: () => void } {
  const pieces: ReturnType<typeof awaited<Block>>[] = [awaited()];
  const flights = awaited<Flights>();
  return {
    answer: {
      // One that lies further ahead than the next is asked for by nobody.
      piece: async (which) => pieces[which]?.value ?? null,
      flights: flights.value,
    },
    tell: {
      piece(block) {
        pieces.at(-1)?.come(block);
        pieces.push(awaited());
      },
      flights: flights.come,
    },
    end() {
      pieces.at(-1)?.come(null);
      flights.come(null);
    },
  };
}

/** Something that comes once, or (null) does not. */
function awaited<Value>(): {
  readonly value: Promise<Value | null>;
  readonly come: (value: Value | null) => void;
} {
  let come: (value: Value | null) => void = () => undefined;
  const value = new Promise<Value | null>((resolve) => {
    come = resolve;
  });
  return { value, come };
}

/** Lies beside this file once it is built. */
const threadFile = new URL('./firstAnswerThread.js', import.meta.url);

function startThread(): { readonly solve: Solve; readonly end: () => Promise<unknown> } | null {
  if (!existsSync(threadFile)) return null;
  const thread = new Worker(threadFile);
  // While it waits it keeps no program alive.
  thread.unref();
  let isGone = false;
  let hear: (piece: FirstPiece) => void = () => undefined;
  thread.on('message', (piece: FirstPiece) => hear(piece));
  thread.on('error', () => hear('end'));
  thread.on('exit', () => {
    isGone = true;
    hear('end');
  });
  return {
    solve: (text, tell) =>
      new Promise<void>((resolve) => {
        if (isGone) return resolve();
        hear = (piece) => {
          if (piece === 'end') resolve();
          else if ('piece' in piece) tell.piece(piece.piece);
          else tell.flights(piece.flights);
        };
        thread.postMessage(text);
      }),
    end: () => thread.terminate(),
  };
}

/** Texts worked out in this thread, by all servers that it runs. */
const solvedHere = new Map<string, Answer>();
const MOST_KEPT = 16;

/** Where the program runs from its sources there is no thread: it is worked out in this one, once a text. */
async function solveHere(text: string, tell: FirstPieces): Promise<void> {
  const known = solvedHere.get(text) ?? answerHere(text);
  solvedHere.delete(text);
  solvedHere.set(text, known);
  for (const [oldest] of solvedHere) if (solvedHere.size > MOST_KEPT) solvedHere.delete(oldest);
  for (let which = 0; ; which++) {
    const piece = await known.piece(which);
    if (piece === null) break;
    tell.piece(piece);
  }
  const flights = await known.flights;
  if (flights !== null) tell.flights(flights);
}

function answerHere(text: string): Answer {
  const { answer, tell, end } = answerToCome();
  const solve = async (): Promise<void> => {
    const [{ solveFirst }, { openDataShelf }] = await Promise.all([
      import('../solved/solveFirst.ts'),
      import('../disk/data.ts'),
    ]);
    await solveFirst(text, openDataShelf(), tell, nextTurn);
  };
  void solve().then(end, end);
  return answer;
}

/** Lets requests through between two pieces of the work. */
const nextTurn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

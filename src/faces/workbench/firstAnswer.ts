/** What the server has worked out of the study while the page was on its way. */

import { piecesFrom } from '../solved/solvedBlock.ts';
import { type SolvedPiece, studyOfPieces } from '../solved/solvedPiece.ts';
import type { Flights, SolvedStudy } from '../solved/solvedStudy.ts';

/**
 * The study of this hash with its engines, piece by piece as the server has them; none where there is none to be had.
 * It waits as long as the server is at work on it: working it out a second time beside would only take longer.
 */
export async function* firstPieces(
  hash: string,
  signal?: AbortSignal,
): AsyncGenerator<SolvedPiece, void, undefined> {
  const reply = await ask('/api/answer', hash, signal);
  if (reply?.body) yield* piecesFrom(chunksOf(reply.body));
}

/** All of them together; null where there is no such study, or not the whole of it. */
export async function readFirstAnswer(hash: string): Promise<SolvedStudy | null> {
  const pieces: SolvedPiece[] = [];
  for await (const piece of firstPieces(hash)) {
    pieces.push(piece);
    if (piece.kind === 'whole') break;
  }
  return studyOfPieces(pieces);
}

async function* chunksOf(body: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array, void, undefined> {
  const reader = body.getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    // Who reads no further wants no more of it.
    reader.cancel().catch(() => undefined);
  }
}

/** The flights that did not come with it. */
export async function readFirstFlights(hash: string, signal?: AbortSignal): Promise<Flights | null> {
  const reply = await ask('/api/answer/flights', hash, signal);
  return reply === null ? null : ((await reply.json()) as Flights);
}

async function ask(address: string, hash: string, signal?: AbortSignal): Promise<Response | null> {
  const asked = `${address}?hash=${encodeURIComponent(hash)}`;
  const reply = await fetch(asked, { cache: 'no-store', ...(signal && { signal }) }).catch(() => null);
  return reply?.status === 200 ? reply : null;
}

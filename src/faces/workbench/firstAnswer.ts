/** What the server has worked out of the study while the page was on its way. */

import { readSolved } from '../solved/solvedBlock.ts';
import type { Flights, SolvedStudy } from '../solved/solvedStudy.ts';

/**
 * The study of this hash with its engines, and with what they lift where that is known by then; null where there is none to
 * be had. It waits as long as the server is at work on it: working it out a second time beside would only take longer.
 */
export async function readFirstAnswer(hash: string, signal?: AbortSignal): Promise<SolvedStudy | null> {
  const reply = await ask('/api/answer', hash, signal);
  return reply === null ? null : readSolved(await reply.arrayBuffer());
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

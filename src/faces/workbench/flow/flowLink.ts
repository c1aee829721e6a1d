/** Whole flows over the local server. */

import type { Problem } from '../../../numerics/problem.ts';
import type { FlowList, FlowsWanted } from '../../flows/flowList.ts';

const address = '/api/flows';

/** The server is there and will not. */
export interface FlowsRefused {
  readonly refused: Problem;
}

/** Begins computing, tells where one looks, stops it, or (null) only reads what is there; null where the server is not. */
export async function askFlows(
  order: FlowsWanted | { readonly look: number | null } | 'stop' | null,
): Promise<FlowList | FlowsRefused | null> {
  const reply = await (order === null ? fetch(address, { cache: 'no-store' }) : put(order)).catch(() => null);
  if (reply === null) return null;
  return reply.ok ? ((await reply.json()) as FlowList) : { refused: await refusalOf(reply) };
}

/** As the server words it, else by its number. */
async function refusalOf(reply: Response): Promise<Problem> {
  const told = (await reply.json().catch(() => null)) as { readonly error?: unknown } | null;
  const why = typeof told?.error === 'string' ? told.error : `it answered ${reply.status}.`;
  return {
    code: 'flow-refused',
    what: `The server does not compute the whole flow: ${why}`,
    mend: 'Reload the page, then try again.',
  };
}

function put(order: unknown): Promise<Response> {
  const token = document.querySelector<HTMLMetaElement>('meta[name="plumeline-token"]')?.content ?? '';
  return fetch(address, {
    method: 'PUT',
    headers: { 'Content-Type': 'application/json', 'X-Plumeline-Token': token },
    body: JSON.stringify({ text: JSON.stringify(order), baseHash: '' }),
  });
}

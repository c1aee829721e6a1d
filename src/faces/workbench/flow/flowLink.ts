/** Whole flows over the local server. */

import type { FlowList, FlowsWanted } from '../../flows/flowList.ts';

const address = '/api/flows';

/** Begins computing, tells where one looks, stops it, or (null) only reads what is there; null where the server is not. */
export async function askFlows(
  order: FlowsWanted | { readonly look: number | null } | 'stop' | null,
): Promise<FlowList | null> {
  const reply = await (order === null ? fetch(address, { cache: 'no-store' }) : put(order)).catch(() => null);
  return reply?.ok === true ? ((await reply.json()) as FlowList) : null;
}

function put(order: unknown): Promise<Response> {
  const token = document.querySelector<HTMLMetaElement>('meta[name="plumeline-token"]')?.content ?? '';
  return fetch(address, {
    method: 'PUT',
    headers: { 'Content-Type': 'application/json', 'X-Plumeline-Token': token },
    body: JSON.stringify({ text: JSON.stringify(order), baseHash: '' }),
  });
}

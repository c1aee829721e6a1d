/** What the page asks of the whole flows, held to what can be asked. */

import type { FlowsWanted } from '../flows/flowList.ts';

export type FlowAsked = FlowsWanted | { readonly look: number | null } | 'stop';

const MOST_ENGINES = 64;
const LONGEST_ID = 200;
/** [m] */ const HIGHEST = 1e6;

/** Null: nothing of it can be asked. */
export function flowOrder(text: string): FlowAsked | null {
  let given: unknown;
  try {
    given = JSON.parse(text);
  } catch {
    return null;
  }
  if (given === 'stop') return 'stop';
  if (typeof given !== 'object' || given === null) return null;
  if ('look' in given) return isAltitude(given.look) ? { look: given.look } : null;
  const { engines, altitude, only } = given as Partial<Record<keyof FlowsWanted, unknown>>;
  if (!Array.isArray(engines) || engines.length > MOST_ENGINES || !isAltitude(altitude)) return null;
  if (only !== undefined && only !== 'here') return null;
  const ids = engines.filter((id): id is string => typeof id === 'string' && id.length <= LONGEST_ID);
  if (ids.length !== engines.length) return null;
  return { engines: ids, altitude, ...(only !== undefined && { only }) };
}

const isAltitude = (value: unknown): value is number | null =>
  value === null || (typeof value === 'number' && value >= 0 && value <= HIGHEST);

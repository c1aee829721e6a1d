/** The commonest question: one number of one engine as it stands, at full throttle. */

import type { Ask, AskedAmbient } from './model.ts';

export function plainAsk(engine: string, quantity: string, ambient: AskedAmbient | null): Ask {
  return { engine, quantity, ambient, throttle: null, station: null, inputs: [] };
}

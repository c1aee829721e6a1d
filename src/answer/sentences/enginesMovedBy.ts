/** Which engines the asks of a test hang on. */

import type { EngineInput } from '../../study/model.ts';
import type { Ask } from '../asked/model.ts';

/** Those asked, and those from which they take their size. */
export function enginesMovedBy(asks: readonly Ask[], engines: readonly EngineInput[]): ReadonlySet<string> {
  const found = new Set<string>();
  const waiting = asks.flatMap(({ engine }) => (engine === null ? [] : [engine]));
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (found.has(id)) continue;
    found.add(id);
    const size = engines.find((engine) => engine.id === id)?.size;
    if (size?.by === 'same') waiting.push(size.as);
  }
  return found;
}

/** Which engines and vehicles a number hangs on. */

import type { Study } from '../../study/model.ts';
import { enginesOfVehicle, isVehicle, type Owner, ownersOf, withEngine } from '../../study/owners.ts';
import type { Ask } from './model.ts';

type Asked = Pick<Ask, 'engine' | 'part'>;
type Owners = Pick<Study, 'engines' | 'vehicles'>;

/** Ids of those asked, of the engines below a vehicle, and of those from which these take their size. */
export function ownersAsked(asks: readonly Asked[], study: Owners): ReadonlySet<string> {
  const byId = new Map(ownersOf(study).map((owner) => [owner.id, owner]));
  const found = new Set<string>();
  const waiting = asks.flatMap((ask) => [...ownersNamed(ask, byId)]);
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (found.has(id)) continue;
    found.add(id);
    const owner = byId.get(id);
    if (owner !== undefined && !isVehicle(owner) && owner.size.by === 'same') waiting.push(owner.size.as);
  }
  return found;
}

/** Of one ask, without the engines that sizes are taken from. */
export function ownersNamed({ engine, part }: Asked, byId: ReadonlyMap<string, Owner>): readonly string[] {
  if (engine === null) return [];
  const owner = byId.get(engine);
  if (owner === undefined || !isVehicle(owner)) return [engine];
  const flown = part === undefined ? owner : withEngine(owner, part);
  return [owner.id, ...enginesOfVehicle(flown)];
}

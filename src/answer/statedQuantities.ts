import type { Quantity } from '../study/model.ts';
import { isVehicle, type Owner } from '../study/owners.ts';

/** Every quantity inside an engine or a vehicle, wherever it stands; published figures are no inputs. */
export function statedQuantities(owner: Owner): readonly Quantity[] {
  if (isVehicle(owner)) return inside(owner);
  const { published: _, ...engine } = owner;
  return inside(engine);
}

function inside(part: unknown): readonly Quantity[] {
  if (typeof part !== 'object' || part === null) return [];
  if ('plusMinus' in part && 'path' in part) return [part as Quantity];
  return Object.values(part).flatMap(inside);
}

import type { EngineInput, Quantity } from '../study/model.ts';

/** Every quantity inside an engine, wherever it stands; published figures are no inputs. */
export function statedQuantities({ published: _, ...engine }: EngineInput): readonly Quantity[] {
  return inside(engine);
}

function inside(part: unknown): readonly Quantity[] {
  if (typeof part !== 'object' || part === null) return [];
  if ('plusMinus' in part && 'path' in part) return [part as Quantity];
  return Object.values(part).flatMap(inside);
}

/** A study with some of its inputs set to other values. */

import { ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import type { Point } from './crew.ts';

/**
 * The study whose quantities stated at the paths of `point` have its values [SI]. Engines that inherit a value through
 * `like:` have it at the path of the engine that states it, so they move together. Parts that do not move are the same
 * objects as before.
 *
 * @throws ProblemError `input-not-stated` where no engine has a quantity at one of the paths
 */
export function withPoint(study: Study, point: Point): Study {
  const wanted = new Set(Object.keys(point));
  if (wanted.size === 0) return study;
  const found = new Set<string>();
  const engines = study.engines.map((engine) => moved(engine, point, found));
  const vehicles = study.vehicles.map((vehicle) => moved(vehicle, point, found));
  for (const path of wanted) if (!found.has(path)) throw notStated(path, study);
  return { ...study, engines, vehicles };
}

function moved<Part>(part: Part, point: Point, found: Set<string>): Part {
  if (typeof part !== 'object' || part === null) return part;
  if (Array.isArray(part)) {
    const items = part.map((item) => moved(item, point, found));
    return items.some((item, i) => item !== part[i]) ? (items as Part) : part;
  }
  if (isQuantity(part)) {
    const value = Object.hasOwn(point, part.path) ? point[part.path] : undefined;
    if (value === undefined) return part;
    found.add(part.path);
    return value === part.value ? part : { ...part, value };
  }
  const entries = Object.entries(part).map(([key, inner]) => [key, moved(inner, point, found)] as const);
  return entries.some(([key, inner]) => inner !== (part as Record<string, unknown>)[key])
    ? (Object.fromEntries(entries) as Part)
    : part;
}

function isQuantity(part: object): part is { readonly value: number; readonly path: string } {
  return 'plusMinus' in part && 'path' in part;
}

function notStated(path: string, study: Study): ProblemError {
  return new ProblemError({
    code: 'input-not-stated',
    what: `Neither an engine nor a vehicle of the study has a number at “${path}”.`,
    mend: `Name an input as the study writes it, e.g. engines.${study.engines[0]?.id ?? 'bell'}.chamber.pressure.`,
    where: path,
  });
}

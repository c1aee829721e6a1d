/** Which quantities of the catalogue have a number in an answer. */

import { quantityNameAt } from '../catalogue.ts';
import type { StudyAnswer } from '../model.ts';

export function namesInAnswer(answer: StudyAnswer): ReadonlySet<string> {
  const names = new Set<string>();
  const seen = new Set<string>();
  walk({ engines: answer.engines, vehicles: answer.vehicles }, '', (path) => {
    if (seen.has(path)) return;
    seen.add(path);
    const name = quantityNameAt(path);
    if (name !== undefined) names.add(name);
  });
  return names;
}

/** Paths of numbers; all items of a list under one path. */
function walk(value: unknown, path: string, tell: (path: string) => void): void {
  if (typeof value === 'number') tell(path);
  else if (Array.isArray(value)) for (const item of value) walk(item, path, tell);
  else if (typeof value === 'object' && value !== null) {
    for (const [key, item] of Object.entries(value)) walk(item, path === '' ? key : `${path}.${key}`, tell);
  }
}

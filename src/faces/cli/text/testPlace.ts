/** Where in the study's file a test cannot be read, and the sign or word that stands there. */

import type { Problem } from '../../../numerics/problem.ts';
import type { Place } from '../../../study/model.ts';
import { quote } from '../../../study/report.ts';

/** Empty where nothing is wrong, or its place is not known. */
export function testPlaceLines(
  problem: Problem | null,
  test: string,
  placeAt: (start: number) => Place | null,
): readonly string[] {
  const { start, end } = problem?.facts ?? {};
  if (typeof start !== 'number' || typeof end !== 'number') return [];
  const place = placeAt(start);
  if (place === null) return [];
  const there = test.slice(start, end).trim();
  return [
    `line ${place.line}, column ${place.column}${there === '' ? ', the end of the test' : `: ${quote(there)}`}`,
  ];
}

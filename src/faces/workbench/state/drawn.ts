/** What there is to draw of the engines shown. */

import type { ConditionRow, EnginesAnswer, StudyAnswer } from '../../../answer/model.ts';
import { withVehicles } from '../../../answer/withVehicles.ts';
import { altitude } from './altitude.ts';
import type { ShownEngine, Solved } from './pair.ts';
import { curveOfLadder, rowOfLadder } from './shown.ts';

/** What there is to draw of an engine: its result, or the last good one. */
export function drawnOf({ result }: ShownEngine): Solved | null {
  return result.ok ? result : result.before;
}

/** An answer that holds nothing but the engines shown, the failed ones as they were, in the order of the pair. */
export function pairAnswer(
  engines: readonly ShownEngine[],
  answer: EnginesAnswer | null,
): StudyAnswer | null {
  if (answer === null) return null;
  const shown = engines.flatMap((engine) => {
    const drawn = drawnOf(engine);
    return drawn === null ? [] : [[engine.id, drawn.answer] as const];
  });
  if (shown.length === 0) return null;
  return withVehicles({ ...answer, engines: Object.fromEntries(shown), comparison: null }, []);
}

export function curvesOf(engines: readonly ShownEngine[]): Record<string, readonly ConditionRow[]> {
  return Object.fromEntries(
    engines.flatMap((engine) => {
      const drawn = drawnOf(engine);
      return drawn === null ? [] : [[engine.id, curveOfLadder(drawn.ladder)] as const];
    }),
  );
}

export function rowsHere(engines: readonly ShownEngine[]): Record<string, ConditionRow> {
  return Object.fromEntries(
    engines.flatMap((engine) => {
      const drawn = drawnOf(engine);
      return drawn === null ? [] : [[engine.id, rowOfLadder(drawn.ladder, altitude.value)] as const];
    }),
  );
}

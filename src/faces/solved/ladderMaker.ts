/** The rows of an engine worked out, a few of them first. */

import { conditionAtAltitude, conditionInVacuum } from '../../answer/conditions.ts';
import type { ConditionRow } from '../../answer/model.ts';
import type { EngineSolution } from '../../answer/solution.ts';
import { COARSE, type Ladder, ladderStep, ladderTop } from './ladder.ts';
import { packedRows } from './packedRows.ts';

/** Rows worked out at one stretch. */
const STRETCH = 40;

export interface LadderMaker {
  /** Rows at every {@link COARSE}th step. */ coarse(): Promise<Ladder>;
  /** All rows. */ whole(): Promise<Ladder>;
}

/** @param rest waited for between stretches of the work */
export function ladderMaker(
  solution: EngineSolution,
  rest: () => Promise<void> = () => Promise.resolve(),
): LadderMaker {
  const rows = new Map<number, ConditionRow>();
  let vacuum: ConditionRow | null = null;

  async function ladder(every: number): Promise<Ladder> {
    let fresh = 0;
    const all: ConditionRow[] = [];
    for (let altitude = 0; altitude <= ladderTop; altitude += every * ladderStep) {
      const known = rows.get(altitude);
      if (known === undefined && fresh++ % STRETCH === 0) await rest();
      const row = known ?? conditionAtAltitude(solution, altitude).row;
      rows.set(altitude, row);
      all.push(row);
    }
    vacuum ??= conditionInVacuum(solution).row;
    return { ...packedRows(all), vacuum, every };
  }
  return {
    coarse: () => ladder(COARSE),
    async whole() {
      // The same rows in the same order, whether the coarse ones were told or not.
      await ladder(COARSE);
      return ladder(1);
    },
  };
}

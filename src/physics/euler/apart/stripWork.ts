/** The parts of a step for each strip by itself, and for all of them together. */

import type { Problem } from '../../../numerics/problem.ts';
import type { StepParts, StepWork } from '../stepWork.ts';

/** @param works each of one block; `told` is given the parts of each once there are fields */
export function worksTogether(
  works: readonly StepWork[],
  told: (each: readonly StepParts[]) => void,
): StepWork {
  return {
    rooms: works.flatMap(({ rooms }) => rooms),
    on(fields) {
      const each = works.map((work, s) => work.on([fields[s]!]));
      told(each);
      const all = (of: (parts: StepParts) => void): void => {
        for (const parts of each) of(parts);
      };
      return {
        keep: () => all((parts) => parts.keep()),
        restore: () => all((parts) => parts.restore()),
        markShocks: () => all((parts) => parts.markShocks()),
        stage: (which, flat) => firstOf(each, (parts) => parts.stage(which, flat)),
        settle: (every) => firstOf(each, (parts) => parts.settle(every)),
        shortest: () => Math.min(...each.map((parts) => parts.shortest())),
        ownSteps(courant, spread) {
          const shortest = each.map((parts) => parts.shortest());
          const least = Math.min(...shortest);
          for (const [s, parts] of each.entries()) parts.ownSteps(courant, (spread * least) / shortest[s]!);
        },
        sameSteps: (seconds) => all((parts) => parts.sameSteps(seconds)),
      };
    },
  };
}

/** Every strip, even where one broke: a stage also notes what it began from. */
function firstOf(each: readonly StepParts[], of: (parts: StepParts) => Problem | null): Problem | null {
  let first: Problem | null = null;
  for (const parts of each) {
    const broken = of(parts);
    first ??= broken;
  }
  return first;
}

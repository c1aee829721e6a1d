import type { BellSpec } from '../changing/plainBells.ts';
import type { DualBellSpec } from '../model.ts';

/** The first bell of a dual bell, as a bell of its own. */
export function baseBell({ baseAreaRatio, baseLength, throatAngle, baseLipAngle }: DualBellSpec): BellSpec {
  return {
    kind: 'bell',
    areaRatio: baseAreaRatio,
    length: baseLength,
    ...(throatAngle === undefined ? {} : { throatAngle }),
    ...(baseLipAngle === undefined ? {} : { lipAngle: baseLipAngle }),
  };
}

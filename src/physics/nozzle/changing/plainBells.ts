import type { ExtendableSkirtSpec, InsertSpec, NozzleSpec } from '../model.ts';

export type BellSpec = NozzleSpec & { kind: 'bell' };

/** The bell with its skirt out. */
export function wholeBell({ areaRatio, length, throatAngle, lipAngle }: ExtendableSkirtSpec): BellSpec {
  return {
    kind: 'bell',
    areaRatio,
    length,
    ...(throatAngle === undefined ? {} : { throatAngle }),
    ...(lipAngle === undefined ? {} : { lipAngle }),
  };
}

/** The bell in which the insert stands. */
export function outerBell({ areaRatio, length }: InsertSpec): BellSpec {
  return { kind: 'bell', areaRatio, length };
}

/** The insert itself, a bell on the same throat. */
export function insertBell({ insertAreaRatio, insertLength }: InsertSpec): BellSpec {
  return { kind: 'bell', areaRatio: insertAreaRatio, length: insertLength };
}

/**
 * One long step through time in which each strip takes as many short ones as its cells ask for (S. Osher, R. Sanders, Math.
 * Comput. 41 (1983), 321; M. Berger, J. Oliger, J. Comput. Phys. 53 (1984), 484): the slow strips first, then the quick ones,
 * which see them between what they were and what they are, then the slow ones put right at the seams.
 */

import type { Problem } from '../../../numerics/problem.ts';
import { mendCorners, type SharpCorner } from '../corners.ts';
import type { Field, GasPair } from '../field.ts';
import { ghostFill, markFill } from '../ghosts.ts';
import type { SidePart } from '../sides.ts';
import type { StepParts, WholeParts } from '../stepWork.ts';
import {
  addPassed,
  faceEachOther,
  fillBetween,
  fillNow,
  noteBefore,
  putRight,
  seamsOf,
  takeOwn,
} from './seams.ts';
import { stepLengthsFor } from './stepLengths.ts';

export interface ApartSetup {
  readonly fields: readonly Field[];
  readonly sides: readonly (readonly SidePart[])[];
  readonly gases: GasPair;
  readonly corners: readonly SharpCorner[];
  readonly parts: WholeParts;
}

export interface Apart {
  /**
   * @param before told the time since the beginning of the step [s], each time that what lies beyond the sides is looked at
   * @returns how long it was, no longer than `most` [s], and in how many of the shortest steps; or what broke, the fields being no flow then
   */
  take(
    courant: number,
    most: number,
    before: (time: number) => void,
  ): { readonly seconds: number; readonly steps: number } | Problem;
}

interface StripGroup {
  readonly strips: readonly number[];
  readonly parts: StepParts;
  readonly corners: readonly SharpCorner[];
}

/** A state without a speed of sound has no longest step. */
const NO_STEP: Problem = {
  code: 'field-no-step',
  what: 'A state of the flow field has no speed of sound any more, so no step is short enough.',
  why: 'The flow changes faster than the mesh and the step can follow.',
  mend: 'Take shorter steps, a finer mesh, or change the flow more slowly.',
};

export function apartSteps({ fields, sides, gases, corners, parts }: ApartSetup): Apart {
  const seams = seamsOf(fields, sides);
  const facing = faceEachOther(seams);
  const ghosts = sides.map((own, s) =>
    ghostFill(
      fields,
      s,
      own.filter(({ kind }) => kind.is !== 'joined'),
      gases,
    ),
  );
  const marks = sides.map((own, s) => markFill(fields, s, own));
  const lengthsFor = stepLengthsFor(fields, seams);
  const begun = fields.map(() => 0);
  const lasts = fields.map(() => 0);
  let levels: readonly number[] = [];
  let groups: readonly (StripGroup | null)[] = [];
  let tell: (time: number) => void = () => undefined;
  const known = new Map<string, StripGroup>();

  /** Strips that step together. */
  function groupOf(strips: readonly number[]): StripGroup | null {
    if (strips.length === 0) return null;
    const key = strips.join();
    const group = known.get(key) ?? {
      strips,
      parts: parts.among(strips),
      corners: corners.filter(({ block }) => strips.includes(block)),
    };
    known.set(key, group);
    return group;
  }

  function look({ strips, parts: own }: StripGroup, time: number): void {
    tell(time);
    for (const s of strips) {
      ghosts[s]!();
      for (const seam of seams[s]!) {
        const { other } = seam;
        if (levels[other]! > levels[s]!)
          fillBetween(seam, fields[s]!, fields[other]!, (time - begun[other]!) / lasts[other]!);
        else fillNow(seam, fields[s]!, fields[other]!);
      }
    }
    own.markShocks();
    for (const s of strips) marks[s]!();
  }

  /** Of two stages each counts half. */
  function countPassed({ strips }: StripGroup, seconds: number): void {
    for (const s of strips)
      for (const seam of seams[s]!) {
        const [own, its] = [levels[s]!, levels[seam.other]!];
        if (own < its) addPassed(seam, fields[s]!, seconds / 2);
        if (own > its) takeOwn(seam, facing.get(seam)!, fields[s]!, seconds / 2);
      }
  }

  function stepOf(group: StripGroup, time: number, seconds: number): Problem | null {
    const { parts: own } = group;
    own.keep();
    own.sameSteps(seconds);
    for (const s of group.strips) {
      begun[s] = time;
      lasts[s] = seconds;
      for (const seam of seams[s]!)
        if (levels[seam.other]! < levels[s]!) noteBefore(facing.get(seam)!, fields[s]!);
    }
    for (const which of [0, 1] as const) {
      look(group, time + which * seconds);
      countPassed(group, seconds);
      const broken = own.stage(which, false);
      if (broken !== null) return broken;
    }
    const broken = own.settle(true);
    if (broken === null) mendCorners(fields, group.corners, gases);
    return broken;
  }

  function advance(level: number, time: number, seconds: number): Problem | null {
    const group = groups[level]!;
    const broken = group === null ? null : stepOf(group, time, seconds);
    if (broken !== null || level === 0) return broken;
    for (let half = 0; half < 2; half++) {
      const below = advance(level - 1, time + (half * seconds) / 2, seconds / 2);
      if (below !== null) return below;
    }
    if (group === null) return null;
    for (const s of group.strips)
      for (const seam of seams[s]!) {
        const wrong = levels[seam.other]! < level ? putRight(facing.get(seam)!, fields[s]!, gases) : null;
        if (wrong !== null) return wrong;
      }
    return null;
  }

  return {
    take(courant, most, before) {
      tell = before;
      const found = lengthsFor(parts.shortest(), courant, most);
      if (!(found.shortest > 0)) return NO_STEP;
      levels = found.levels;
      groups = Array.from({ length: found.highest + 1 }, (_, level) =>
        groupOf(levels.flatMap((own, s) => (own === level ? [s] : []))),
      );
      const steps = 2 ** found.highest;
      const seconds = found.shortest * steps;
      return advance(found.highest, 0, seconds) ?? { seconds, steps };
    },
  };
}

/** A field through time in strips that take steps of their own lengths; looked at as the whole blocks that it was cut from. */

import { type Flow, type FlowSetup, newFlow } from '../advance.ts';
import { kernelWork } from '../kernel/kernelWork.ts';
import { BLURRED_STEPS, keep, keptFor, lessBlurred, restore } from '../stage.ts';
import { referenceWork, type WholeParts } from '../stepWork.ts';
import { apartSteps } from './apartSteps.ts';
import { cutBlocks, cutsOf, gather, stripsOf } from './strips.ts';

export interface ApartFlow extends Flow {
  /**
   * One step of the slowest strip, at most so long [s].
   * @param before told the time [s] each time that what lies beyond the sides is looked at
   * @throws ProblemError where the field breaks in equal steps too
   */
  advance(courant: number, most: number, before?: (time: number) => void): void;
}

/** Steps that all take together after one apart broke: at first, and where it goes on breaking. */
const TOGETHER = { first: 8, most: 128 };

/** @throws ProblemError see newFlow */
export function apartFlow(setup: FlowSetup): ApartFlow {
  const { blocks, gases, kernel, corners = [] } = setup;
  const cornersOf = (block: number): readonly number[] =>
    corners.flatMap((corner) => (corner.block === block ? [corner.at] : []));
  const strips = stripsOf(
    blocks,
    blocks.map(({ mesh }, b) => cutsOf(mesh, cornersOf(b))),
  );
  const cut = cutBlocks(blocks, strips);
  const ownCorners = corners.map(({ block, side, at }) => {
    const s = strips.findIndex((strip) => strip.block === block && at >= strip.from && at < strip.to);
    return { block: s, side, at: at - strips[s]!.from };
  });
  let parts: WholeParts | null = null;
  const inner = newFlow({
    ...setup,
    blocks: cut,
    corners: ownCorners,
    start: (x, y, s, i, j) => setup.start(x, y, strips[s]!.block, i + strips[s]!.from, j),
    work(meshes) {
      const work = kernel == null ? referenceWork(meshes, gases) : kernelWork(kernel, meshes, gases);
      return {
        ...work,
        on(fields) {
          const whole = work.on(fields);
          const among: WholeParts['among'] = (chosen) => whole.among(chosen);
          // Also where all step together they are strips of a flow through time.
          parts = { ...among(fields.map((_, s) => s)), among };
          return parts;
        },
      };
    },
  });
  const { fields } = inner;
  // What the whole looks like, for those who ask.
  const whole = newFlow({ ...setup, kernel: null });
  const sides = cut.map((strip) => strip.sides);
  const apart = apartSteps({ fields, sides, gases, corners: ownCorners, parts: parts! });
  const saved = fields.map(keptFor);
  const ahead = { time: 0, steps: 0 };
  let isStale = true;
  let [together, patience, blurred]: [number, number, number] = [0, TOGETHER.first, 0];

  function wholeNow(): Flow {
    if (isStale) gather(fields, strips, whole.fields);
    isStale = false;
    return whole;
  }

  function stepTogether(courant: number, most: number): void {
    const longest = inner.stableStep(courant);
    inner.step(longest < most && 2 * longest > most ? most / 2 : Math.min(longest, most));
    together -= 1;
  }

  return {
    setup,
    get fields() {
      return wholeNow().fields;
    },
    get time() {
      return inner.time + ahead.time;
    },
    get steps() {
      return inner.steps + ahead.steps;
    },
    get rescued() {
      return inner.rescued;
    },
    stableStep: (courant) => inner.stableStep(courant),
    through: (block, part) => wholeNow().through(block, part),
    step(seconds) {
      isStale = true;
      inner.step(seconds);
    },
    relax(courant, flat) {
      isStale = true;
      inner.relax(courant, flat);
    },
    advance(courant, most, before = () => undefined) {
      isStale = true;
      if (together > 0) return stepTogether(courant, most);
      for (const [f, field] of fields.entries()) keep(field, saved[f]!);
      const from = inner.time + ahead.time;
      const taken = apart.take(courant, most, (time) => before(from + time));
      if ('code' in taken) {
        for (const [f, field] of fields.entries()) restore(field, saved[f]!);
        // It has been told times that are to come yet.
        before(from);
        [together, patience] = [patience, Math.min(TOGETHER.most, 2 * patience)];
        blurred = BLURRED_STEPS;
        return stepTogether(courant, most);
      }
      patience = TOGETHER.first;
      ahead.time += taken.seconds;
      ahead.steps += taken.steps;
      if (blurred > 0) for (const field of fields) lessBlurred(field);
      blurred -= 1;
    },
  };
}

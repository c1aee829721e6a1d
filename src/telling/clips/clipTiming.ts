/** Which share of its movement a clip shows in which frame: held ends, handles for the edit, there and back. */

import { ProblemError } from '../../numerics/problem.ts';
import { type Ease, eased, SOFT_END } from './ease.ts';
import { type FrameRate, framesIn, secondsOfFrame } from './frameRate.ts';

export interface ClipTiming {
  readonly rate: FrameRate;
  /** [s] of the clip, the held ends in it, handles not. */ readonly seconds: number;
  /** [s] for which the first picture stands. */ readonly holdFirst: number;
  /** [s] for which the last one stands; of a loop the one in its middle. */ readonly holdLast: number;
  /** [s] before and behind, standing still, for transitions of an edit; 0: none. */ readonly handles: number;
  /** There and back: the last frame is the first. */ readonly loop: boolean;
  readonly ease: Ease;
}

export const USUAL_TIMING: Omit<ClipTiming, 'rate'> = {
  seconds: 8,
  holdFirst: 0.5,
  holdLast: 1,
  handles: 0,
  loop: false,
  ease: 'soft ends',
};

/** [s] */ export const LONGEST_CLIP = 600;

export interface TimedFrames {
  readonly frames: number;
  /** Share of the movement, 0 to 1, in frame `n` from 0. */ readonly shareAt: (n: number) => number;
}

export function timedFrames(timing: ClipTiming): TimedFrames {
  requireTimes(timing);
  const { rate, loop, ease } = timing;
  const handle = framesIn(timing.handles, rate);
  const own = framesIn(timing.seconds, rate);
  const first = framesIn(timing.holdFirst, rate);
  const last = framesIn(timing.holdLast, rate);
  const end = loop ? (own - 1) / 2 - last / 2 : own - 1 - last;
  if (own < 2 || end - first < 1) throw tooShort(timing);
  const softEnd = SOFT_END / secondsOfFrame(end - first, rate);
  return {
    frames: own + 2 * handle,
    shareAt(n) {
      if (!Number.isInteger(n) || n < 0 || n >= own + 2 * handle)
        throw new RangeError(`The clip has no frame ${n}.`);
      const inside = Math.min(Math.max(n - handle, 0), own - 1);
      const there = loop ? Math.min(inside, own - 1 - inside) : inside;
      return eased((there - first) / (end - first), ease, softEnd);
    },
  };
}

function requireTimes({ seconds, holdFirst, holdLast, handles }: ClipTiming): void {
  const wrong = Object.entries({ seconds, holdFirst, holdLast, handles }).find(
    ([, value]) => !(value >= 0 && value <= LONGEST_CLIP),
  );
  if (wrong === undefined) return;
  throw new ProblemError({
    code: 'clip-time',
    what: `A clip cannot have ${wrong[1]} s for its ${TIME_NAMES[wrong[0]] ?? wrong[0]}.`,
    mend: `Give from 0 to ${LONGEST_CLIP} s.`,
  });
}

const TIME_NAMES: Readonly<Record<string, string>> = {
  seconds: 'length',
  holdFirst: 'first hold',
  holdLast: 'last hold',
};

function tooShort({ seconds, holdFirst, holdLast }: ClipTiming): ProblemError {
  return new ProblemError({
    code: 'clip-too-short',
    what: `In a clip of ${seconds} s no time is left to move: ${holdFirst} s are held at the start and ${holdLast} s at the end.`,
    mend: 'Make the clip longer, or hold its ends for less.',
  });
}

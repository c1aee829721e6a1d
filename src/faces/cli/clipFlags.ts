/** The options of `plumeline clip`, read. */

import type { Problem } from '../../numerics/problem.ts';
import { parseQuantity } from '../../study/index.ts';
import {
  type ClipKind,
  type ClipRequest,
  type ClipTiming,
  EASES,
  frameRateOf,
  USUAL_TIMING,
} from '../../telling/clips/index.ts';
import { BadInput } from './badInput.ts';
import { choiceFrom } from './choiceFlag.ts';
import { figureSizeFrom } from './sizeFlag.ts';

export interface ClipFlags {
  readonly figure?: string;
  readonly out?: string;
  readonly list?: true;
  readonly kind?: string;
  readonly engine?: string;
  readonly from?: string;
  readonly to?: string;
  readonly at?: string;
  readonly throttle?: string;
  readonly size?: string;
  readonly fps?: string;
  readonly seconds?: string;
  readonly holdFirst?: string;
  readonly holdLast?: string;
  readonly handles?: string | true;
  readonly loop?: true;
  readonly ease?: string;
  readonly theme?: string;
  readonly alpha?: true;
  readonly title?: string;
}

const KINDS: readonly ClipKind[] = ['altitude', 'build-up', 'rings', 'throttle', 'drift'];
/** [s] of handles that are asked for without saying how long. */
const USUAL_HANDLES = 1;
/** [m] Above it the scale of the figures goes over into vacuum. */
const HIGHEST = 60_000;

export function timingFrom(flags: ClipFlags): ClipTiming {
  const { fps, seconds, holdFirst, holdLast, handles, loop, ease } = flags;
  return {
    rate: frameRateOf(fps ?? '25'),
    seconds: secondsFrom(seconds, '--seconds') ?? USUAL_TIMING.seconds,
    holdFirst: secondsFrom(holdFirst, '--hold-first') ?? USUAL_TIMING.holdFirst,
    holdLast: secondsFrom(holdLast, '--hold-last') ?? USUAL_TIMING.holdLast,
    handles: handles === true ? USUAL_HANDLES : (secondsFrom(handles, '--handles') ?? 0),
    loop: loop ?? false,
    ease: ease === undefined ? USUAL_TIMING.ease : choiceFrom(ease, EASES, '--ease'),
  };
}

export function requestFrom(flags: ClipFlags): ClipRequest {
  const { kind, engine, from, to, at, throttle, size, theme, alpha, title } = flags;
  return {
    figure: named(flags.figure, 'figure', 'Give --figure <name>, or --list to see the names.'),
    ...(kind !== undefined && { kind: choiceFrom(kind, KINDS, '--kind') }),
    ...(engine !== undefined && { engine }),
    ...(title !== undefined && { title }),
    ...(throttle !== undefined && { throttles: throttlesFrom(throttle) }),
    from: altitudeFrom(from, '--from') ?? 0,
    to: altitudeFrom(to, '--to') ?? 'vacuum',
    at: altitudeFrom(at, '--at') ?? 0,
    size: figureSizeFrom(size ?? '16:9'),
    theme: choiceFrom(theme ?? 'light', ['light', 'dark'], '--theme'),
    transparent: alpha ?? false,
  };
}

export const outFrom = ({ out }: ClipFlags): string =>
  named(out, 'file', 'Give --out <file>, ending in .mp4 or .webm, or a new folder for numbered pictures.');

const named = (given: string | undefined, what: string, mend: string): string =>
  given ?? refuse({ code: `${what}-missing`, what: `No ${what} is named.`, mend });

const refuse = (problem: Problem): never => {
  throw new BadInput([problem]);
};

function secondsFrom(given: string | undefined, option: string): number | undefined {
  if (given === undefined) return undefined;
  const value = Number(given.replace(/\s*s$/, ''));
  if (given.trim() !== '' && Number.isFinite(value)) return value;
  return refuse({
    code: 'option-value',
    what: `${option}: “${given}” is no time.`,
    mend: 'Give seconds, such as 8.',
  });
}

function altitudeFrom(given: string | undefined, option: string): number | 'vacuum' | undefined {
  if (given === undefined) return undefined;
  const words = given.trim().toLowerCase();
  if (words === 'vacuum') return 'vacuum';
  if (words === 'pad' || words === 'sea level') return 0;
  const parsed = parseQuantity(given, 'length');
  if (!parsed.ok) return refuse({ ...parsed.problem, what: `${option}: ${parsed.problem.what}` });
  const { value } = parsed.value;
  if (value >= 0 && value <= HIGHEST) return value;
  return refuse({
    code: 'condition-outside',
    what: `${option}: “${given}” is outside 0 to ${HIGHEST / 1000} km.`,
    mend: 'Give an altitude in it, or vacuum.',
  });
}

/** `100 % to 40 %` */
function throttlesFrom(given: string): readonly [number, number] {
  const [, from, to] = /^\s*(\d+(?:\.\d+)?)\s*%?\s*(?:to|…|–|-)\s*(\d+(?:\.\d+)?)\s*%\s*$/.exec(given) ?? [];
  if (from !== undefined && to !== undefined) return [Number(from) / 100, Number(to) / 100];
  return refuse({
    code: 'option-value',
    what: `--throttle: “${given}” is no range of throttles.`,
    mend: 'Give two in per cent, such as "100 % to 50 %".',
  });
}

/** What `--event` and its companions ask for: a whole flow through time. */

import type { FlowEvent, TimedChoices } from '../../answer/flow/index.ts';
import { parseQuantity } from '../../study/index.ts';
import { quote } from '../../study/report.ts';
import { BadInput } from './badInput.ts';
import { bad } from './sweepFlags.ts';

export interface FlowTimeFlags {
  readonly event?: string;
  readonly ramp?: string;
  readonly until?: string;
  readonly frames?: string;
}

/** [s] unless said otherwise. */
const RAMP = 2e-3;
const UNTIL = 8e-3;
const FRAMES = 16;
const MOST_FRAMES = 400;
/** [s] Longer ramps pass through steady flows, and take hours. */
const LONGEST = 0.2;
/** Of the full feed to which a throttle may go. */
const LEAST_SHARE = 0.05;

/** @throws BadInput with what to mend */
export function timedFrom(
  { event, ramp, until, frames }: FlowTimeFlags,
  places: number,
): Pick<TimedChoices, 'event' | 'ramp' | 'until' | 'frames'> | null {
  if (event === undefined) {
    if (ramp !== undefined || until !== undefined || frames !== undefined)
      throw bad('event-missing', '--ramp, --until and --frames go with --event.', 'Give --event start.');
    return null;
  }
  const of = {
    event: eventFrom(event),
    ramp: secondsFrom(ramp, '--ramp', RAMP),
    until: secondsFrom(until, '--until', UNTIL),
    frames: framesFrom(frames),
  };
  if (places !== 1)
    throw bad('event-one', '--event goes with one place.', 'Ask at one altitude: --altitude "0 km".');
  return of;
}

function eventFrom(text: string): FlowEvent {
  const [word = '', ...rest] = text.trim().split(/\s+/);
  if (rest.length === 0 && (word === 'start' || word === 'stop' || word === 'switch')) return { is: word };
  if (word === 'throttle') {
    const share = quantityFrom(rest.join(' '), '--event throttle', 'share');
    if (share >= LEAST_SHARE && share <= 1) return { is: 'throttle', to: share };
    throw bad(
      'event-throttle',
      `--event: a throttle to ${quote(rest.join(' '))} is outside ${100 * LEAST_SHARE} % to 100 %.`,
      'Give what is fed over the full feed: throttle 60 %.',
    );
  }
  throw bad(
    'event-unknown',
    `--event: there is no ${quote(text)}.`,
    'Give start, stop, switch, or throttle 60 %.',
  );
}

function secondsFrom(text: string | undefined, option: string, usual: number): number {
  if (text === undefined) return usual;
  const value = quantityFrom(text, option, 'time');
  if (value > 0 && value <= LONGEST) return value;
  throw bad(
    'event-time',
    `${option}: ${quote(text)} is outside 0 s to ${LONGEST} s.`,
    'A flow through time is computed in steps of microseconds; slower changes pass through flows at rest: ask for those.',
  );
}

function framesFrom(text: string | undefined): number {
  if (text === undefined) return FRAMES;
  const count = Number(text);
  if (Number.isInteger(count) && count >= 1 && count <= MOST_FRAMES) return count;
  throw bad(
    'event-frames',
    `--frames: ${quote(text)} is no number of frames.`,
    `Give a whole number from 1 to ${MOST_FRAMES}.`,
  );
}

function quantityFrom(text: string, option: string, kind: 'time' | 'share'): number {
  const parsed = parseQuantity(text, kind);
  if (parsed.ok) return parsed.value.value;
  throw new BadInput([{ ...parsed.problem, what: `${option}: ${parsed.problem.what}` }]);
}

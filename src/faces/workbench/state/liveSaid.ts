/** The number of a live answer as a sentence, and the sentence judged: what one may say of it on air. */

import { computed, effect, signal } from '@preact/signals';
import { needsOf } from '../../../answer/asked/askProblem.ts';
import { show } from '../../../answer/display.ts';
import type { CheckedSentence } from '../../../answer/sentences/model.ts';
import type { Outcome } from '../../../numerics/problem.ts';
import type { SolvedStudy } from '../../solved/solvedStudy.ts';
import { askDesk, QuestionEnded } from '../workshop/desk.ts';
import { altitude } from './altitude.ts';
import { liveAsk, liveEntry, liveNumber } from './live.ts';
import { ownerName } from './pair.ts';
import { altitudeText } from './shown.ts';
import { solved, solving } from './studyStore.ts';

export interface LiveSaid {
  readonly say: string;
  /** Its test. */ readonly holds: string;
}

/** Null where there is no number, or two that are the same. */
export const liveSaid = computed((): LiveSaid | null => {
  const [ask, entry, number] = [liveAsk.value, liveEntry.value, liveNumber.value];
  if (ask === null || entry === null || number === null) return null;
  const isHere = needsOf(entry).ambient;
  const here = isHere ? ` ${hereWords()}` : '';
  const place = isHere ? (Number.isFinite(altitude.value) ? `(${altitude.value} km)` : '(vacuum)') : '';
  const test = (engine: string): string => `${engine}.${ask.quantity}${place}`;
  const of = `The ${entry.label.replace(/ here$/, '')} of ${ownerName(ask.of) ?? ask.of}`;
  if (ask.against === null) {
    const shown = show(entry.name, number.of).text.replaceAll('\u00a0', ' ').replaceAll('\u202f', '');
    return { say: `${of}${here} is about ${shown}.`, holds: `${test(ask.of)} is about ${shown}` };
  }
  if (number.against === null || number.of === number.against) return null;
  const isMore = number.of > number.against;
  return {
    say: `${of}${here} is ${isMore ? 'higher' : 'lower'} than that of ${ownerName(ask.against) ?? ask.against}.`,
    holds: `${test(ask.of)} ${isMore ? '>' : '<'} ${test(ask.against)}`,
  };
});

const hereWords = (): string => {
  if (!Number.isFinite(altitude.value)) return 'in vacuum';
  return altitude.value === 0 ? 'at the pad' : `at ${altitudeText.value}`;
};

interface LiveJudged extends LiveSaid {
  /** It was judged in this one. */ readonly study: SolvedStudy;
  readonly judged: Outcome<CheckedSentence | null>;
}
const lastJudged = signal<LiveJudged | null>(null);

/** What is known of the sentence on screen, in the study on screen; null while it is being judged. */
export const liveJudged = computed((): Outcome<CheckedSentence | null> | null => {
  const [said, last] = [liveSaid.value, lastJudged.value];
  if (said === null || last === null || solving.value) return null;
  return last.study === solved.value && last.holds === said.holds ? last.judged : null;
});

/** Room for a hand that is still moving the scale [ms]. */
const PAUSE = 500;

export function followLiveSaid(): void {
  effect(() => {
    const said = liveSaid.value;
    const study = solved.value;
    if (said === null || study === null || solving.value) return;
    const gone = new AbortController();
    const timer = setTimeout(() => {
      askDesk('judged', said, gone.signal).then(
        (judged) => {
          lastJudged.value = { ...said, study, judged };
        },
        (error: unknown) => {
          if (!(error instanceof QuestionEnded)) reportError(error);
        },
      );
    }, PAUSE);
    return () => {
      clearTimeout(timer);
      gone.abort();
    };
  });
}

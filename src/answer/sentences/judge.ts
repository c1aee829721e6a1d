/** From shares to a verdict: the rules, and why in one line. */

import { listed } from '../compare/speech.ts';
import type { SentenceByModel, Verdict } from './model.ts';
import type { HoldingShare } from './shareOf.ts';

/** From this share on it is safe to say; up to the other it is not to be said. */
export const SAFE_FROM = 0.95;
export const DONT_UP_TO = 0.05;

export type Judged = Extract<Verdict, 'safe to say' | 'say with care' | 'don’t say' | 'can’t tell'>;

export interface Judgement {
  readonly verdict: Judged;
  readonly why: string;
}

export function byShare(share: number): Exclude<Judged, 'can’t tell'> {
  if (share >= SAFE_FROM) return 'safe to say';
  return share <= DONT_UP_TO ? 'don’t say' : 'say with care';
}

export interface ToJudge {
  /** By the models that the program takes. */ readonly own: HoldingShare;
  /** Models that stand beside each other; empty where there are none. */
  readonly alternatives: readonly SentenceByModel[];
  /** Why a number is absent, where one is. */ readonly absentWhy: string | null;
  /** What would decide it, e.g. `mixture ratio of Alder B`; null where nothing is known of that. */
  readonly decider: string | null;
  /** Nothing is left open. */ readonly certain: boolean;
}

export function judge({ own, alternatives, absentWhy, decider, certain }: ToJudge): Judgement {
  const wouldDecide = decider === null ? '' : ` What would decide it: ${decider}.`;
  const cannot = (why: string): Judgement => ({ verdict: 'can’t tell', why: `${why.trim()}${wouldDecide}` });
  if (own.absent === 1) return cannot(`A number it needs is absent. ${absentWhy ?? ''}`);
  const told = own.share * (1 - own.absent);
  if (byShare(told) !== byShare(told + own.absent)) {
    return cannot(
      `A number it needs is absent in ${percent(own.absent)} of what is not known. ${absentWhy ?? ''}`,
    );
  }
  const [least, most] = [own.share - own.unsure / 2, own.share + own.unsure / 2];
  if (own.unsure > MOST_UNSURE && byShare(least) !== byShare(most)) {
    return cannot(
      `The response surface that stands in for the engines is too coarse: it holds in ${percent(Math.max(0, least))} to ${percent(Math.min(1, most))} of what is not known.`,
    );
  }
  const split = disagreement(alternatives);
  if (split !== null) {
    return {
      verdict: 'can’t tell',
      why: `${split} What would decide it: which of them is right for this nozzle.`,
    };
  }
  return { verdict: byShare(own.share), why: shareWords(own, certain) + agreement(alternatives) };
}

/** A response surface may leave so many draws open before it is too coarse for a verdict. */
const MOST_UNSURE = 0.2;

const percent = (share: number): string => {
  const shown = share * 100;
  if (share > 0 && shown < 0.1) return 'less than 0.1 %';
  if (share < 1 && shown > 99.9) return 'more than 99.9 %';
  const digits = (shown > 0 && shown < 10) || (shown > 90 && shown < 100) ? 1 : 0;
  return `${Number(shown.toFixed(digits))} %`;
};

export { percent as shareText };

function shareWords({ share, error }: HoldingShare, certain: boolean): string {
  if (certain) return `It ${share === 1 ? 'holds' : 'does not hold'}, and nothing in it is left open.`;
  const near = [SAFE_FROM, DONT_UP_TO].find((line) => Math.abs(share - line) <= error);
  const holds =
    share === 0
      ? 'It fails throughout'
      : share === 1
        ? 'It holds throughout'
        : `It holds in ${percent(share)} of`;
  const line =
    near === undefined
      ? ''
      : ` The line at ${percent(near)} lies within the error of that share (± ${percent(error)}): more draws, or better known inputs, could turn it.`;
  return `${holds} what is not known.${line}`;
}

/** Null where all models give the same verdict. */
function disagreement(alternatives: readonly SentenceByModel[]): string | null {
  for (const of of new Set(alternatives.map((one) => one.of))) {
    const having = alternatives.filter((one) => one.of === of && one.share !== null);
    const verdicts = new Map<string, string[]>();
    for (const { by, share } of having) {
      const verdict = byShare(share ?? 0);
      verdicts.set(verdict, [...(verdicts.get(verdict) ?? []), by]);
    }
    if (verdicts.size < 2) continue;
    const sides = [...verdicts].map(
      ([verdict, by]) => `${SIDE[verdict as keyof typeof SIDE]} by ${listed(by)}`,
    );
    return `It hangs on the ${of}: ${sides.join('; ')}.`;
  }
  return null;
}

const SIDE = {
  'safe to say': 'it holds',
  'say with care': 'it is open',
  'don’t say': 'it does not hold',
} as const;

function agreement(alternatives: readonly SentenceByModel[]): string {
  const kinds = [...new Set(alternatives.map(({ of }) => of))];
  if (kinds.length === 0) return '';
  const counts = kinds.map((of) => {
    const count = alternatives.filter((one) => one.of === of && one.share !== null).length;
    return `each of the ${count} models for the ${of}`;
  });
  return ` So it is by ${listed(counts)}.`;
}

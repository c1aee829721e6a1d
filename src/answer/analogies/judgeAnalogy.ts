/** From the legs to the verdict: the main leg carries the likeness, every other wrong one must be told with it. */

import type { Problem } from '../../numerics/problem.ts';
import type { AnalogyInput } from '../../study/model.ts';
import type { CheckedAnalogy, CheckedBreak, CheckedLeg, TiedStand } from './model.ts';

type Judged = Pick<CheckedAnalogy, 'verdict' | 'wording' | 'why' | 'problem'>;

export function judgeAnalogy(
  analogy: AnalogyInput,
  stands: readonly TiedStand[],
  legs: readonly CheckedLeg[],
  breaks: readonly CheckedBreak[],
): Judged {
  const problem = firstProblem(analogy, stands, legs, breaks);
  if (problem !== null) {
    return { verdict: 'can’t tell', wording: null, why: `It cannot be checked: ${problem.what}`, problem };
  }
  const judged = verdictOf(legs, breaks);
  const sayable = judged.verdict === 'safe to say' || judged.verdict === 'say with care';
  return { ...judged, wording: sayable ? wordingOf(analogy, legs, breaks) : null, problem: null };
}

function firstProblem(
  { id }: AnalogyInput,
  stands: readonly TiedStand[],
  legs: readonly CheckedLeg[],
  breaks: readonly CheckedBreak[],
): Problem | null {
  const at = stands.findIndex(({ unknown }) => unknown !== null);
  const unknown = stands[at]?.unknown;
  if (unknown) return { ...unknown, where: `analogies.${id}.stands[${at}].relation` };
  return [...legs, ...breaks].find(({ problem }) => problem !== null)?.problem ?? null;
}

function verdictOf(
  legs: readonly CheckedLeg[],
  breaks: readonly CheckedBreak[],
): Pick<Judged, 'verdict' | 'why'> {
  const main = legs.find((leg) => leg.main);
  if (main === undefined || legs.every(({ verdict }) => verdict === 'not tested')) {
    return { verdict: 'not checked', why: 'No test stands beside any leg.' };
  }
  if (main.verdict === 'wrong') {
    return { verdict: 'don’t say', why: `Its point is wrong: ${quoted(main)} ${main.found}` };
  }
  if (main.verdict === 'can’t tell') {
    return { verdict: 'can’t tell', why: `Its point cannot be told: ${quoted(main)} ${main.found}` };
  }
  const here = breaks.filter((one) => one.here === true);
  const flawed = legs.filter(({ verdict }) => verdict !== 'right');
  if (flawed.length === 0 && here.length === 0) {
    return { verdict: 'safe to say', why: `${countOf(legs.length)} as computed.` };
  }
  const reasons = [
    ...flawed.map((leg) => `${VERDICT_WORDS[leg.verdict]}: ${quoted(leg)} ${leg.found}`),
    ...here.map(({ say }) => `It breaks in this study: ${say}.`),
  ];
  return { verdict: 'say with care', why: reasons.join(' ') };
}

const VERDICT_WORDS: Readonly<Record<CheckedLeg['verdict'], string>> = {
  right: 'Right',
  'partly right': 'Only partly right',
  wrong: 'Wrong',
  'can’t tell': 'Not to be told',
  'not tested': 'Not tested',
};

const quoted = ({ say }: CheckedLeg): string => `“${say}”`;

const countOf = (count: number): string => (count === 1 ? 'Its one leg goes' : `All ${count} legs go`);

/** The likeness with its bounds, and with what of it is not so. */
function wordingOf(
  { say, holdsFor }: AnalogyInput,
  legs: readonly CheckedLeg[],
  breaks: readonly CheckedBreak[],
): string {
  const wrong = legs.filter(({ verdict }) => verdict === 'wrong');
  return [
    say,
    `It holds for ${bare(holdsFor)}.`,
    ...(breaks.length === 0 ? [] : [`It breaks: ${breaks.map((one) => bare(one.say)).join('; ')}.`]),
    ...wrong.map((leg) => `Not so in an engine: ${quoted(leg)} ${leg.found}`),
  ].join(' ');
}

const bare = (text: string): string => text.trim().replace(/\.$/, '');

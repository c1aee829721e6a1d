/** What was found of a need, as one says it. */

import { showPlace, showValue } from '../sweeps/shown.ts';
import { goalOf } from './goal.ts';
import type { Need, NeededValue } from './model.ts';

/** Digits of a place that was sought. */
const FOUND = 3;

/** The answer first, then what else belongs to it; one sentence each. */
export function needWords(need: Need): readonly string[] {
  const { found, stretches, range } = need;
  const whole = `${range.label} from ${showPlace(range, range.from)} to ${showPlace(range, range.to)}`;
  const absent = stretches.some(({ holds }) => holds === null)
    ? ['Over a part of the range a side has no value.']
    : [];
  const rest = [...absent, ...nowWords(need)];
  if (found.length > 0) return [...found.map((one) => foundWords(need, one)), ...rest];
  if (stretches.some(({ holds }) => holds === true))
    return [`At every ${whole}, ${stopped(goalWords(need))}`, ...rest];
  return [
    `No answer: at no ${whole} it is so that ${stopped(goalWords(need))}`,
    ...nearestWords(need),
    ...rest,
  ];
}

/** `specific impulse of Alder B in vacuum is at least specific impulse of Alder P in vacuum` */
function goalWords({ request, sweep }: Need): string {
  const [left, right] = sweep.curves;
  if (left?.parts == null || (right?.engines.length ?? 0) > 0 === (right?.parts == null))
    return `“${request.so}”`;
  const { leftAbove } = goalOf(request.so);
  return `the ${left.words} is ${leftAbove ? 'at least' : 'at most'} ${right!.parts === null ? right!.words : `the ${right!.words}`}`;
}

function foundWords(need: Need, value: NeededValue): string {
  const { x, holdsAbove } = value;
  const { range } = need;
  const band = value.isOpen ? ` (${endsWords(need, value)} with all else that is not known)` : '';
  const edge = holdsAbove ? 'is at least' : 'is at most';
  return `It is so where ${range.label} ${edge} ${showPlace(range, x, FOUND)}${band}: ${stopped(goalWords(need))}`;
}

/** `3.4 to 3.7`; where an end is missing, so much is said. */
function endsWords({ range }: Need, { low, high }: NeededValue): string {
  const [from, to] = [low, high].map((end) => (end === null ? null : showPlace(range, end, FOUND)));
  if (from && to) return `${from} to ${to}`;
  if (from) return `${from} or more, no upper end in the range,`;
  return to ? `${to} or less, no lower end in the range,` : 'no end of it in the range';
}

/** A closing comma of a clause gives way to the stop. */
const stopped = (words: string): string => `${words.replace(/,$/, '')}.`;

function nearestWords({ nearest, range, sweep }: Need): readonly string[] {
  if (nearest === null) return ['Nowhere have both sides a value.'];
  const missing = showValue(sweep.curves[0]!, nearest.missing, FOUND).text;
  return [
    `It comes nearest at ${range.label} ${showPlace(range, nearest.x, FOUND)}, where ${missing} are missing.`,
  ];
}

function nowWords({ range }: Need): readonly string[] {
  const now = range.now.filter(({ value }) => value !== null);
  if (now.length === 0) return [];
  const values = [...new Set(now.map(({ value }) => showPlace(range, value!)))];
  return [`Now: ${values.join(', ')}.`];
}

/** The cut of a script to a length: greatest weight within the time, all kept lines with what they rely on (docs/methods/telling.md). */

import { ProblemError } from '../../numerics/problem.ts';
import type { Script } from '../../study/script/model.ts';
import type { NumbersTold, TimedScript } from '../time/model.ts';
import { pacesOf, tenthsOf, timeScript } from '../time/timeScript.ts';
import { cutLines } from './cutLines.ts';
import { keptScript } from './keptScript.ts';
import type { ClosureKnapsack, Group } from './knapsack/model.ts';
import { solveClosureKnapsack } from './knapsack/solve.ts';
import type { Cut, CutWish } from './model.ts';
import { verdictNeeds } from './verdictNeeds.ts';
import { type Reliance, relianceOf, type Settled, settledWishes } from './wishes.ts';

/** Beginnings looked at before a tangled script is left at the best cut found: a few seconds. */
const MOST_BEGINNINGS = 400_000;
/** Weights count by thousandths. */
const WEIGHT_STEPS = 1000;

/** @throws ProblemError where the wishes cannot be met together, or nothing fits */
export function proposeCut(script: Script, numbers: NumbersTold, wish: CutWish): Cut {
  const timed = timeScript(script, numbers, pacesOf(script));
  const reliance = relianceOf(script);
  const settled = settledWishes(reliance, wish);
  const tenths = timed.scenes.flatMap(({ lines }) => lines.map(({ seconds }) => tenthsOf(seconds)));
  const room = tenthsOf(wish.length) - sumOf([...settled.forced].map((place) => tenths[place]!));
  if (room < 0) throw keptTooLong(wish, room);
  const { problem, places, unit } = problemOf(script, reliance, settled, tenths, room);
  const solved = solveClosureKnapsack(problem, MOST_BEGINNINGS);
  const kept = new Set(settled.forced);
  solved.taken.forEach((isTaken, i) => {
    if (isTaken) kept.add(places[i]!);
  });
  if (kept.size === 0 && reliance.ids.length > 0) throw nothingFits(wish, timed, script);
  const ids = new Set([...kept].map((place) => reliance.ids[place]!));
  const cut = keptScript(script, ids);
  return {
    script: cut,
    target: wish.length,
    seconds: sumOf([...kept].map((place) => tenths[place]!)) / 10,
    whole: timed.seconds,
    weight: weightOf(cut),
    wholeWeight: weightOf(script),
    short: (solved.short * unit) / WEIGHT_STEPS,
    lines: cutLines(script, timed, reliance, settled, kept),
    verdictNeeds: verdictNeeds(script, ids),
  };
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
const stepsOf = (weight: number): number => Math.round(WEIGHT_STEPS * weight);

/** Of all lines of a script and of its scenes that say anything. */
function weightOf({ scenes }: Script): number {
  const said = scenes.filter(({ lines }) => lines.length > 0);
  const steps = said.map(
    ({ weight, lines }) => stepsOf(weight) + sumOf(lines.map((line) => stepsOf(line.weight))),
  );
  return sumOf(steps) / WEIGHT_STEPS;
}

/** What is left to decide once the wishes are met. */
function problemOf(
  { scenes }: Script,
  { needs }: Reliance,
  { forced, barred }: Settled,
  tenths: readonly number[],
  room: number,
): { readonly problem: ClosureKnapsack; readonly places: readonly number[]; readonly unit: number } {
  const isOpen = (place: number): boolean => !forced.has(place) && !barred.has(place);
  const places = needs.flatMap((_, place) => (isOpen(place) ? [place] : []));
  const among = new Map(places.map((place, i) => [place, i]));
  const steps = scenes.flatMap(({ weight, lines }) =>
    [weight, ...lines.map((line) => line.weight)].map(stepsOf),
  );
  const unit = steps.reduce(commonDivisor, 0) || 1;
  let first = 0;
  const groups = scenes.map(({ weight, lines }): Group => {
    const own = lines.map((line, k) => ({ line, place: first + k }));
    first += lines.length;
    const hasBonus = !own.some(({ place }) => forced.has(place));
    return {
      bonus: hasBonus ? stepsOf(weight) / unit : 0,
      items: own
        .filter(({ place }) => isOpen(place))
        .map(({ line, place }) => ({
          time: tenths[place]!,
          weight: stepsOf(line.weight) / unit,
          needs: needs[place]!.flatMap((to) => among.get(to) ?? []),
        })),
    };
  });
  return { problem: { room, groups }, places, unit };
}

function commonDivisor(a: number, b: number): number {
  let [one, other] = [a, b];
  while (other !== 0) [one, other] = [other, one % other];
  return one;
}

function keptTooLong({ length, keep }: CutWish, room: number): ProblemError {
  const needed = (tenthsOf(length) - room) / 10;
  return new ProblemError({
    code: 'cut-keeps-too-long',
    what: `What is to be kept (${keep.join(', ')}), with all that it relies on, takes ${needed} s; the cut has ${length} s.`,
    mend: `Give the cut ${Math.ceil(needed)} s, or keep less.`,
    facts: { needed, length },
  });
}

function nothingFits({ length }: CutWish, timed: TimedScript, { scenes }: Script): ProblemError {
  const lines = timed.scenes.flatMap((scene) => scene.lines);
  const shortest = Math.min(...lines.map(({ seconds }) => seconds));
  const hasWeight = scenes.some(
    ({ weight, lines: own }) => weight > 0 || own.some((line) => line.weight > 0),
  );
  return new ProblemError({
    code: 'cut-empty',
    what: `No line of any weight fits into ${length} s with what it relies on${hasWeight ? `; the shortest line takes ${shortest} s` : ''}.`,
    mend: hasWeight ? 'Give the cut more time.' : 'Give some line a weight, like {weight=1}.',
    facts: { length, shortest },
  });
}

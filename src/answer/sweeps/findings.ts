/** What a sweep or a map shows, in words: course, optimum, crossings, holes. */

import { listed } from '../compare/speech.ts';
import type {
  Course,
  Crossing,
  Extreme,
  Hole,
  MapExtreme,
  Sweep,
  SweepCurve,
  SweepMap,
  ToldOf,
} from './model.ts';
import { showPlace, showValue } from './shown.ts';

/** Digits of a place that was sought, not stated. */
const FOUND = 3;

/** One line a curve, one a crossing, one a hole. */
export function sweepFindings(sweep: Sweep): readonly string[] {
  return [
    ...sweep.curves.map((curve) => courseWords(sweep, curve)),
    ...sweep.crossings.map((crossing) => crossingWords(sweep, crossing)),
    ...sweep.curves.flatMap((curve) => curve.holes.map((hole) => holeWords(sweep, curve, hole))),
  ];
}

/** The one sentence that stands over a figure. */
export function sweepHeadline(sweep: Sweep): string {
  const [first] = sweep.curves;
  const crossing = sweep.crossings.find(({ jump }) => !jump);
  if (sweep.curves.length > 1 && crossing !== undefined) return crossingWords(sweep, crossing);
  return first === undefined ? 'Nothing is followed.' : courseWords(sweep, first);
}

function courseWords(sweep: Sweep, curve: SweepCurve): string {
  const { course, highest, lowest } = curve;
  const what = nameOf(curve);
  if (highest === null || lowest === null) {
    return course === 'has no value' || course === 'stays the same'
      ? `${what} ${PLAIN[course]}${course === 'stays the same' ? ` at ${valueWords(curve, firstValue(curve))}` : ''}.`
      : `${what} ${PLAIN[course]} with ${sweep.range.label}.`;
  }
  if (course === 'stays the same') return `${what} stays the same, ${valueWords(curve, highest.y)}.`;
  if (course === 'rises' || course === 'falls') {
    const [from, to] = course === 'rises' ? [lowest, highest] : [highest, lowest];
    return `${what} ${course} from ${valueWords(curve, from.y)} at ${placeWords(sweep, from)} to ${valueWords(curve, to.y)} at ${placeWords(sweep, to)}.`;
  }
  const told =
    course === 'has its lowest inside'
      ? [lowest]
      : course === 'has its highest inside'
        ? [highest]
        : [highest, lowest];
  const parts = told.map(
    (extreme) =>
      `${extreme === highest ? 'highest' : 'lowest'} at ${placeWords(sweep, extreme)}, ${valueWords(curve, extreme.y)}`,
  );
  return `${what} is ${listed(parts)}.`;
}

const PLAIN: Readonly<Record<Course, string>> = {
  rises: 'rises',
  falls: 'falls',
  'stays the same': 'stays the same',
  'has its highest inside': 'has its highest value inside the range',
  'has its lowest inside': 'has its lowest value inside the range',
  'turns more than once': 'turns more than once',
  'has no value': 'has no value anywhere in the range',
};

function firstValue({ points }: SweepCurve): number {
  return points.find(({ y }) => y !== null)?.y ?? 0;
}

/** `Specific impulse of Alder B in vacuum`; as written where it is made of several. */
export function nameOf({ words, parts }: ToldOf): string {
  return parts === null ? words : capital(words);
}

/** What tells the curves apart, as short as it can be: the engine, the place, or both. */
export function shortNames(curves: readonly ToldOf[]): readonly string[] {
  const sets = (of: (told: ToldOf) => string): number => new Set(curves.map(of)).size;
  if (curves.some(({ parts }) => parts === null) || sets(({ label }) => label) > 1) {
    return curves.map(({ words }) => words);
  }
  const owners = sets(({ parts }) => parts!.owner);
  const places = sets(({ parts }) => parts!.place);
  return curves.map(({ parts }) => {
    const { owner, place } = parts!;
    if (places === 1 || place === '') return owner;
    return owners === 1 ? capital(place) : `${owner}, ${place}`;
  });
}

export function valueWords(curve: SweepCurve | SweepMap, value: number): string {
  return showValue(curve, value).text;
}

/** Where an optimum lies: so many digits as it was placed to, or the end as it was asked for. */
export function placeWords({ range }: Sweep, { x, at }: Extreme): string {
  const where = showPlace(range, x, at === 'end' ? undefined : FOUND);
  return `${range.label} ${where}${at === 'hole' ? ', beside a stretch without values' : ''}`;
}

function crossingWords(sweep: Sweep, { x, y, curves, jump }: Crossing): string {
  const names = shortNames(sweep.curves);
  const [before, after] = curves.map((curve) => names[curve]!) as [string, string];
  const place = `${sweep.range.label} ${showPlace(sweep.range, x, FOUND)}`;
  if (jump) return `${before} and ${after} change places at a jump at ${place}.`;
  return `${before} and ${after} are equal at ${place}, ${valueWords(sweep.curves[curves[0]]!, y)}; beyond it ${after} is higher.`;
}

function holeWords(sweep: Sweep, curve: SweepCurve, { from, to, problem }: Hole): string {
  const [start, end] = [from, to].map((x) => showPlace(sweep.range, x, FOUND));
  return `${nameOf(curve)} has no value from ${sweep.range.label} ${start} to ${end}: ${problem.what}`;
}

export function mapFindings(map: SweepMap): readonly string[] {
  return [
    ...(['highest', 'lowest'] as const).flatMap((which) => {
      const extreme = map[which];
      return extreme === null ? [] : [mapExtremeWords(map, which, extreme)];
    }),
    ...map.holes.map(
      ({ places, problem }) =>
        `${shareWords(places.length / map.values.length)} of the map has no value: ${problem.what}`,
    ),
  ];
}

export function mapHeadline(map: SweepMap): string {
  const inside = (['highest', 'lowest'] as const).find((which) => map[which]?.at === 'inside') ?? 'highest';
  const extreme = map[inside];
  return extreme === null ? `${nameOf(map)} has no value anywhere.` : mapExtremeWords(map, inside, extreme);
}

function mapExtremeWords(
  map: SweepMap,
  which: 'highest' | 'lowest',
  { x, y, value, at }: MapExtreme,
): string {
  const digits = at === 'end' ? undefined : FOUND;
  const place = `${map.rangeAcross.label} ${showPlace(map.rangeAcross, x, digits)} and ${map.rangeUp.label} ${showPlace(map.rangeUp, y, digits)}`;
  const where =
    at === 'end' ? ', on the edge of the map' : at === 'hole' ? ', beside places without values' : '';
  return `${nameOf(map)} is ${which} at ${place}${where}: ${valueWords(map, value)}.`;
}

function shareWords(share: number): string {
  return share < 0.005 ? 'Less than 1 %' : `${Math.round(100 * share)} %`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** How a quantity goes with an input, in words: `up`, `unchanged within 2 %`, `like the square`, `like the power 0.8 ± 0.1`. */
import type { Outcome } from '../numerics/problem.ts';
import type { Course } from './model.ts';
import { quote } from './report.ts';

/** Taken where no tolerance is given; our choice: an exponent that people would still call the same. */
export const EXPONENT_TOLERANCE = 0.1;
/** Taken where `unchanged` says nothing more. */
export const UNCHANGED_WITHIN = 0.01;

const POWERS: Readonly<Record<string, number>> = {
  'in proportion': 1,
  'in inverse proportion': -1,
  'like the square': 2,
  'like the cube': 3,
  'like the fourth power': 4,
  'like the square root': 0.5,
  'like the cube root': 1 / 3,
  'like the inverse': -1,
  'like the inverse square': -2,
  'like the inverse square root': -0.5,
};

/** All that is understood, for messages and the documentation. */
export const courseForms: readonly string[] = [
  'up',
  'down',
  'unchanged',
  'unchanged within 2 %',
  ...Object.keys(POWERS),
  'like the power 0.8',
];

const UNCHANGED = /^unchanged(?: within (\d+(?:\.\d+)?) ?%)?$/;
const POWER = /^like the power ([+-]?\d+(?:\.\d+)?)$/;
const TOLERANCE = / ?(?:±|\+\/-) ?(\d+(?:\.\d+)?)$/;

export function courseOf(text: string): Outcome<Course> {
  const plain = text
    .replace(/\u2212/g, '-')
    .replace(/\s+/g, ' ')
    .trim();
  if (plain === 'up' || plain === 'down') return { ok: true, value: { is: plain, text: plain } };
  const unchanged = UNCHANGED.exec(plain);
  if (unchanged !== null) {
    const within = unchanged[1] === undefined ? UNCHANGED_WITHIN : Number(unchanged[1]) / 100;
    return { ok: true, value: { is: 'unchanged', within, text: plain } };
  }
  const given = TOLERANCE.exec(plain);
  const body = given === null ? plain : plain.slice(0, given.index);
  const exponent = Object.hasOwn(POWERS, body) ? POWERS[body]! : powerIn(body);
  if (exponent === null) {
    return {
      ok: false,
      problem: {
        code: 'course-unreadable',
        what: `${quote(text)} does not say how a quantity goes with an input.`,
        mend: `Write ${courseForms.slice(0, -1).join(', ')} or ${courseForms.at(-1)!}; behind a power a tolerance may stand: like the square ± 0.2.`,
      },
    };
  }
  const tolerance = given === null ? EXPONENT_TOLERANCE : Number(given[1]);
  return { ok: true, value: { is: 'power', exponent, tolerance, text: plain } };
}

function powerIn(body: string): number | null {
  const found = POWER.exec(body);
  return found === null ? null : Number(found[1]);
}

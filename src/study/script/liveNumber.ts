/** `{{bell.thrust(pad) in kN, about, 2 digits}}`: what is asked, and how it is to be told. */

import { nearestName } from '../nearest.ts';
import { listNames, quote, type Report } from '../report.ts';
import { findUnit } from '../units.ts';
import { unitTable } from '../unitTable.ts';
import type { NumberPiece } from './model.ts';

const OPTIONS = ['about', 'spoken', 'span', 'bare', '2 digits'] as const;
const DIGITS = /^([1-6]) digits?$/;
const EXAMPLE = '{{bell.thrust(pad) in kN, about}}';

/** Null with a problem where nothing is asked. @param raw with its braces, from `from` on */
export function liveNumber(raw: string, from: number, report: Report): NumberPiece | null {
  const [first = '', ...options] = partsOf(raw.slice(2, -2));
  const refuse = (code: string, what: string, mend: string): void =>
    report.problem({ code, what, mend }, '', from);
  const { expression, unit } = withUnit(first.replace(/\s+/g, ' ').trim());
  if (expression === '') {
    refuse('number-empty', 'Nothing is asked between these braces.', `Write it like ${EXAMPLE}.`);
    return null;
  }
  const words = options.map((option) => option.replace(/\s+/g, ' ').trim());
  for (const word of words) {
    if (['about', 'spoken', 'span', 'bare'].includes(word) || DIGITS.test(word)) continue;
    const near = nearestName(word, OPTIONS);
    refuse(
      'number-option-unknown',
      `${quote(word)} is no way to tell a number.`,
      `${near === null ? '' : `Did you mean ${near}? `}There are ${listNames(OPTIONS)} (1 to 6).`,
    );
  }
  if (unit !== null && findUnit(unit) === null) {
    const near = nearestName(unit, unitTable.keys());
    refuse(
      'unit-unknown',
      `${quote(unit)} is not a known unit.`,
      `${near === null ? '' : `Did you mean ${near}? `}Write one such as kN, bar, t or s, or none.`,
    );
  }
  const digits = words.flatMap((word) => DIGITS.exec(word)?.[1] ?? [])[0];
  return {
    kind: 'number',
    expression,
    ...(unit !== null && findUnit(unit) !== null && { unit }),
    about: words.includes('about'),
    spoken: words.includes('spoken'),
    ...(words.includes('span') && { span: true }),
    ...(words.includes('bare') && { bare: true }),
    ...(digits !== undefined && { digits: Number(digits) }),
    from,
    to: from + raw.length,
  };
}

/** Parted at commas outside brackets. */
function partsOf(text: string): readonly string[] {
  const parts: string[] = [];
  let depth = 0;
  let start = 0;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    if (sign === '(') depth += 1;
    else if (sign === ')') depth = Math.max(0, depth - 1);
    else if (sign === ',' && depth === 0) {
      parts.push(text.slice(start, i));
      start = i + 1;
    }
  }
  return [...parts, text.slice(start)];
}

/** The last ` in ` outside brackets goes before the unit. */
function withUnit(text: string): { readonly expression: string; readonly unit: string | null } {
  const at = text.lastIndexOf(' in ');
  const unit = text.slice(at + 4).trim();
  if (at < 0 || unit === '' || unit.split('(').length < unit.split(')').length) {
    return { expression: text, unit: null };
  }
  return { expression: text.slice(0, at).trim(), unit };
}

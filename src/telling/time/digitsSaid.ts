/** Figures typed by hand as they are said: `122.5` is a hundred and twenty-two point five, `1957` nineteen fifty-seven. */

import { numberInWords } from '../../answer/spoken/numberWords.ts';

/** As many as a typed figure may have and still be read as a number. */
const DIGITS = 12;
/** [digits] Longer ones are read one by one. */
const LONGEST = 15;

/** @param text digits with group separators and one decimal point, no sign */
export function digitsSaid(text: string, isYear: boolean): string {
  const [before = '', after] = text.replace(/[\s,\u00a0\u2007\u2009\u202f]/g, '').split('.');
  const decimals = after === undefined || after === '' ? '' : ` point ${oneByOne(after)}`;
  if (before.length > LONGEST) return oneByOne(before) + decimals;
  if (isYear && decimals === '') return yearSaid(Number(before));
  return wholeSaid(Number(before === '' ? '0' : before)) + decimals;
}

/** Four digits alone that are said in pairs. */
export const mayBeYear = (text: string): boolean => /^(?:1[1-9]|20)\d\d$/.test(text);

/** `1960` of `1960s` is nineteen sixties. */
export const decadeSaid = (digits: string): string => `${yearSaid(Number(digits)).replace(/y$/, 'ie')}s`;

function yearSaid(year: number): string {
  const [century, rest] = [Math.floor(year / 100), year % 100];
  if (century === 20 && rest < 10) return wholeSaid(year);
  if (rest === 0) return `${wholeSaid(century)} hundred`;
  return `${wholeSaid(century)} ${rest < 10 ? 'oh ' : ''}${wholeSaid(rest)}`;
}

const wholeSaid = (value: number): string => numberInWords(value, DIGITS).words;

const oneByOne = (digits: string): string => [...digits].map((digit) => wholeSaid(Number(digit))).join(' ');

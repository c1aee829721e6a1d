/** Cells of comma-separated values (RFC 4180). */

import { plainText } from './scene/safeText.ts';

/** A minus sign before anything else begins a formula. */
const NUMBER = /^-(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/** Quoted where needed; a text that a spreadsheet would run as a formula gets an apostrophe in front. */
export function csvCell(text: string): string {
  const plain = plainText(text);
  const runs = /^[=+@\t-]/.test(plain) && !NUMBER.test(plain);
  const safe = runs ? `'${plain}` : plain;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

export function csvOf(lines: readonly (readonly string[])[]): string {
  return `${lines.map((cells) => cells.map(csvCell).join(',')).join('\r\n')}\r\n`;
}

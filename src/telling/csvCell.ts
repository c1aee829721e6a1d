/** Cells of comma-separated values (RFC 4180). */

import { plainText } from './scene/safeText.ts';

/** Quoted where needed; a text that a spreadsheet would run as a formula gets an apostrophe in front. */
export function csvCell(text: string): string {
  const plain = plainText(text);
  const safe = /^[=+@\t]|^-(?![\d.])/.test(plain) ? `'${plain}` : plain;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

export function csvOf(lines: readonly (readonly string[])[]): string {
  return `${lines.map((cells) => cells.map(csvCell).join(',')).join('\r\n')}\r\n`;
}

/** Widths of text set in the bundled font, and where to break it, without asking a browser. */

import { WIDTH_RANGES, WIDTH_TEXT } from './fontWidths.ts';

export type Weight = 400 | 600 | 700;

/** Width taken for a character that the font lacks [thousandths of the size]; a browser shows another font's. */
const UNKNOWN_WIDTH = 1000;

const NO_BREAK = '\u00a0';

const tables = new Map<Weight, Map<number, number>>();

function table(weight: Weight): Map<number, number> {
  const known = tables.get(weight);
  if (known) return known;
  const fresh = new Map<number, number>();
  WIDTH_RANGES.forEach(([first], range) => {
    const widths = (WIDTH_TEXT[weight][range] ?? '').split(' ').map(Number);
    widths.forEach((width, i) => {
      if (width > 0) fresh.set(first + i, width);
    });
  });
  tables.set(weight, fresh);
  return fresh;
}

/** Width of one line of text in the unit of `size`, kerning left out (kerning only makes it narrower). */
export function textWidth(text: string, size: number, weight: Weight): number {
  const widths = table(weight);
  let sum = 0;
  for (const character of text) sum += widths.get(character.codePointAt(0) ?? 0) ?? UNKNOWN_WIDTH;
  return (sum * size) / 1000;
}

/**
 * Break a text into lines no wider than `width`. Breaks at plain spaces only, so what is joined by no-break
 * spaces stays together, and so does a number with its per cent sign; a single word wider than a line is cut between characters.
 */
export function wrapText(text: string, width: number, size: number, weight: Weight): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text
    .replace(/(?<=\d) (?=%)/gu, NO_BREAK)
    .split(/[ \n]+/u)
    .filter((w) => w !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, size, weight) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = word;
    while (textWidth(line, size, weight) > width) {
      const fit = charactersThatFit(line, width, size, weight);
      // A word that is two by a dash parts there.
      const dash = line.slice(0, fit).lastIndexOf('–') + 1;
      const kept = dash > 0 ? dash : fit;
      lines.push(line.slice(0, kept));
      line = line.slice(kept);
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** Wrap to at most `most` lines; the last one ends in an ellipsis when text is left over. */
export function wrapAtMost(
  text: string,
  width: number,
  size: number,
  weight: Weight,
  most: number,
): string[] {
  const lines = wrapText(text, width, size, weight);
  if (lines.length <= most) return lines;
  const kept = lines.slice(0, most);
  kept[most - 1] = shorten(`${kept[most - 1] ?? ''}…`, width, size, weight);
  return kept;
}

/** As many lines as wrapping needs, but of nearly equal length, so that no last word stands alone. */
export function wrapBalanced(
  text: string,
  width: number,
  size: number,
  weight: Weight,
  most: number,
): string[] {
  const wide = wrapAtMost(text, width, size, weight, most);
  if (wide.length < 2 || wrapText(text, width, size, weight).length > most) return wide;
  let [narrow, enough] = [width / 2, width];
  for (let i = 0; i < 12; i++) {
    const middle = (narrow + enough) / 2;
    if (wrapText(text, middle, size, weight).length > wide.length) narrow = middle;
    else enough = middle;
  }
  return wrapText(text, enough, size, weight);
}

/** Cut a line to a width, with an ellipsis where something was cut away. */
export function shorten(text: string, width: number, size: number, weight: Weight): string {
  if (textWidth(text, size, weight) <= width) return text;
  const room = width - textWidth('…', size, weight);
  return `${text.slice(0, charactersThatFit(text, room, size, weight)).trimEnd()}…`;
}

/** Index after the last whole character that fits, at least one character. */
function charactersThatFit(text: string, width: number, size: number, weight: Weight): number {
  let used = 0;
  let index = 0;
  for (const character of text) {
    used += textWidth(character, size, weight);
    if (used > width && index > 0) return index;
    index += character.length;
  }
  return text.length;
}

/** Words broken into lines of at most `width` characters; every line after the first begins with `indent`. */
export function wrapped(text: string, width: number, indent = '', first = indent): string {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  // No-break spaces hold a number and its unit together, so only the plain space parts words.
  for (const word of text.split(' ').filter((w) => w !== '')) {
    if (!empty && visibleLength(line) + 1 + visibleLength(word) > width) {
      lines.push(line);
      line = indent;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  lines.push(line);
  return lines.join('\n');
}

/** Characters as a terminal counts them: combining marks take no room. */
export function visibleLength(text: string): number {
  const signs = Array.from(new Intl.Segmenter().segment(text.normalize('NFC')));
  return signs.filter(({ segment }) => !/^\p{Mark}+$/u.test(segment)).length;
}

export function padEnd(text: string, length: number): string {
  return text + ' '.repeat(Math.max(0, length - visibleLength(text)));
}

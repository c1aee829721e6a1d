/** References as BibTeX, UTF-8. */

import { plainText } from '../scene/safeText.ts';
import type { PersonName, Reference } from './reference.ts';

const TYPES: Readonly<Record<Reference['type'], string>> = {
  'article-journal': 'article',
  book: 'book',
  chapter: 'incollection',
  dataset: 'misc',
  document: 'misc',
  'paper-conference': 'inproceedings',
  report: 'techreport',
  software: 'misc',
  standard: 'misc',
  thesis: 'phdthesis',
  webpage: 'misc',
};

/** @param head lines above the entries; readers pass over them */
export function bibtex(references: readonly Reference[], head: readonly string[]): string {
  const keys = keysOf(references);
  const entries = references.map((reference, i) => entryOf(reference, keys[i]!));
  // An at sign would begin an entry.
  const lines = head.map((line) => `% ${plainText(line).replaceAll('@', '(at)')}`);
  return `${lines.join('\n')}\n\n${entries.join('\n\n')}\n`;
}

/** Letters, digits and hyphens only, each once. */
function keysOf(references: readonly Reference[]): readonly string[] {
  const taken = new Set<string>();
  return references.map(({ id }) => {
    const plain = id.replace(/[^A-Za-z0-9-]+/g, '-') || 'source';
    let key = plain;
    for (let n = 2; taken.has(key); n++) key = `${plain}-${n}`;
    taken.add(key);
    return key;
  });
}

function entryOf(reference: Reference, key: string): string {
  const type = TYPES[reference.type];
  const held = type === 'article' ? 'journal' : 'booktitle';
  const issuer = type === 'techreport' ? 'institution' : type === 'phdthesis' ? 'school' : 'publisher';
  const fields: readonly (readonly [string, string | null])[] = [
    ['author', authorsOf(reference.authors)],
    ['title', reference.title === null ? null : `{${escaped(reference.title)}}`],
    [held, plain(reference.container)],
    ['volume', plain(reference.volume)],
    ['number', plain(reference.issue ?? reference.number)],
    ['pages', plain(reference.pages?.replace('–', '--') ?? null)],
    ['edition', plain(reference.edition)],
    [issuer, plain(reference.publisher)],
    ['year', reference.year === null ? null : String(reference.year)],
    ['doi', address(reference.doi)],
    ['url', address(reference.url)],
    ['note', plain([reference.note, usedFor(reference)].filter((line) => line !== null).join(' '))],
  ];
  const lines = fields.flatMap(([name, value]) => (value === null ? [] : [`  ${name} = {${value}}`]));
  return `@${type}{${key},\n${lines.join(',\n')}\n}`;
}

const usedFor = ({ usedFor: lines }: Reference): string | null =>
  lines.length === 0 ? null : `Used for: ${lines.join('; ')}.`;

const plain = (text: string | null): string | null => (text === null || text === '' ? null : escaped(text));

/** As it is: styles set addresses letter by letter. Only what could end the field, or the file’s line, is written as its code. */
const address = (text: string | null): string | null =>
  text === null || text === '' ? null : plainText(text).replace(/[\\{}^\s]/g, encodeURIComponent);

function authorsOf(names: readonly PersonName[]): string | null {
  if (names.length === 0) return null;
  return names
    .map((name) =>
      'literal' in name
        ? name.literal === 'others'
          ? 'others'
          : `{${escaped(name.literal)}}`
        : `${escaped(name.family)}, ${escaped(name.given)}`,
    )
    .join(' and ');
}

const COMMANDS: Readonly<Record<string, string>> = {
  '\\': '{\\textbackslash}',
  '{': '{\\textbraceleft}',
  '}': '{\\textbraceright}',
  '~': '{\\textasciitilde}',
  '^': '{\\textasciicircum}',
};

/** Signs with a meaning to TeX stand for themselves; braces stay in pairs. */
export function escaped(text: string): string {
  return plainText(text)
    .replace(/[\\{}~^]/g, (sign) => COMMANDS[sign]!)
    .replace(/[&%$#_]/g, (sign) => `\\${sign}`);
}

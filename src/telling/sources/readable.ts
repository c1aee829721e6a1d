/** References in words, for people. */

import type { PersonName, Reference } from './reference.ts';

/** `Gordon, S., McBride, B. J.: Title. Journal 30(6), 1960, 561. doi:…` */
export function referenceLine(reference: Reference): string {
  const { title, container, volume, issue, pages, publisher, number, edition, year, doi, url, note } =
    reference;
  const names = reference.authors.map(nameWords).join(', ');
  const place =
    container === null
      ? null
      : `${container}${volume === null ? '' : ` ${volume}`}${issue === null ? '' : `(${issue})`}`;
  const where = [
    place ?? (volume === null ? null : `vol. ${volume}`),
    edition === null ? null : `${edition}${ordinal(edition)} ed.`,
    number,
    publisher,
    year === null ? null : String(year),
    pages,
  ].filter((part) => part !== null);
  const sentences = [
    [names === '' ? null : names, title].filter((part) => part !== null).join(': '),
    where.join(', '),
    doi === null ? '' : `doi:${doi}`,
    url ?? '',
    note ?? '',
  ].filter((part) => part !== '');
  return sentences.map(ended).join(' ');
}

const ended = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

function ordinal(edition: string): string {
  const last = edition.at(-1);
  return last === '1' ? 'st' : last === '2' ? 'nd' : last === '3' ? 'rd' : 'th';
}

const nameWords = (name: PersonName): string =>
  'literal' in name
    ? name.literal === 'others'
      ? 'and others'
      : name.literal
    : `${name.family}, ${name.given}`;

/** The whole list as text, each with what it is used for. */
export function readableSources(references: readonly Reference[], head: readonly string[]): string {
  const entries = references.map((reference) => {
    const uses = reference.usedFor.length === 0 ? '' : `\n    Used for: ${reference.usedFor.join('; ')}.`;
    return `[${reference.id}]\n    ${referenceLine(reference)}${uses}`;
  });
  return `${head.join('\n\n')}\n\n${entries.join('\n\n')}\n`;
}

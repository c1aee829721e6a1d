/** References as CSL-JSON (Citation Style Language, input data 1.0.2): what reference managers and word processors read. */

import type { PersonName, Reference } from './reference.ts';

export type CslItem = Readonly<Record<string, unknown>>;

export function cslJson(references: readonly Reference[]): string {
  return `${JSON.stringify(references.map(cslItem), null, 2)}\n`;
}

export function cslItem(reference: Reference): CslItem {
  const { id, type, authors, year, usedFor, note } = reference;
  const notes = [note, usedFor.length === 0 ? null : `Used for: ${usedFor.join('; ')}.`];
  const given: Readonly<Record<string, string | null>> = {
    title: reference.title,
    'container-title': reference.container,
    volume: reference.volume,
    issue: reference.issue,
    page: reference.pages,
    publisher: reference.publisher,
    number: reference.number,
    edition: reference.edition,
    DOI: reference.doi,
    URL: reference.url,
    note: notes.filter((line) => line !== null).join(' ') || null,
  };
  return {
    id,
    type,
    ...(authors.length > 0 && { author: authors.map(cslName) }),
    ...(year !== null && { issued: { 'date-parts': [[year]] } }),
    ...Object.fromEntries(Object.entries(given).filter(([, value]) => value !== null)),
  };
}

const cslName = (name: PersonName): PersonName =>
  'literal' in name && name.literal === 'others' ? { literal: 'et al.' } : name;

/** One source as every list of references writes it: cleaned text, structured names. */

import type { UsedSource, WorkType } from '../../answer/cited/index.ts';
import { plainText } from '../scene/safeText.ts';

export type PersonName =
  | { readonly family: string; readonly given: string }
  /** A body, or a name as written. */
  | { readonly literal: string };

export interface Reference {
  readonly id: string;
  readonly type: WorkType;
  readonly authors: readonly PersonName[];
  readonly year: number | null;
  readonly title: string | null;
  readonly container: string | null;
  readonly volume: string | null;
  readonly issue: string | null;
  readonly pages: string | null;
  readonly publisher: string | null;
  readonly number: string | null;
  readonly edition: string | null;
  readonly doi: string | null;
  readonly url: string | null;
  /** As the study says where it is found. */ readonly note: string | null;
  readonly usedFor: readonly string[];
}

const clean = (text: string | null | undefined): string | null => {
  const plain = plainText(text ?? '').trim();
  return plain === '' ? null : plain;
};

export function referenceOf(used: UsedSource): Reference {
  return used.work === null ? ofStudy(used) : ofWork(used);
}

function ofWork({ id, work, cited, usedFor }: UsedSource): Reference {
  const own = work!;
  return {
    id,
    type: own.type,
    authors: own.authors.map(nameOf),
    year: own.year,
    title: own.title,
    container: own.container ?? null,
    volume: own.volume ?? null,
    issue: own.issue ?? null,
    pages: own.pages ?? null,
    publisher: own.publisher ?? null,
    number: own.number ?? null,
    edition: own.edition ?? null,
    doi: own.doi ?? null,
    url: own.url ?? null,
    note: cited === null ? null : clean(cited.where),
    usedFor: usedFor.map((line) => plainText(line)),
  };
}

/** `Family, Given`; `others` stands for those not named. */
function nameOf(name: string): PersonName {
  const [family = '', given] = name.split(', ');
  return given === undefined ? { literal: family } : { family, given };
}

function ofStudy({ id, cited, words, usedFor }: UsedSource): Reference {
  const where = cited?.where ?? '';
  const doi = /\b10\.\d{4,9}\/[^\s"<>]+/.exec(where)?.[0] ?? null;
  const url = /\bhttps?:\/\/[^\s"<>]+/.exec(where)?.[0] ?? null;
  return {
    id: plainText(id),
    type: url !== null && doi === null ? 'webpage' : 'document',
    authors: writtenNames(cited?.author ?? null),
    year: cited?.year ?? null,
    title: clean(cited?.title ?? words),
    container: null,
    volume: null,
    issue: null,
    pages: null,
    publisher: null,
    number: null,
    edition: null,
    doi: clean(withoutStop(doi)),
    url: clean(withoutStop(url)),
    note: clean(words === null ? where : 'Cited in words beside a published figure of the study.'),
    usedFor: usedFor.map((line) => plainText(line)),
  };
}

/** An address in running words, without the sign that ends the words. */
function withoutStop(address: string | null): string | null {
  const plain = address?.replace(/[.,;]+$/, '') ?? null;
  return plain?.endsWith(')') && !plain.includes('(') ? plain.slice(0, -1) : plain;
}

const INITIALS_FIRST = /^((?:\p{Lu}\p{L}?\.[ -]?)+)\s*(\p{L}[\p{L}’' -]+)$/u;

/** Names with initials first are taken apart; anything else stays one name as written. */
function writtenNames(author: string | null): readonly PersonName[] {
  const line = clean(author);
  if (line === null) return [];
  const parts = line.split(/\s*(?:,|;|&|\band\b)\s*/).filter((part) => part !== '');
  const names = parts.map((part) => INITIALS_FIRST.exec(part));
  if (names.some((name) => name === null)) return [{ literal: line }];
  return names.map((name) => ({ family: name![2]!, given: name![1]!.trim() }));
}

/** The program itself: what was computed is cited as its work. */
export function programReference(version: string, note: string): Reference {
  return {
    id: 'plumeline',
    type: 'software',
    authors: [],
    year: null,
    title: `Plumeline ${version}`,
    container: null,
    volume: null,
    issue: null,
    pages: null,
    publisher: null,
    number: null,
    edition: null,
    doi: null,
    url: null,
    note,
    usedFor: ['every computed number'],
  };
}

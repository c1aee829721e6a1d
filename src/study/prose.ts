/** Plain words of a study: prose of bounded length, ids, and the keys of sources that are cited. */
import { capital } from './capital.ts';
import {
  type Cursor,
  type Entries,
  entriesAt,
  holdsNothing,
  itemsAt,
  keyOffset,
  offsetAt,
  refuseOtherKeys,
  textAt,
} from './cursor.ts';
import { PLAIN_ID, reservedIds } from './form.ts';
import { nearestName } from './nearest.ts';
import { listNames, quote, type Report } from './report.ts';

const LONGEST_TEXT = 2000;

/** Text of at most 2000 signs, or null with a problem. */
export function proseAt(cursor: Cursor, expected: string, example: string, report: Report): string | null {
  const text = textAt(cursor, expected, `Write it like: ${example}`, report)?.trim() ?? null;
  if (text === null || text.length <= LONGEST_TEXT) return text;
  report.problem(
    {
      code: 'text-too-long',
      what: `${quote(cursor.path)} holds ${text.length} signs; up to ${LONGEST_TEXT} are allowed.`,
      mend: 'Shorten it.',
    },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

/**
 * A test as it is written; null where there is none, or nothing stands in it: that stops no study, for what it is to test stays
 * unchecked, and is told so.
 *
 * @param owner what it tests, e.g. `The sentence “lets-go”`
 * @param where its path by id
 */
export function testAt(
  cursor: Cursor | undefined,
  owner: string,
  where: string,
  example: string,
  report: Report,
): string | null {
  if (cursor === undefined) return null;
  if (!holdsNothing(cursor)) return proseAt(cursor, 'a test', example, report);
  report.warning(
    {
      code: 'test-empty',
      what: `${owner} has an empty test, so it is not checked.`,
      mend: `Write what must hold, for example ${example}, or take the line out.`,
    },
    where,
    offsetAt(cursor),
  );
  return null;
}

export function idFits(
  id: string,
  form: RegExp,
  at: Cursor,
  what: string,
  mend: string,
  report: Report,
): boolean {
  if (form.test(id) && !reservedIds.has(id)) return true;
  report.problem(
    {
      code: 'id-unfit',
      what: `${quote(id)} cannot name ${what}${reservedIds.has(id) ? ': the word has a meaning of its own' : ''}.`,
      mend,
    },
    at.path,
    at.key === null ? offsetAt(at) : keyOffset(at),
  );
  return false;
}

/** Said, unless the study says otherwise. */
export function saidAt(cursor: Cursor | undefined, what: string, report: Report): boolean {
  if (cursor === undefined) return true;
  const mend = `Write said: false for ${what} that is not meant to be said, or leave the key out.`;
  const word = textAt(cursor, 'true or false', mend, report)?.trim() ?? 'true';
  if (word === 'true' || word === 'false') return word === 'true';
  report.problem(
    { code: 'said-unreadable', what: `${quote(word)} is neither true nor false.`, mend },
    cursor.path,
    offsetAt(cursor),
  );
  return true;
}

/** The keys of one entry of a list, those that are needed among them; null with a problem where it is no map. */
export function entryAt(
  item: Cursor,
  what: string,
  allowed: readonly string[],
  needed: readonly string[],
  mend: string,
  report: Report,
): Entries | null {
  const entries = entriesAt(item, what, mend, report);
  if (entries === null) return null;
  refuseOtherKeys(entries, allowed, what, report);
  for (const key of needed) {
    if (entries.has(key)) continue;
    report.problem(
      { code: 'key-missing', what: `${capital(what)} at ${quote(item.path)} has no ${key}.`, mend },
      `${item.path}.${key}`,
      offsetAt(item),
    );
  }
  return entries;
}

/** The id of an entry, unlike those in `taken`, to which it is added; null with a problem. */
export function ownIdAt(
  cursor: Cursor | undefined,
  what: string,
  taken: Set<string>,
  report: Report,
): string | null {
  if (cursor === undefined) return null;
  const id = textAt(cursor, 'an id', 'Write it like id: first-flight.', report)?.trim();
  if (id === undefined) return null;
  const words = 'Use letters, digits, dashes, dots and underscores, up to 64 of them.';
  if (!idFits(id, PLAIN_ID, { ...cursor, key: null }, what, words, report)) return null;
  if (taken.has(id)) {
    report.problem(
      {
        code: 'id-twice',
        what: `The id ${quote(id)} stands twice among these.`,
        mend: 'Give each an id of its own.',
      },
      cursor.path,
      offsetAt(cursor),
    );
  }
  taken.add(id);
  return id;
}

/** Keys of the study's sources under `sources`; one that is none is a problem and left out. */
export function citedSources(
  cursor: Cursor | undefined,
  sourceIds: readonly string[],
  report: Report,
): readonly string[] {
  if (cursor === undefined) return [];
  const cited = itemsAt(cursor, 'a list of source ids', 'Write [stark2005].', report) ?? [];
  return cited.flatMap((at) => {
    const name = textAt(at, 'the id of a source', `Sources: ${listNames(sourceIds)}.`, report)?.trim();
    if (name === undefined) return [];
    if (sourceIds.includes(name)) return [name];
    const near = nearestName(name, sourceIds);
    report.problem(
      {
        code: 'source-unknown',
        what: `${quote(name)} is not among the sources of this study.`,
        mend: `${near === null ? '' : `Did you mean ${near}? `}Sources of this study: ${listNames(sourceIds)}.`,
      },
      at.path,
      offsetAt(at),
    );
    return [];
  });
}

/** Analogies of a study: what stands for what, and the legs on which the likeness stands. */
import { isScalar } from 'yaml';
import { courseOf } from './courseWords.ts';
import { type Cursor, type Entries, itemsAt, offsetAt, textAt } from './cursor.ts';
import { analogyKeys, breakKeys, courseKeys, legKeys, standsKeys } from './form.ts';
import type { AnalogyInput, BreakInput, LegCourse, LegInput, StandsFor } from './model.ts';
import { citedSources, entryAt, ownIdAt, proseAt, saidAt, testAt } from './prose.ts';
import { quote, type Report } from './report.ts';

const ANALOGY =
  'Write each as - { id: hose, say: …, stands: [{ this: the thumb, for: the throat }], legs: [{ say: …, holds: … }], holdsFor: …, breaksWhere: […] }.';
const BREAKS =
  'Put it in square brackets, breaksWhere: [gas is not water], or each on a line of its own behind a dash.';
const LEG = 'Write each as - { say: …, holds: a test } or - { say: …, as: { of: …, over: …, goes: up } }.';
const COURSE = 'Write as: { of: bell.massFlow, over: engines.bell.chamber.pressure, goes: in proportion }.';

export function readAnalogies(
  cursor: Cursor | undefined,
  sourceIds: readonly string[],
  report: Report,
): AnalogyInput[] {
  if (cursor === undefined) return [];
  const taken = new Set<string>();
  const needed = ['id', 'say', 'stands', 'legs', 'holdsFor', 'breaksWhere'];
  return (itemsAt(cursor, 'a list of analogies', ANALOGY, report) ?? []).flatMap((item) => {
    const entries = entryAt(item, 'an analogy', analogyKeys, needed, ANALOGY, report);
    if (entries === null) return [];
    const id = ownIdAt(entries.get('id'), 'an analogy', taken, report);
    const say = wordsOf(entries, 'say', 'A thumb over a hose.', report);
    const holdsFor = wordsOf(entries, 'holdsFor', 'slow flow that fills the pipe', report);
    const analogy = {
      said: saidAt(entries.get('said'), 'an analogy', report),
      stands: listOf(entries.get('stands'), report, standsAt),
      legs: oneMain(listOf(entries.get('legs'), report, legAt), entries.get('legs'), report),
      breaksWhere: listOf(entries.get('breaksWhere'), report, breakAt, BREAKS),
      sources: citedSources(entries.get('sources'), sourceIds, report),
      path: item.path,
    };
    return id === null || say === null || holdsFor === null ? [] : [{ id, say, holdsFor, ...analogy }];
  });
}

const wordsOf = (entries: Entries, key: string, example: string, report: Report): string | null => {
  const at = entries.get(key);
  return at === undefined ? null : proseAt(at, 'text', `${key}: ${example}`, report);
};

function listOf<T>(
  cursor: Cursor | undefined,
  report: Report,
  read: (item: Cursor, report: Report) => T | null,
  mend = ANALOGY,
): T[] {
  if (cursor === undefined) return [];
  const items = itemsAt(cursor, 'a list', mend, report);
  if (items === null) return [];
  if (items.length === 0) {
    report.problem(
      { code: 'list-empty', what: `${quote(cursor.path)} holds nothing.`, mend },
      cursor.path,
      offsetAt(cursor),
    );
  }
  return items.flatMap((item) => read(item, report) ?? []);
}

function standsAt(item: Cursor, report: Report): StandsFor | null {
  const mend = 'Write each as - { this: the thumb, for: the throat, relation: throat.area }.';
  const entries = entryAt(item, 'what stands for what', standsKeys, ['this', 'for'], mend, report);
  if (entries === null) return null;
  const [one, other] = [
    wordsOf(entries, 'this', 'the thumb', report),
    wordsOf(entries, 'for', 'the throat', report),
  ];
  const relation = wordsOf(entries, 'relation', 'throat.area', report);
  return one === null || other === null ? null : { this: one, for: other, relation };
}

function legAt(item: Cursor, report: Report): LegInput | null {
  const entries = entryAt(item, 'a leg', legKeys, ['say'], LEG, report);
  if (entries === null) return null;
  const say = wordsOf(entries, 'say', 'A smaller opening makes it faster.', report);
  const courseAt = entries.get('as');
  if (entries.has('holds') && courseAt !== undefined) {
    report.problem(
      {
        code: 'leg-two-ways',
        what: `The leg at ${quote(item.path)} has both holds and as.`,
        mend: 'Keep one, or make it two legs.',
      },
      courseAt.path,
      offsetAt(courseAt),
    );
  }
  const leg = {
    main: mainAt(entries.get('main'), report),
    holds: testAt(
      entries.get('holds'),
      `The leg ${quote(say ?? item.path)}`,
      `${item.path}.holds`,
      'holds: bell.exit.velocity > bell.throat.velocity',
      report,
    ),
    as: courseAt === undefined ? null : legCourseAt(courseAt, report),
    path: item.path,
  };
  return say === null ? null : { say, ...leg };
}

function mainAt(cursor: Cursor | undefined, report: Report): boolean {
  if (cursor === undefined) return false;
  const mend = 'Write main: true for the leg that is the point of the likeness, or leave the key out.';
  const word = textAt(cursor, 'true or false', mend, report)?.trim() ?? 'false';
  if (word !== 'true' && word !== 'false') {
    report.problem(
      { code: 'main-unreadable', what: `${quote(word)} is neither true nor false.`, mend },
      cursor.path,
      offsetAt(cursor),
    );
  }
  return word === 'true';
}

/** Where no leg is marked, the first is the main one. */
function oneMain(legs: readonly LegInput[], cursor: Cursor | undefined, report: Report): readonly LegInput[] {
  const marked = legs.filter(({ main }) => main);
  if (marked.length === 0) return legs.map((leg, i) => ({ ...leg, main: i === 0 }));
  if (marked.length > 1 && cursor !== undefined) {
    report.problem(
      {
        code: 'main-twice',
        what: `${marked.length} legs are marked as the main one.`,
        mend: 'Keep main: true on one of them.',
      },
      marked[1]!.path,
      offsetAt(cursor),
    );
  }
  return legs;
}

function legCourseAt(cursor: Cursor, report: Report): LegCourse | null {
  const entries = entryAt(cursor, 'the course of a leg', courseKeys, ['of', 'over', 'goes'], COURSE, report);
  if (entries === null) return null;
  const [of, over] = [
    wordsOf(entries, 'of', 'bell.massFlow', report),
    wordsOf(entries, 'over', 'altitude', report),
  ];
  const [from, to] = [wordsOf(entries, 'from', '50 bar', report), wordsOf(entries, 'to', '200 bar', report)];
  const goesAt = entries.get('goes');
  const text = goesAt === undefined ? undefined : textAt(goesAt, 'how it goes', COURSE, report);
  if (goesAt === undefined || text === undefined || text === null) return null;
  const goes = courseOf(text);
  if (!goes.ok) {
    report.problem(goes.problem, goesAt.path, offsetAt(goesAt));
    return null;
  }
  return of === null || over === null ? null : { of, over, from, to, goes: goes.value };
}

/** Words alone, or words with the test that holds where it breaks. */
function breakAt(item: Cursor, report: Report): BreakInput | null {
  const mend = 'Write each as words, or as - { say: …, when: a test that holds where it breaks }.';
  if (isScalar(item.node)) {
    const say = proseAt(item, 'text', 'where the flow is faster than sound', report);
    return say === null ? null : { say, when: null };
  }
  const entries = entryAt(item, 'a place where it breaks', breakKeys, ['say'], mend, report);
  const say = entries && wordsOf(entries, 'say', 'where the flow is faster than sound', report);
  if (entries === null || say === null) return null;
  const when = testAt(
    entries.get('when'),
    `${quote(say)}`,
    `${item.path}.when`,
    'when: bell.exit.mach > 1',
    report,
  );
  return { say, when };
}

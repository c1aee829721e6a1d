/** The head of a script between two lines `---`: pace, units, cuts. */

import {
  type Cursor,
  choiceAt,
  type Entries,
  entriesAt,
  itemsAt,
  keyOffset,
  offsetAt,
  quantityAt,
  refuseOtherKeys,
  textAt,
} from '../cursor.ts';
import { PLAIN_ID } from '../form.ts';
import type { StudyProblem } from '../model.ts';
import { quote, type Report } from '../report.ts';
import { readYaml } from '../yamlText.ts';
import type { Named } from './attributes.ts';
import type { CutAsked, ScriptUnits } from './model.ts';
import type { ScriptSource } from './source.ts';

export interface FrontMatter {
  readonly pace: number;
  readonly densePace: number;
  readonly units: ScriptUnits;
  readonly cuts: readonly CutAsked[];
  /** Every line or scene that a cut names, with its place. */ readonly named: readonly Named[];
  /** Where the words begin. */ readonly end: number;
  readonly problems: readonly StudyProblem[];
}

/** Words a minute. Common practice for talk with numbers in it, no source. */
export const USUAL_PACE = 140;
/** The same where numbers follow each other. Common practice, no source. */
export const USUAL_DENSE_PACE = 120;
const [SLOWEST, FASTEST] = [40, 400];
/** [s] */
const [SHORTEST_CUT, LONGEST_CUT] = [5, 6 * 3600];
const MOST_CUTS = 20;
const HEAD = /^[ \t]*\n*---[ \t]*\n/;
const TAIL = /^---[ \t]*(?:\n|$)/m;
const UNITS: readonly ScriptUnits[] = ['metric', 'customary', 'both'];

export function readFrontMatter({ text, report }: ScriptSource, file: string): FrontMatter {
  const usual = {
    pace: USUAL_PACE,
    densePace: USUAL_DENSE_PACE,
    units: 'metric',
    cuts: [],
    named: [],
    problems: [],
  } as const;
  const head = HEAD.exec(text)?.[0];
  if (head === undefined) return { ...usual, end: 0 };
  const tail = TAIL.exec(text.slice(head.length));
  if (tail === null) {
    report.problem(
      {
        code: 'head-open',
        what: 'A line --- begins the head of the script here, and no second one ends it.',
        mend: 'Write --- behind the head, or take this one out.',
      },
      '',
      0,
    );
    return { ...usual, end: head.length };
  }
  const end = head.length + tail.index;
  // The fence gives way to spaces, so that every place stays where it is in the file.
  const yaml = readYaml(`${head.replace(/-/g, ' ')}${text.slice(head.length, end)}`, file);
  const { document } = yaml;
  const node = document?.contents ?? null;
  const isEmpty =
    text
      .slice(head.length, end)
      .replace(/^\s*#.*$/gm, '')
      .trim() === '';
  const found =
    node === null || isEmpty
      ? { ...usual }
      : { ...usual, ...headOf({ node, key: null, path: '' }, yaml.report) };
  return { ...found, end: end + tail[0].length, problems: yaml.report.problems };
}

const KEYS = ['pace', 'densePace', 'units', 'cuts'];

function headOf(cursor: Cursor, report: Report): Partial<FrontMatter> {
  const entries = entriesAt(cursor, 'a map of keys', 'Write keys such as units: metric.', report);
  if (entries === null) return {};
  refuseOtherKeys(entries, KEYS, 'the head of a script', report);
  const units = entries.get('units');
  const named: Named[] = [];
  const cuts = cutsAt(entries.get('cuts'), named, report);
  const pace = paceAt(entries.get('pace'), report);
  const densePace = paceAt(entries.get('densePace'), report);
  const choice =
    units === undefined
      ? null
      : choiceAt(units, { is: 'choice', options: UNITS, meaning: 'units of the audience' }, report);
  return {
    ...(pace !== null && { pace }),
    ...(densePace !== null
      ? { densePace }
      : pace !== null && { densePace: Math.min(pace, USUAL_DENSE_PACE) }),
    ...(choice !== null && { units: choice }),
    cuts,
    named,
  };
}

function paceAt(cursor: Cursor | undefined, report: Report): number | null {
  if (cursor === undefined) return null;
  const mend = `Write words a minute, from ${SLOWEST} to ${FASTEST}, like ${USUAL_PACE}.`;
  const text = textAt(cursor, 'a pace', mend, report)
    ?.trim()
    .replace(/ words (?:a|per) minute$/, '');
  if (text === undefined) return null;
  const pace = /^\d{1,3}$/.test(text) ? Number(text) : Number.NaN;
  if (pace >= SLOWEST && pace <= FASTEST) return pace;
  report.problem(
    { code: 'pace-unfit', what: `${quote(text)} is no pace.`, mend },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

function cutsAt(cursor: Cursor | undefined, named: Named[], report: Report): readonly CutAsked[] {
  if (cursor === undefined) return [];
  const entries = entriesAt(cursor, 'cuts by name', 'Write cuts: { short: { length: 40 s } }.', report);
  if (entries === null) return [];
  const all = [...entries];
  if (all.length > MOST_CUTS) {
    report.problem(
      {
        code: 'too-many-cuts',
        what: `There are ${all.length} cuts; up to ${MOST_CUTS} are read.`,
        mend: 'Take some out.',
      },
      cursor.path,
      offsetAt(cursor),
    );
  }
  return all.slice(0, MOST_CUTS).flatMap(([name, at]) => cutAt(name, at, named, report) ?? []);
}

function cutAt(name: string, cursor: Cursor, named: Named[], report: Report): CutAsked | null {
  if (!PLAIN_ID.test(name)) {
    report.problem(
      {
        code: 'id-unfit',
        what: `${quote(name)} cannot name a cut.`,
        mend: 'Use letters, digits, dashes, dots and underscores.',
      },
      cursor.path,
      keyOffset(cursor),
    );
    return null;
  }
  const entries = entriesAt(cursor, 'a cut', 'Write { length: 40 s }.', report);
  if (entries === null) return null;
  refuseOtherKeys(entries, ['length', 'keep', 'leave'], `the cut ${name}`, report);
  const at = entries.get('length');
  if (at === undefined) {
    report.problem(
      {
        code: 'key-missing',
        what: `The cut ${quote(name)} has no length.`,
        mend: 'Write { length: 40 s } or { length: 10 min }.',
      },
      cursor.path,
      keyOffset(cursor),
    );
    return null;
  }
  const range = { from: SHORTEST_CUT, upTo: LONGEST_CUT, words: 'from 5 s to 6 h' };
  const length = quantityAt(at, ['time'], range, '40 s', report);
  if (length === null) return null;
  const ids = (key: string): readonly string[] => idsAt(entries, key, named, report);
  return { name, length: length.value, keep: ids('keep'), leave: ids('leave') };
}

function idsAt(entries: Entries, key: string, named: Named[], report: Report): readonly string[] {
  const cursor = entries.get(key);
  if (cursor === undefined) return [];
  const mend = 'Write ids of lines or scenes in a list: [why, pad].';
  return (itemsAt(cursor, 'a list of ids', mend, report) ?? []).flatMap((item) => {
    const id = textAt(item, 'an id', mend, report)?.trim();
    if (id === undefined) return [];
    named.push({ id, at: offsetAt(item) ?? 0 });
    return [id];
  });
}

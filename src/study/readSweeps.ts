/** Reading of the sweeps and maps of a study. */

import { isSeq } from 'yaml';
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
} from './cursor.ts';
import type { MapInput, NeedInput, Quantity, SweepInput, SweptInput } from './model.ts';
import { nearestName } from './nearest.ts';
import { entryAt, ownIdAt, proseAt } from './prose.ts';
import { listNames, quote, type Report } from './report.ts';
import {
  mapKeys,
  mapPoints,
  nearestSwept,
  needKeys,
  type SweptKind,
  stepsField,
  sweepKeys,
  sweepPoints,
  sweptConditions,
  sweptKeys,
  sweptKindOf,
} from './sweepForm.ts';

const MOST = 50;
const MOST_CURVES = 8;
const NEED_EXAMPLE =
  '- { id: as-good, so: bell.specificImpulse(vacuum) >= plug.specificImpulse(vacuum), over: nozzle.areaRatio, engines: bell }';
const EXAMPLE =
  '- { id: area-ratio, of: bell.specificImpulse(vacuum), over: nozzle.areaRatio, from: 10, to: 100 }';
const MAP_EXAMPLE =
  '- { id: best-mixture, of: bell.specificImpulse(vacuum), across: { over: propellants.ratio, from: 2, to: 5 }, up: { over: nozzle.areaRatio, from: 10, to: 100 } }';

interface Reading {
  readonly engineIds: readonly string[];
  readonly report: Report;
}

export function readSweeps(
  cursor: Cursor | undefined,
  engineIds: readonly string[],
  report: Report,
): readonly SweepInput[] {
  const reading = { engineIds, report };
  return itemsWithIds(cursor, 'sweep', EXAMPLE, sweepKeys, report).flatMap(({ id, item, entries }) => {
    const of = textsAt(entries.get('of'), item, EXAMPLE, report);
    const range = rangeAt(item, entries, 'over: nozzle.areaRatio', reading);
    const rest = commonAt(entries, sweepPoints, reading);
    return of === null || range === null ? [] : [{ id, of, range, ...rest, path: item.path }];
  });
}

export function readMaps(
  cursor: Cursor | undefined,
  engineIds: readonly string[],
  report: Report,
): readonly MapInput[] {
  const reading = { engineIds, report };
  return itemsWithIds(cursor, 'map', MAP_EXAMPLE, mapKeys, report).flatMap(({ id, item, entries }) => {
    const ofAt = neededAt(entries, 'of', item, MAP_EXAMPLE, report);
    const of = ofAt && proseAt(ofAt, 'an expression', 'of: bell.specificImpulse(vacuum)', report);
    const [across, up] = (['across', 'up'] as const).map((key) => sideAt(key, item, entries, reading));
    const rest = commonAt(entries, mapPoints, reading);
    if (!of || !across || !up) return [];
    return [{ id, of, across, up, ...rest, path: item.path }];
  });
}

/** A need: a comparison that is to hold, and the input that is to see to it. */
export function readNeeds(
  cursor: Cursor | undefined,
  engineIds: readonly string[],
  report: Report,
): readonly NeedInput[] {
  const reading = { engineIds, report };
  return itemsWithIds(cursor, 'need', NEED_EXAMPLE, needKeys, report).flatMap(({ id, item, entries }) => {
    const soAt = neededAt(entries, 'so', item, NEED_EXAMPLE, report);
    const so = soAt && proseAt(soAt, 'a comparison', 'so: bell.thrust(pad) >= plug.thrust(pad)', report);
    const range = rangeAt(item, entries, 'over: nozzle.areaRatio', reading);
    const { title, engines } = commonAt(entries, sweepPoints, reading);
    return !so || range === null ? [] : [{ id, title, so, range, engines, path: item.path }];
  });
}

function sideAt(key: 'across' | 'up', item: Cursor, entries: Entries, reading: Reading): SweptInput | null {
  const { report } = reading;
  const at = neededAt(entries, key, item, MAP_EXAMPLE, report);
  const inside =
    at && entriesAt(at, 'what moves', 'Write { over: nozzle.areaRatio, from: 10, to: 100 }.', report);
  if (!at || inside === null) return null;
  refuseOtherKeys(inside, sweptKeys, key, report);
  return rangeAt(at, inside, 'over: nozzle.areaRatio', reading);
}

interface Item {
  readonly id: string;
  readonly item: Cursor;
  readonly entries: Entries;
}

function itemsWithIds(
  cursor: Cursor | undefined,
  what: string,
  example: string,
  keys: readonly string[],
  report: Report,
): readonly Item[] {
  if (cursor === undefined) return [];
  const mend = `Write each as ${example}.`;
  const items = itemsAt(cursor, `a list of ${what}s`, mend, report) ?? [];
  if (items.length > MOST) {
    report.problem(
      {
        code: 'too-many-values',
        what: `${quote(cursor.path)} lists ${items.length} ${what}s; up to ${MOST} are read.`,
        mend: 'Keep those that are shown.',
      },
      cursor.path,
      offsetAt(cursor),
    );
    return [];
  }
  const taken = new Set<string>();
  return items.flatMap((item) => {
    const entries = entryAt(item, `a ${what}`, keys, ['id'], mend, report);
    const id = entries && ownIdAt(entries.get('id'), `a ${what}`, taken, report);
    return entries === null || id === null ? [] : [{ id, item, entries }];
  });
}

function neededAt(
  entries: Entries,
  key: string,
  item: Cursor,
  example: string,
  report: Report,
): Cursor | null {
  const at = entries.get(key);
  if (at !== undefined) return at;
  report.problem(
    { code: 'key-missing', what: `${quote(item.path)} has no ${key}.`, mend: `Write it like ${example}.` },
    `${item.path}.${key}`,
    offsetAt(item),
  );
  return null;
}

/** One expression, or a list of them. */
function textsAt(
  cursor: Cursor | undefined,
  item: Cursor,
  example: string,
  report: Report,
): readonly string[] | null {
  if (cursor === undefined) {
    neededAt(new Map(), 'of', item, example, report);
    return null;
  }
  const prose = (at: Cursor) => proseAt(at, 'an expression', 'bell.specificImpulse(vacuum)', report);
  if (!isSeq(cursor.node)) {
    const text = prose(cursor);
    return text === null ? null : [text];
  }
  const items = itemsAt(cursor, 'a list of expressions', `Write it like ${example}.`, report) ?? [];
  if (items.length === 0 || items.length > MOST_CURVES) {
    report.problem(
      {
        code: 'sweep-curves',
        what: `${quote(cursor.path)} lists ${items.length} expressions; from 1 to ${MOST_CURVES} are drawn.`,
        mend: 'Split the sweep, or leave some out.',
      },
      cursor.path,
      offsetAt(cursor),
    );
    return null;
  }
  const texts = items.map(prose);
  return texts.includes(null) ? null : (texts as string[]);
}

function rangeAt(item: Cursor, entries: Entries, example: string, { report }: Reading): SweptInput | null {
  const overAt = neededAt(entries, 'over', item, example, report);
  const over = overAt && textAt(overAt, 'the name of an input', `Write it like ${example}.`, report)?.trim();
  if (!overAt || !over) return null;
  const kind = sweptKindOf(over);
  if (kind === null) {
    const near = nearestSwept(over);
    report.problem(
      {
        code: 'sweep-input-unknown',
        what: `${quote(over)} is nothing that can be swept.`,
        mend: `${near === null ? '' : `Did you mean ${near}? `}Write an input as it stands below an engine or a vehicle, such as nozzle.areaRatio or first.dry, or ${listNames(Object.keys(sweptConditions))}.`,
      },
      overAt.path,
      offsetAt(overAt),
    );
    return null;
  }
  const [fromAt, toAt] = [entries.get('from'), entries.get('to')];
  const [from, to] = [endAt(fromAt, kind, report), endAt(toAt, kind, report)];
  if ((fromAt !== undefined && from === null) || (toAt !== undefined && to === null)) return null;
  if (from !== null && to !== null && from.value === to.value) {
    report.problem(
      {
        code: 'sweep-without-width',
        what: `The sweep ${quote(item.path)} ends where it begins.`,
        mend: 'Give two different values as from and to.',
      },
      to.path,
      keyOffset(toAt!),
    );
    return null;
  }
  const stepsAt = entries.get('steps');
  const steps = stepsAt === undefined ? null : choiceAt(stepsAt, stepsField, report);
  if (from === null || to === null || from.value < to.value)
    return { over, from, to, steps, path: item.path };
  report.warning(
    {
      code: 'sweep-backwards',
      what: `The sweep ${quote(item.path)} begins at ${from.text} and ends at ${to.text}, below it; it is taken from ${to.text} to ${from.text}.`,
      mend: `Write the smaller value as from: from: ${to.text}, to: ${from.text}.`,
    },
    to.path,
    keyOffset(toAt!),
  );
  return { over, from: to, to: from, steps, path: item.path };
}

function endAt(cursor: Cursor | undefined, kind: SweptKind, report: Report): Quantity | null {
  if (cursor === undefined) return null;
  const read = quantityAt(cursor, kind.kinds, kind.range, kind.example, report);
  if (read === null) return null;
  const { kind: _, ...quantity } = read;
  if (quantity.plusMinus === null) return quantity;
  report.problem(
    {
      code: 'sweep-end-uncertain',
      what: `${quote(quantity.text)} in ${quote(cursor.path)} has a ±; an end of a sweep has none.`,
      mend: 'Write the value alone.',
    },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

function commonAt(
  entries: Entries,
  allowed: { readonly least: number; readonly most: number },
  { engineIds, report }: Reading,
): Pick<SweepInput, 'title' | 'engines' | 'points'> {
  const titleAt = entries.get('title');
  const title = titleAt ? proseAt(titleAt, 'a title', 'title: What a longer nozzle gives', report) : null;
  return {
    title,
    engines: enginesAt(entries.get('engines'), engineIds, report),
    points: pointsAt(entries.get('points'), allowed, report),
  };
}

function enginesAt(
  cursor: Cursor | undefined,
  engineIds: readonly string[],
  report: Report,
): readonly string[] | null {
  if (cursor === undefined) return null;
  const mend = `Engines of this study: ${listNames(engineIds)}.`;
  const items = isSeq(cursor.node) ? (itemsAt(cursor, 'a list of engines', mend, report) ?? []) : [cursor];
  if (items.length === 0) return null;
  return items.flatMap((at) => {
    const id = textAt(at, 'the id of an engine', mend, report)?.trim();
    if (id === undefined) return [];
    if (engineIds.includes(id)) return [id];
    const near = nearestName(id, engineIds);
    report.problem(
      {
        code: 'engine-unknown',
        what: `${quote(id)} is not an engine of this study.`,
        mend: `${near === null ? '' : `Did you mean ${near}? `}${mend}`,
      },
      at.path,
      offsetAt(at),
    );
    return [];
  });
}

function pointsAt(
  cursor: Cursor | undefined,
  { least, most }: { readonly least: number; readonly most: number },
  report: Report,
): number | null {
  if (cursor === undefined) return null;
  const mend = `Write a whole number from ${least} to ${most}.`;
  const text = textAt(cursor, 'a number of points', mend, report)?.trim();
  if (text === undefined) return null;
  const points = Number(text);
  if (/^\d{1,4}$/.test(text) && points >= least && points <= most) return points;
  report.problem(
    { code: 'sweep-points', what: `${quote(text)} is no number of points.`, mend },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

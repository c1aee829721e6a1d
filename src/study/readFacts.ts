/** Reported facts of a study: what no computation decides, each with its citation. */
import { type Cursor, itemsAt, offsetAt, quantityAt, textAt } from './cursor.ts';
import { disagreeKeys, factKeys } from './form.ts';
import type { Disagreement, Quantity, ReportedFact, ReportedValue } from './model.ts';
import { nearestName } from './nearest.ts';
import { entryAt, ownIdAt, proseAt } from './prose.ts';
import { listNames, quote, type Report } from './report.ts';
import { type QuantityKind, quantityKinds } from './unitTable.ts';

const FACT = 'Write each as - { id: first-run, say: …, sources: [a-source] }.';
const DISAGREE =
  'Write disagree: { values: [{ value: 812 kN, source: a }, { value: 805 kN, source: b }], chosen: 1, because: … }.';
const kinds = Object.keys(quantityKinds) as QuantityKind[];

export function readFacts(
  cursor: Cursor | undefined,
  sourceIds: readonly string[],
  report: Report,
): ReportedFact[] {
  if (cursor === undefined) return [];
  const taken = new Set<string>();
  return (itemsAt(cursor, 'a list of facts', FACT, report) ?? []).flatMap((item) => {
    const entries = entryAt(item, 'a fact', factKeys, ['id', 'say'], FACT, report);
    if (entries === null) return [];
    const id = ownIdAt(entries.get('id'), 'a fact', taken, report);
    const prose = (key: 'say' | 'at', example: string): string | null => {
      const at = entries.get(key);
      return at === undefined ? null : proseAt(at, 'text', `${key}: ${example}`, report);
    };
    const say = prose('say', 'The first of them ran in 1961.');
    const valueAt = entries.get('value');
    const disagreeAt = entries.get('disagree');
    const fact = {
      value: valueAt === undefined ? null : anyQuantity(valueAt, report),
      at: prose('at', 'on the stand, full throttle'),
      sources: citedAt(entries.get('sources'), item, sourceIds, report),
      disagree: disagreeAt === undefined ? null : readDisagree(disagreeAt, sourceIds, report),
      path: item.path,
    };
    return id === null || say === null ? [] : [{ id, say, ...fact }];
  });
}

function anyQuantity(cursor: Cursor, report: Report): Quantity | null {
  const read = quantityAt(cursor, kinds, { words: 'any' }, '812 kN', report);
  if (read === null) return null;
  const { kind: _, ...quantity } = read;
  return quantity;
}

/** A fact without its citation does not keep the study from being solved: it is warned of here, and refused by the check. */
function citedAt(
  cursor: Cursor | undefined,
  fact: Cursor,
  sourceIds: readonly string[],
  report: Report,
): readonly string[] {
  const mend = `Name one of the sources of this study: ${listNames(sourceIds)}.`;
  const items =
    cursor === undefined ? [] : (itemsAt(cursor, 'a list of source ids', 'Write [a-source].', report) ?? []);
  const cited = items.flatMap((at) => {
    const name = textAt(at, 'the id of a source', mend, report)?.trim();
    return name === undefined ? [] : [{ at, name }];
  });
  if (cited.length === 0) {
    const what = `The fact at ${quote(fact.path)} has no source; a reported fact needs one.`;
    report.warning(
      { code: 'citation-missing', what, mend },
      `${fact.path}.sources`,
      offsetAt(cursor ?? fact),
    );
  }
  for (const { at, name } of cited) warnIfUnknown(name, at, sourceIds, report);
  return cited.map(({ name }) => name);
}

function warnIfUnknown(name: string, at: Cursor, sourceIds: readonly string[], report: Report): void {
  if (sourceIds.includes(name)) return;
  const near = nearestName(name, sourceIds);
  report.warning(
    {
      code: 'citation-unknown',
      what: `${quote(name)} is not among the sources of this study.`,
      mend: `${near === null ? '' : `Did you mean ${near}? `}Sources of this study: ${listNames(sourceIds)}.`,
    },
    at.path,
    offsetAt(at),
  );
}

function readDisagree(cursor: Cursor, sourceIds: readonly string[], report: Report): Disagreement | null {
  const entries = entryAt(cursor, 'a disagreement', disagreeKeys, disagreeKeys, DISAGREE, report);
  if (entries === null) return null;
  const valuesAt = entries.get('values');
  const items = valuesAt === undefined ? null : itemsAt(valuesAt, 'a list of two values', DISAGREE, report);
  if (valuesAt !== undefined && items !== null && items.length !== 2) {
    report.problem(
      {
        code: 'disagree-not-two',
        what: `${items.length === 1 ? 'One value is' : `${items.length} values are`} given where sources disagree; two are expected.`,
        mend: DISAGREE,
      },
      valuesAt.path,
      offsetAt(valuesAt),
    );
  }
  const values = (items ?? []).flatMap((item) => reportedValueAt(item, sourceIds, report) ?? []);
  const chosen = chosenAt(entries.get('chosen'), report);
  const becauseAt = entries.get('because');
  const because =
    becauseAt === undefined
      ? null
      : proseAt(becauseAt, 'a reason', 'because: it is the primary source', report);
  const [first, second, ...more] = values;
  if (first === undefined || second === undefined || more.length > 0 || chosen === null || because === null)
    return null;
  return { values: [first, second], chosen, because };
}

function reportedValueAt(item: Cursor, sourceIds: readonly string[], report: Report): ReportedValue | null {
  const keys = ['value', 'source'];
  const entries = entryAt(item, 'a value of a source', keys, keys, DISAGREE, report);
  const [valueAt, sourceAt] = [entries?.get('value'), entries?.get('source')];
  if (valueAt === undefined || sourceAt === undefined) return null;
  const value = anyQuantity(valueAt, report);
  const source = textAt(sourceAt, 'the id of a source', DISAGREE, report)?.trim();
  if (value === null || source === undefined) return null;
  warnIfUnknown(source, sourceAt, sourceIds, report);
  return { value, source };
}

function chosenAt(cursor: Cursor | undefined, report: Report): 1 | 2 | null {
  if (cursor === undefined) return null;
  const mend = 'Write chosen: 1 for the first of the two values, or chosen: 2 for the second.';
  const text = textAt(cursor, '1 or 2', mend, report)?.trim();
  if (text === undefined) return null;
  if (text === '1' || text === '2') return text === '1' ? 1 : 2;
  report.problem(
    { code: 'chosen-unreadable', what: `${quote(text)} is neither 1 nor 2.`, mend },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

/** The section `measured` of a study: a file each, with the engine that was measured and the source. */

import { type Cursor, itemsAt, offsetAt, textAt } from '../cursor.ts';
import { nearestName } from '../nearest.ts';
import { entryAt, ownIdAt, proseAt } from '../prose.ts';
import { listNames, quote, type Report } from '../report.ts';
import { parseQuantity } from '../units.ts';
import type { MeasuredInput } from './model.ts';

export const measuredKeys = ['id', 'title', 'file', 'of', 'source', 'at'] as const;
const EACH = 'Write each as - { id: stand-run, file: stand-run.csv, of: bell, source: a-source }.';
/** A plain name of a CSV file: nothing above or beside the study's folder. */
export const MEASURED_FILE = /^[\w][\w .-]{0,99}\.csv$/iu;

export function readMeasured(
  cursor: Cursor | undefined,
  known: {
    readonly engineIds: readonly string[];
    readonly vehicleIds: readonly string[];
    readonly sourceIds: readonly string[];
  },
  report: Report,
): readonly MeasuredInput[] {
  if (cursor === undefined) return [];
  const taken = new Set<string>();
  return (itemsAt(cursor, 'a list of measured points', EACH, report) ?? []).flatMap((item) => {
    const entries = entryAt(
      item,
      'a set of measured points',
      measuredKeys,
      ['id', 'file', 'of', 'source'],
      EACH,
      report,
    );
    if (entries === null) return [];
    const id = ownIdAt(entries.get('id'), 'a set of measured points', taken, report);
    const titleAt = entries.get('title');
    const title = titleAt ? proseAt(titleAt, 'a title', 'title: Stand runs', report) : null;
    const file = fileAt(entries.get('file'), report);
    const of = oneOf(
      entries.get('of'),
      'engine or vehicle',
      [...known.engineIds, ...known.vehicleIds],
      report,
    );
    const source = oneOf(entries.get('source'), 'source', known.sourceIds, report);
    const at = surroundingsAt(entries.get('at'), report);
    if (id === null || file === null || of === null || source === null) return [];
    return [{ id, title, file, of, source, at, path: item.path }];
  });
}

function fileAt(cursor: Cursor | undefined, report: Report): string | null {
  if (cursor === undefined) return null;
  const mend = 'Write file: stand-run.csv, a file beside study.yaml.';
  const name = textAt(cursor, 'the name of a file', mend, report)?.trim();
  if (name === undefined) return null;
  if (MEASURED_FILE.test(name)) return name;
  report.problem(
    {
      code: 'measured-file',
      what: `${quote(name)} is not the name of a CSV file beside the study.`,
      why: 'Only files inside the folder of the study are read.',
      mend,
    },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

function oneOf(
  cursor: Cursor | undefined,
  what: 'engine or vehicle' | 'source',
  ids: readonly string[],
  report: Report,
): string | null {
  if (cursor === undefined) return null;
  const mend = `${what === 'source' ? 'Sources' : 'Engines and vehicles'} of this study: ${listNames(ids)}.`;
  const id = textAt(
    cursor,
    `the id of ${what === 'source' ? 'a source' : 'an engine or a vehicle'}`,
    mend,
    report,
  )?.trim();
  if (id === undefined) return null;
  if (ids.includes(id)) return id;
  const near = nearestName(id, ids);
  report.problem(
    {
      code: what === 'source' ? 'measured-source' : 'measured-engine',
      what: `${quote(id)} is not ${what === 'source' ? 'among the sources' : 'an engine or a vehicle'} of this study.`,
      mend: `${near === null ? '' : `Did you mean ${near}? `}${mend}`,
    },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

function surroundingsAt(cursor: Cursor | undefined, report: Report): MeasuredInput['at'] {
  if (cursor === undefined) return null;
  const mend = 'Write at: vacuum, at: 0 km or at: 0.97 bar.';
  const text = textAt(cursor, 'an altitude, a pressure or vacuum', mend, report)?.trim();
  if (text === undefined) return null;
  if (text === 'vacuum') return { kind: 'vacuum' };
  const altitude = parseQuantity(text, 'length');
  if (altitude.ok) return { kind: 'altitude', value: altitude.value.value };
  const pressure = parseQuantity(text, 'pressure');
  if (pressure.ok) return { kind: 'pressure', value: pressure.value.value };
  report.problem(
    { code: 'measured-at', what: `${quote(text)} is no altitude, no pressure and not vacuum.`, mend },
    cursor.path,
    offsetAt(cursor),
  );
  return null;
}

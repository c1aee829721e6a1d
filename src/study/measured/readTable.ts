/**
 * A table of measured points: comma-separated values (RFC 4180). The header names each quantity with its unit in
 * square brackets, the place of the points first, and after a quantity, as one likes, its ± with two standard deviations:
 *
 *   altitude [km], thrust [kN], ± thrust [kN]
 */

import type { StudyProblem } from '../model.ts';
import { quote } from '../report.ts';
import { differenceToSI, findUnit, toSI } from '../units.ts';
import type { Unit } from '../unitTable.ts';
import type { MeasuredColumn, MeasuredTable } from './model.ts';
import { type CsvCell, readCsv } from './readCsv.ts';

export type MeasuredTableOutcome =
  | { readonly ok: true; readonly table: MeasuredTable }
  | { readonly ok: false; readonly problems: readonly StudyProblem[] };

const MOST_ROWS = 10_000;
const MOST_COLUMNS = 40;
const PLAIN: Unit = { dimension: [0, 0, 0, 0, 0, 0], times: 1, over: 1 };
const HEADER = 'Write the header as: altitude [km], thrust [kN], ± thrust [kN]';

interface Head {
  readonly name: string;
  readonly unitText: string;
  readonly unit: Unit;
  readonly isPlusMinus: boolean;
}

export function readMeasuredTable(text: string, file: string): MeasuredTableOutcome {
  const problems: StudyProblem[] = [];
  const add = (cell: Pick<CsvCell, 'line' | 'column'>, code: string, what: string, mend: string): void => {
    if (problems.length < 100)
      problems.push({
        code,
        what,
        mend,
        where: `${file}:${cell.line}:${cell.column}`,
        file,
        place: { line: cell.line, column: cell.column },
        path: '',
      });
  };
  const [head = [], ...rows] = readCsv(text);
  if (head.length < 2 || rows.length === 0 || rows.length > MOST_ROWS || head.length > MOST_COLUMNS) {
    add(
      { line: 1, column: 1 },
      'measured-shape',
      `The file has ${head.length} columns and ${rows.length} rows of points.`,
      `A header, a column for the place, 1 to ${MOST_COLUMNS - 1} more and 1 to ${MOST_ROWS} rows are read. ${HEADER}`,
    );
    return { ok: false, problems };
  }
  const heads = head.map((cell) => headOf(cell, add));
  for (const row of rows)
    if (row.length !== head.length)
      add(
        row[0]!,
        'measured-row',
        `The row has ${row.length} cells, the header ${head.length}.`,
        'Give each row a cell for each column; leave it empty where nothing was measured.',
      );
  if (problems.length > 0) return { ok: false, problems };
  const columns: MeasuredColumn[] = [];
  heads.forEach((one, i) => {
    if (one === null || one.isPlusMinus) return;
    const next = heads[i + 1];
    const hasBand = next?.isPlusMinus === true;
    if (hasBand && next.name !== one.name && next.name !== '')
      add(
        head[i + 1]!,
        'measured-band',
        `${quote(next.name)} stands after ${quote(one.name)}.`,
        'Put the ± right after the column that it belongs to.',
      );
    columns.push({
      name: one.name,
      unit: one.unitText,
      dimension: one.unit.dimension,
      values: rows.map((row) => numberIn(row[i]!, i === 0, (value) => toSI(value, one.unit), add)),
      plusMinus: rows.map((row) =>
        hasBand ? numberIn(row[i + 1]!, false, (value) => differenceToSI(value, next.unit), add) : null,
      ),
    });
  });
  const [place, ...measured] = columns;
  if (problems.length > 0 || place === undefined) return { ok: false, problems };
  return { ok: true, table: { place, columns: measured } };
}

type Add = (cell: Pick<CsvCell, 'line' | 'column'>, code: string, what: string, mend: string) => void;

function headOf(cell: CsvCell, add: Add): Head | null {
  const text = cell.text.trim();
  const [, before = '', unitText = ''] = /^([^[\]]*?)\s*(?:\[([^\]]*)\])?$/u.exec(text) ?? [];
  const isPlusMinus = before.includes('±');
  const name = before.replaceAll('±', '').trim();
  const unit = unitText.trim() === '' ? PLAIN : findUnit(unitText);
  if (unit === null) {
    add(cell, 'measured-unit', `${quote(unitText)} is no unit that is known.`, HEADER);
    return null;
  }
  if (name === '' && !isPlusMinus) {
    add(cell, 'measured-header', `The header ${quote(text)} names no quantity.`, HEADER);
    return null;
  }
  return { name, unitText: unitText.trim(), unit, isPlusMinus };
}

function numberIn(cell: CsvCell, needed: boolean, inSI: (value: number) => number, add: Add): number | null {
  const text = cell.text.trim().replace('\u2212', '-');
  if (text === '' && !needed) return null;
  const value = Number(text);
  if (text !== '' && Number.isFinite(value) && /^[+-]?(\d|\.\d)/.test(text)) return inSI(value);
  add(
    cell,
    'measured-number',
    text === '' ? 'The place of the point is missing.' : `${quote(text)} is no number.`,
    'Write plain numbers with a decimal point; the unit stands in the header.',
  );
  return null;
}

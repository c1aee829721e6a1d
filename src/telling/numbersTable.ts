/** All numbers of an answer as comma-separated values: one line a number, each with its name in the catalogue. */

import { findQuantity, quantityNameAt } from '../answer/catalogue.ts';
import type { StudyAnswer } from '../answer/model.ts';
import { publishedQuantityAt } from '../answer/published/figures.ts';
import { csvOf } from './csvCell.ts';

const header = ['engine', 'path', 'quantity', 'label', 'value (SI)', 'shown', 'unit shown'];

/**
 * RFC 4180, UTF-8, one header line. The first line after it carries the caution in the column `label`.
 * A number that the models don't have is an empty cell with its reason in the column `shown`.
 */
export function numbersCsv(answer: StudyAnswer): string {
  const lines: (readonly string[])[] = [header, ['', 'caution', 'caution', answer.caution, '', '', '']];
  for (const [id, engine] of Object.entries(answer.engines)) {
    const reasons = new Map(engine.reasons.map(({ path, reason }) => [path, reason]));
    walk(engine, '', (path, value) => {
      const name = quantityNameAt(`engines.${id}.${path}`, publishedQuantityAt(engine, path));
      const entry = name === undefined ? undefined : findQuantity(name);
      if (name === undefined || entry === undefined) return;
      const shown =
        value === null
          ? (reasons.get(path) ?? '')
          : String(Number((value * entry.unit.perSI).toPrecision(entry.digits + 2)));
      lines.push([
        id,
        path,
        name,
        entry.label,
        value === null ? '' : String(value),
        shown,
        entry.unit.symbol,
      ]);
    });
  }
  return csvOf(lines);
}

function walk(value: unknown, path: string, tell: (path: string, value: number | null) => void): void {
  if (typeof value === 'number' || value === null) tell(path, value);
  else if (Array.isArray(value)) {
    value.forEach((item, i) => {
      walk(item, `${path}[${i}]`, tell);
    });
  } else if (typeof value === 'object') {
    for (const [key, item] of Object.entries(value as object))
      walk(item, path === '' ? key : `${path}.${key}`, tell);
  }
}

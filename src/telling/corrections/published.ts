/** What of a package somebody may have repeated: numbers as shown, what is said, the pictures. */

import { quantity, quantityNameAt } from '../../answer/catalogue.ts';
import type { StudyAnswer } from '../../answer/model.ts';
import type { FactSheet } from '../factSheet/model.ts';
import { formatValue } from '../numbers/formatNumber.ts';
import { engineRows } from '../page/engineRows.ts';

export interface PublishedNumber {
  /** The same number in every package: `bell vacuum.thrust`. */ readonly key: string;
  readonly of: string;
  readonly label: string;
  /** As the page prints it. */ readonly shown: string;
}

export interface PublishedItem {
  readonly kind: 'sentence' | 'fact' | 'analogy';
  readonly id: string;
  readonly say: string;
  readonly verdict: string;
  readonly wording: string | null;
  readonly instead: string | null;
  /** By expression, as spoken. */ readonly numbers: Readonly<Record<string, string>>;
}

export interface Published {
  readonly question: string;
  readonly shortAnswer: string;
  readonly numbers: readonly PublishedNumber[];
  /** Every other number of the table, by engine and path, as shown. */ readonly table: ReadonlyMap<
    string,
    string
  >;
  readonly items: readonly PublishedItem[];
  /** Lines of the script as they read, by id; null where it is not known. */
  readonly script: Readonly<Record<string, string>> | null;
  /** SHA-256 of each figure, by name. */ readonly figures: Readonly<Record<string, string>>;
}

export function publishedOf(
  answer: StudyAnswer,
  sheet: Pick<FactSheet, 'items' | 'script'>,
  figures: Readonly<Record<string, string>>,
): Published {
  return {
    question: answer.question,
    shortAnswer: `${answer.shortAnswer.verdict}. ${answer.shortAnswer.text}`,
    numbers: [...engineNumbers(answer), ...vehicleNumbers(answer)],
    table: tableOf(answer),
    items: sheet.items.map(({ kind, id, say, label, wording, instead, numbers }) => ({
      kind,
      id,
      say,
      verdict: label,
      wording,
      instead,
      numbers: Object.fromEntries(numbers.map(({ expression, words }) => [expression, words])),
    })),
    // Sheets of earlier versions do not have it.
    script:
      sheet.script == null ? null : Object.fromEntries(sheet.script.lines.map(({ id, text }) => [id, text])),
    figures,
  };
}

function engineNumbers(answer: StudyAnswer): readonly PublishedNumber[] {
  return Object.values(answer.engines).flatMap((engine) =>
    engineRows(engine).map(([name, value]) => ({
      key: `${engine.id} ${name}`,
      of: engine.name,
      label: quantity(name).label,
      shown: value === null ? 'no number' : formatValue(name, value),
    })),
  );
}

function vehicleNumbers(answer: StudyAnswer): readonly PublishedNumber[] {
  return answer.vehicles.flatMap(({ id, name, words }) => [
    { key: `${id} flight`, of: name, label: 'what it carries', shown: words },
  ]);
}

function tableOf(answer: StudyAnswer): ReadonlyMap<string, string> {
  const table = new Map<string, string>();
  const walk = (value: unknown, path: string): void => {
    if (typeof value === 'number') {
      const name = quantityNameAt(path);
      if (name !== undefined) table.set(path, formatValue(name, value));
    } else if (Array.isArray(value)) for (const [i, item] of value.entries()) walk(item, `${path}[${i}]`);
    else if (typeof value === 'object' && value !== null) {
      for (const [key, item] of Object.entries(value)) walk(item, `${path}.${key}`);
    }
  };
  walk(answer.engines, 'engines');
  return table;
}

/** What differs between two packages of a study. */

import type { Published, PublishedItem } from './published.ts';

export interface PackageChange {
  readonly what: 'question' | 'answer' | 'sentence' | 'script' | 'number' | 'figures' | 'table';
  /** What it is about. */ readonly of: string;
  /** Null: it is new. */ readonly before: string | null;
  /** Null: it is gone. */ readonly after: string | null;
}

export function packageChanges(before: Published, now: Published): readonly PackageChange[] {
  return [
    ...changed('question', 'the question', before.question, now.question),
    ...changed('answer', 'the short answer', before.shortAnswer, now.shortAnswer),
    ...itemChanges(before.items, now.items),
    ...scriptChanges(before.script, now.script),
    ...numberChanges(before, now),
    ...figureChanges(before.figures, now.figures),
    ...tableChanges(before.table, now.table),
  ];
}

const changed = (
  what: PackageChange['what'],
  of: string,
  before: string | null,
  after: string | null,
): readonly PackageChange[] => (before === after ? [] : [{ what, of, before, after }]);

function itemChanges(
  before: readonly PublishedItem[],
  now: readonly PublishedItem[],
): readonly PackageChange[] {
  const key = ({ kind, id }: PublishedItem): string => `${kind} ${id}`;
  const keys = new Set([...before, ...now].map(key));
  return [...keys].flatMap((name) => {
    const old = before.find((item) => key(item) === name) ?? null;
    const own = now.find((item) => key(item) === name) ?? null;
    if (old === null || own === null) return changed('sentence', name, old?.say ?? null, own?.say ?? null);
    const numbers = new Set([...Object.keys(old.numbers), ...Object.keys(own.numbers)]);
    return [
      ...changed('sentence', `the words of ${name}`, old.say, own.say),
      ...changed('sentence', `the verdict on “${own.say}”`, old.verdict, own.verdict),
      ...changed('sentence', `what can be said of ${name}`, old.wording, own.wording),
      ...changed('sentence', `what is true instead of ${name}`, old.instead, own.instead),
      ...[...numbers].flatMap((expression) =>
        changed(
          'number',
          `${expression}, for ${name}`,
          old.numbers[expression] ?? null,
          own.numbers[expression] ?? null,
        ),
      ),
    ];
  });
}

/** Line by line: what somebody may have heard. */
function scriptChanges(before: Published['script'], now: Published['script']): readonly PackageChange[] {
  if (before === null || now === null) return [];
  const ids = new Set([...Object.keys(before), ...Object.keys(now)]);
  return [...ids].flatMap((id) =>
    changed('script', `the line ${id} of the script`, before[id] ?? null, now[id] ?? null),
  );
}

function numberChanges(before: Published, now: Published): readonly PackageChange[] {
  const keys = new Set([...before.numbers, ...now.numbers].map(({ key }) => key));
  return [...keys].flatMap((key) => {
    const old = before.numbers.find((number) => number.key === key);
    const own = now.numbers.find((number) => number.key === key);
    const { of, label } = (own ?? old)!;
    return changed('number', `${of}, ${label}`, old?.shown ?? null, own?.shown ?? null);
  });
}

/** One line for all: a figure has no value that could be told. */
function figureChanges(before: Published['figures'], now: Published['figures']): readonly PackageChange[] {
  const names = [...new Set([...Object.keys(before), ...Object.keys(now)])].sort();
  const told = (from: Published['figures'], to: Published['figures'], none: boolean): string | null => {
    const some = names.filter((name) =>
      none
        ? from[name] !== undefined && to[name] === undefined
        : from[name] !== undefined && to[name] !== undefined && from[name] !== to[name],
    );
    return some.length === 0 ? null : some.join(', ');
  };
  const drawn = told(before, now, false);
  const gone = told(before, now, true);
  const fresh = told(now, before, true);
  return [
    ...(drawn === null ? [] : [{ what: 'figures' as const, of: 'drawn anew', before: drawn, after: drawn }]),
    ...(gone === null ? [] : [{ what: 'figures' as const, of: 'gone', before: gone, after: null }]),
    ...(fresh === null ? [] : [{ what: 'figures' as const, of: 'new', before: null, after: fresh }]),
  ];
}

function tableChanges(before: Published['table'], now: Published['table']): readonly PackageChange[] {
  const keys = new Set([...before.keys(), ...now.keys()]);
  const count = [...keys].filter((key) => before.get(key) !== now.get(key)).length;
  if (count === 0) return [];
  const words = `${count} of ${keys.size}`;
  return [{ what: 'table', of: 'numbers of numbers.csv as shown', before: null, after: words }];
}

/** One line for people. */
export function changeWords({ what, of, before, after }: PackageChange): string {
  if (what === 'figures') return `figures ${of}: ${after ?? before}`;
  if (what === 'table') return `in all ${after} ${of}`;
  return `${of}: ${before ?? 'nothing'} → ${after ?? 'gone'}`;
}

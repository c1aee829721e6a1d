import { padEnd, visibleLength } from './wrap.ts';

export interface TableRow {
  readonly label: string;
  readonly cells: readonly string[];
}

/** Rows under a heading that names a place, e.g. `At the pad`. */
export interface TableGroup {
  readonly heading: string;
  readonly rows: readonly TableRow[];
}

const GAP = 3;

/** A table with one column a name; plain text, no rules, no colour. */
export function tableText(names: readonly string[], groups: readonly TableGroup[]): string {
  const labelWidth = Math.max(
    ...groups.flatMap((group) => [
      visibleLength(group.heading),
      ...group.rows.map((row) => visibleLength(row.label) + 2),
    ]),
  );
  const widths = names.map((name, i) =>
    Math.max(
      visibleLength(name),
      ...groups.flatMap((group) => group.rows.map((row) => visibleLength(row.cells[i] ?? ''))),
    ),
  );
  const line = (label: string, cells: readonly string[]): string =>
    [padEnd(label, labelWidth), ...cells.map((cell, i) => padEnd(cell, widths[i] ?? 0))]
      .join(' '.repeat(GAP))
      .trimEnd();
  const blocks = groups.map((group) =>
    [group.heading, ...group.rows.map((row) => line(`  ${row.label}`, row.cells))].join('\n'),
  );
  return [line('', names), ...blocks].join('\n\n').replace('\n\n', '\n');
}

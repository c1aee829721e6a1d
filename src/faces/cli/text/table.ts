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

export interface Table {
  /** One column a name. */ readonly names: readonly string[];
  readonly groups: readonly TableGroup[];
}

const GAP = 3;
const INDENT = 2;

/** Plain text, no rules, no colour. */
export function tableText(table: Table): string {
  const { label, columns } = widthsOf(table);
  const line = (head: string, cells: readonly string[]): string =>
    [padEnd(head, label), ...columns.map((width, i) => padEnd(cells[i] ?? '', width))]
      .join(' '.repeat(GAP))
      .trimEnd();
  const blocks = table.groups.map((group) =>
    [group.heading, ...group.rows.map((row) => line(' '.repeat(INDENT) + row.label, row.cells))].join('\n'),
  );
  return `${line('', table.names)}\n${blocks.join('\n\n')}`;
}

/** How many of its columns stand beside each other within `width`; at least one. */
export function columnsThatFit(table: Table, width: number): number {
  const { label, columns } = widthsOf(table);
  let used = label;
  let fit = 0;
  for (const column of columns) {
    used += GAP + column;
    if (used > width) break;
    fit += 1;
  }
  return Math.max(1, fit);
}

function widthsOf({ names, groups }: Table): { label: number; columns: readonly number[] } {
  const rows = groups.flatMap((group) => group.rows);
  return {
    label: Math.max(...rows.map((row) => visibleLength(row.label) + INDENT)),
    columns: names.map((name, i) =>
      Math.max(visibleLength(name), ...rows.map((row) => visibleLength(row.cells[i] ?? ''))),
    ),
  };
}

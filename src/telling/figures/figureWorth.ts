/** What the second engine of a pair gains and what it costs: a bar a row, as a share of the first, with its band. */

import { CAUTION } from '../../answer/caution.ts';
import type { StudyAnswer } from '../../answer/model.ts';
import { rowWords, type WorthRow, type WorthTable, worthWords } from '../../answer/worth/index.ts';
import { layoutOf } from '../look/formats.ts';
import { formatShare } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import type { Scene, SceneNode } from '../scene/scene.ts';
import { type BarRow, barRows } from './barRows.ts';
import { drawnEngines } from './drawnEngines.ts';
import type { FigureRow } from './figureTable.ts';
import { frame } from './frame.ts';
import { wordsAt } from './marks.ts';
import type { FigureOptions } from './options.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

/** Rows that have a difference and something to be a share of. */
function drawable({ rows }: WorthTable): readonly (WorthRow & { readonly share: (end: number) => number })[] {
  return rows.flatMap((row) => {
    const base = row.base.found?.value;
    if (row.difference === null || base === undefined || base === 0) return [];
    return [{ ...row, share: (end: number) => end / Math.abs(base) }];
  });
}

/** A scale of equal ratios has no end below: what is less than a hundredth of the first is told, not drawn to its end. */
const LEAST_SHARE = -0.99;

const isCut = ({ difference, share }: ReturnType<typeof drawable>[number]): boolean =>
  [difference!.value, difference!.low, difference!.high].some((end) => share(end) < LEAST_SHARE);

/** Null where nothing of the pair can be compared. */
export function figureWorth(table: WorthTable, answer: StudyAnswer, options: FigureOptions): Scene | null {
  const rows = drawable(table);
  const drawn = drawnEngines(answer, 4, options.styles).engines;
  const other = drawn.find(({ engine }) => engine.id === table.other);
  if (rows.length === 0 || other === undefined) return null;
  const layout = layoutOf(options.size);
  const names = (id: string): string => answer.engines[id]?.name ?? id;
  const [base, name] = [names(table.base), names(table.other)];
  const title = options.title ?? finding(rows, base, name);
  const around = frame(
    layout,
    {
      title,
      subtitle: `${name} against ${base}: difference as a share, in equal ratios${table.basis.length === 0 ? '' : `; ${table.basis.join(', ')}`}`,
      foot: [
        `Thin stroke: ${table.drawn}`,
        `Models: ${modelsOf(answer, table).join(', ')}.`,
        ...(rows.some(isCut) ? ['Bars and strokes that reach below −99\u00a0% end there.'] : []),
      ],
    },
    options,
  );
  const barOf = (row: (typeof rows)[number]): BarRow => {
    const { value, low, high, tooClose, words } = row.difference!;
    const [at, from, to] = [value, low, high].map((end) => Math.log1p(Math.max(LEAST_SHARE, row.share(end))));
    const text = value === 0 ? words : tooClose ? 'too close to call' : signedShare(row.share(value));
    return { label: rowWords(row), bars: [{ style: other.style, value: at!, low: from!, high: to!, text }] };
  };
  const blocks = (['gain', 'price'] as const).map((group) => ({
    head: group === 'gain' ? 'Gain' : 'Price',
    rows: rows.filter((row) => row.group === group).map(barOf),
  }));
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: [...worthWords(table, names, []), CAUTION].join(' '),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...around.nodes, ...blockNodes(blocks, around.content, layout)],
  };
}

/** Of both engines. */
const modelsOf = (answer: StudyAnswer, { base, other }: WorthTable): readonly string[] => [
  ...new Set([base, other].flatMap((id) => answer.engines[id]?.models ?? [])),
];

interface Block {
  readonly head: string;
  readonly rows: readonly BarRow[];
}

/** Each block with its own scale below its head, its height by its rows. */
function blockNodes(blocks: readonly Block[], box: Box, style: PanelStyle): readonly SceneNode[] {
  const shown = blocks.filter(({ rows }) => rows.length > 0);
  const { label } = style.type;
  const head = 1.3 * label;
  const count = shown.reduce((sum, { rows }) => sum + rows.length, 0);
  const each = (box.height - shown.length * head) / count;
  let y = box.y;
  return shown.flatMap(({ head: text, rows }) => {
    const top = y;
    y += head + rows.length * each;
    return [
      ...wordsAt([{ text, size: label, weight: 700, fill: 'ink' }], box.x, top),
      ...barRows(rows, { ...box, y: top + head, height: rows.length * each }, style),
    ];
  });
}

const signedShare = (share: number): string => `${share > 0 ? '+' : ''}${formatShare(share)}`;

function finding(rows: ReturnType<typeof drawable>, base: string, other: string): string {
  const sure = rows.filter(({ difference }) => difference?.tooClose === false && difference.value !== 0);
  if (sure.length === 0) return `Between ${base} and ${other} everything is too close to call.`;
  // The name alone: what it runs from and to stands in the row.
  const said = (row: (typeof rows)[number]): string =>
    `${signedShare(row.share(row.difference!.value))} ${rowWords({ ...row, label: row.label.split(',')[0]! })}`;
  const gains = sure.filter(({ group }) => group === 'gain');
  const gain = gains.find(({ difference }) => difference!.value > 0) ?? gains[0];
  const price = sure.find(({ group, difference }) => group === 'price' && difference!.value > 0);
  return `${other} against ${base}: ${[gain, price].flatMap((row) => (row === undefined ? [] : [said(row)])).join(', ')}.`;
}

export function worthFigureRows(table: WorthTable, answer: StudyAnswer): readonly FigureRow[] {
  return table.rows.flatMap((row) =>
    (
      [
        ['base', row.base],
        ['other', row.other],
        ['bound', row.bound],
      ] as const
    ).flatMap(([which, side]) => {
      const id = table[which];
      if (side === null || id === null) return [];
      const { found, why } = side;
      return [
        {
          of: answer.engines[id]?.name ?? id,
          quantity: row.quantity,
          which: `${row.group}${row.where === '' ? '' : `, ${row.where}`}`,
          value: found?.value ?? null,
          ...(found?.low == null ? {} : { low: found.low }),
          ...(found?.high == null ? {} : { high: found.high }),
          ...(why === null ? {} : { note: why }),
        },
      ];
    }),
  );
}

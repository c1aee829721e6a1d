/** The numbers of a figure as a table beside it: what it is of, where, value with its ends, as shown. */

import { quantity } from '../../answer/catalogue.ts';
import { CAUTION } from '../../answer/caution.ts';
import { show } from '../../answer/display.ts';
import { csvOf } from '../csvCell.ts';

export interface FigureRow {
  /** Engine, vehicle or sentence. */ readonly of: string;
  /** Name in the catalogue; null: made of several, as `which` and `note` say. */ readonly quantity:
    | string
    | null;
  /** Which one of several: a surface, an item, a place in words. */ readonly which?: string;
  /** Where along the axis of the figure [SI], and the name of that quantity. */ readonly at?: {
    readonly quantity: string;
    readonly value: number;
  };
  /** [SI]; null where there is none, `note` saying why. */ readonly value: number | null;
  readonly low?: number;
  readonly high?: number;
  readonly note?: string;
}

const header = [
  'of',
  'quantity',
  'label',
  'which',
  'along',
  'place (SI)',
  'value (SI)',
  'low (SI)',
  'high (SI)',
  'shown',
  'unit',
  'note',
];

const cell = (value: number | null | undefined): string =>
  value === null || value === undefined ? '' : String(value);

/** RFC 4180, UTF-8, one header line; the line after it carries the caution, the next what all of it is, where that is to be said. */
export function figureCsv(rows: readonly FigureRow[], whatItIs?: string): string {
  return csvOf([
    header,
    ['', '', 'caution', ...Array<string>(8).fill(''), CAUTION],
    ...(whatItIs === undefined ? [] : [['', '', 'what it is', ...Array<string>(8).fill(''), whatItIs]]),
    ...rows.map(({ of, quantity: name, which, at, value, low, high, note }) => {
      const shown = value === null || name === null ? null : show(name, value);
      return [
        of,
        name ?? '',
        name === null ? 'made of several' : quantity(name).label,
        which ?? '',
        at === undefined ? '' : quantity(at.quantity).label,
        cell(at?.value),
        cell(value),
        cell(low),
        cell(high),
        shown?.number ?? '',
        shown?.unit ?? '',
        note ?? '',
      ];
    }),
  ]);
}

/** What a plug feels, beside engines that may have none. */

import { show } from '../../../answer/display.ts';
import type { ConditionRow, PlugRow } from '../../../answer/model.ts';
import type { TableRow } from './table.ts';

/** Nothing where no engine has a plug. */
export function plugRows(rows: readonly (ConditionRow | undefined)[]): readonly TableRow[] {
  const plugs = rows.map((row) => row?.plug);
  const line = (label: string, words: (plug: PlugRow) => string | null): readonly TableRow[] => {
    const cells = plugs.map((plug) => (plug === undefined ? null : words(plug)));
    return cells.every((cell) => cell === null)
      ? []
      : [{ label, cells: cells.map((cell) => cell ?? 'none') }];
  };
  return [
    ...line('wake and base', ({ base }) =>
      base === undefined ? null : `${base.wake}, ${show('plug.base.pressure', base.pressure).text}`,
    ),
    ...line('lowest pressure on the plug', ({ leastWall }) =>
      leastWall === undefined ? null : `${show('plug.leastWall', leastWall).text} times the air’s`,
    ),
    ...line('pressure rise on it', ({ recompression: rise }) =>
      rise === undefined
        ? null
        : `${show('plug.recompression.shareOfOnset', rise.shareOfOnset).text} of the onset`,
    ),
    ...line('air felt in flight', ({ flight }) =>
      flight === undefined ? null : show('plug.flight.pressure', flight.pressure).text,
    ),
  ];
}

/** Heat and cooling, the engines side by side; printed where a study says how its engines are cooled. */

import { quantity } from '../../../answer/catalogue.ts';
import { show } from '../../../answer/display.ts';
import { coolingRows, heatRows } from '../../../answer/heat/heatWords.ts';
import type { EngineAnswer } from '../../../answer/model.ts';
import type { TableGroup } from './table.ts';

export function heatGroups(engines: readonly EngineAnswer[]): readonly TableGroup[] {
  if (engines.every(({ cooling }) => cooling === undefined)) return [];
  return [
    { heading: 'Heat to the walls', rows: rowsOf(engines.map(heatRows)) },
    {
      heading: 'Cooling (for comparison only, not for building or firing hardware)',
      rows: rowsOf(engines.map(coolingRows)),
    },
  ];
}

function rowsOf(all: readonly ReturnType<typeof heatRows>[]): TableGroup['rows'] {
  const names = [...new Set(all.flatMap((rows) => rows.map((row) => row.quantity)))];
  return names.map((name) => ({
    label: quantity(name).label,
    cells: all.map((rows) => {
      const value = rows.find((row) => row.quantity === name)?.value ?? null;
      return value === null ? 'no number' : show(name, value).text;
    }),
  }));
}

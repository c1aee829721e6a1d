/** How the propellants are pumped, the engines side by side; printed where a study says how. */

import { cycleName, cycleRows } from '../../../answer/cycle/cycleWords.ts';
import { show } from '../../../answer/display.ts';
import type { EngineAnswer } from '../../../answer/model.ts';
import type { TableGroup } from './table.ts';

export function cycleGroup(engines: readonly EngineAnswer[]): TableGroup {
  const heading = 'Pumps and tanks (for comparison only, not for building or pressurising hardware)';
  if (engines.every(({ cycle }) => cycle === undefined)) return { heading, rows: [] };
  const all = engines.map(cycleRows);
  const labels = [...new Map(all.flatMap((rows) => rows.map(({ label, quantity }) => [label, quantity])))];
  return {
    heading,
    rows: [
      { label: 'cycle', cells: engines.map(({ cycle }) => (cycle ? cycleName(cycle.kind) : 'not said')) },
      ...labels.map(([label, quantity]) => ({
        label,
        cells: all.map((rows) => {
          const value = rows.find((row) => row.label === label)?.value ?? null;
          return value === null ? '' : show(quantity, value).text;
        }),
      })),
    ],
  };
}

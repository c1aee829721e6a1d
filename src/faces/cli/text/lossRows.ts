/** From ideal to delivered, line by line, the engines side by side. */

import { deliveredText, idealText, lossLines } from '../../../answer/lossWords.ts';
import type { EngineAnswer } from '../../../answer/model.ts';
import type { TableGroup } from './table.ts';

export function lossGroup(engines: readonly EngineAnswer[]): TableGroup {
  const lines = engines.map(({ losses }) => lossLines(losses));
  const names = [...new Set(lines.flatMap((of) => of.map(({ name }) => name)))];
  return {
    heading: 'What is lost, specific impulse in vacuum',
    rows: [
      { label: 'ideal', cells: engines.map(({ losses }) => idealText(losses)) },
      ...names.map((label) => ({
        label,
        cells: lines.map((of) => {
          const line = of.find(({ name }) => name === label);
          return line === undefined ? 'none' : `${line.impulse}, ${line.share}`;
        }),
      })),
      { label: 'delivered', cells: engines.map(({ losses }) => deliveredText(losses)) },
    ],
  };
}

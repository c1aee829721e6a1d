/** What the tables say of the jets behind the engines. */

import { show } from '../../../answer/display.ts';
import type { PlumeFigures } from '../../../answer/plumeModel.ts';
import type { TableRow } from './table.ts';

/** The jet at the lip and its first shock cell; no rows where no engine has either. */
export function plumeRows(plumes: readonly (PlumeFigures | undefined)[]): readonly TableRow[] {
  const rows: TableRow[] = [
    { label: 'the jet at the lip', cells: plumes.map(lipWords) },
    { label: 'its first shock cell', cells: plumes.map(cellWords) },
  ];
  return rows.filter(({ cells }) => cells.some((cell) => cell !== NONE));
}

const NONE = 'not computed';

function lipWords(plume: PlumeFigures | undefined): string {
  if (!plume || plume.regime === null || plume.boundaryTurn === null) return NONE;
  if (plume.regime === 'matched') return 'goes straight on';
  const turn = show('plume.boundaryTurn', Math.abs(plume.boundaryTurn)).text;
  return plume.regime === 'under-expanded' ? `opens by ${turn}` : `closes by ${turn}, shock`;
}

function cellWords(plume: PlumeFigures | undefined): string {
  if (!plume || plume.cellLength === null) return NONE;
  return `about ${show('plume.cellLength', plume.cellLength).text}`;
}

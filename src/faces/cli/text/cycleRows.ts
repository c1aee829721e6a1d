/** What the tables say of how the propellants are pumped; no rows where no study says how. */

import { cycleWords } from '../../../answer/cycle/cycleWords.ts';
import { show } from '../../../answer/display.ts';
import type { EngineAnswer } from '../../../answer/model.ts';
import type { TableGroup, TableRow } from './table.ts';

export function cycleGroup(engines: readonly EngineAnswer[]): TableGroup {
  const heading = 'Pumps and tanks (for comparison, not for building or pressurising anything)';
  if (engines.every(({ cycle }) => cycle === undefined)) return { heading, rows: [] };
  const shown = (key: string, of: (engine: EngineAnswer) => number | null | undefined): string[] =>
    engines.map((engine) => {
      const value = of(engine);
      return value === null || value === undefined ? '' : show(key, value).text;
    });
  const rows: TableRow[] = [
    { label: 'cycle', cells: engines.map(({ cycle }) => (cycle ? cycleWords(cycle.kind) : 'not said')) },
    {
      label: 'specific impulse of the engine, vacuum',
      cells: shown('cycle.specificImpulse', ({ cycle }) => cycle?.vacuum.specificImpulse),
    },
    { label: 'what is dumped', cells: shown('cycle.dumpShare', ({ cycle }) => cycle?.dumpShare) },
    { label: 'what that costs', cells: shown('cycle.impulseLost', ({ cycle }) => cycle?.impulseLost) },
    { label: 'power of the pumps', cells: shown('cycle.pumpPower', ({ cycle }) => cycle?.pumpPower) },
    {
      label: 'behind the oxidiser’s pump',
      cells: shown('cycle.oxidiserPressure', ({ cycle }) => cycle?.oxidiserPressure),
    },
    {
      label: 'behind the fuel’s pump',
      cells: shown('cycle.fuelPressure', ({ cycle }) => cycle?.fuelPressure),
    },
    {
      label: 'highest chamber pressure',
      cells: shown('cycle.reachablePressure', ({ cycle }) => cycle?.reachablePressure),
    },
    { label: 'tank walls', cells: shown('cycle.tankMass', ({ cycle }) => cycle?.tankMass) },
    { label: 'battery', cells: shown('cycle.batteryMass', ({ cycle }) => cycle?.batteryMass) },
    {
      label: 'dry mass, about',
      cells: engines.map(({ mass }) =>
        mass ? `${show('mass.engine', mass.low).text} to ${show('mass.engine', mass.high).text}` : '',
      ),
    },
  ];
  return { heading, rows: rows.filter(({ cells }) => cells.some((cell) => cell !== '')) };
}

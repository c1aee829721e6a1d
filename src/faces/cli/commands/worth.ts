import { CAUTION } from '../../../answer/caution.ts';
import type { DataShelf } from '../../../answer/shelf.ts';
import { solveStudyLive } from '../../../answer/solve.ts';
import {
  EXCHANGE_HEAD,
  exchangeRows,
  rowWords,
  sideWords,
  type VehicleWorth,
  vehicleWorths,
  type WorthTable,
  worthTable,
  worthWords,
} from '../../../answer/worth/index.ts';
import type { Study } from '../../../study/model.ts';
import { dismissing, threadCrew } from '../../crew/threadCrew.ts';
import { openDataShelf } from '../../disk/data.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { openStudy } from '../openStudy.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { tableText } from '../text/table.ts';
import { wrapped } from '../text/wrap.ts';

export interface WorthFlags {
  readonly json?: true;
}

export async function worthCommand(
  given: string,
  flags: WorthFlags,
  terminal: Terminal,
): Promise<ExitStatus> {
  const shelf = openDataShelf();
  const { study } = await openStudy(given, shelf, terminal);
  const crew = await threadCrew(study);
  const onProgress = (done: number, of: number): void =>
    sayIfSlow(terminal, `Gain and price: ${done} of about ${of} points …`);
  const table = await dismissing(crew, () => worthTable(study, crew, { onProgress }));
  const vehicles = study.vehicles.length === 0 ? [] : await flown(study, shelf);
  terminal.out(
    flags.json
      ? JSON.stringify({ format: 'plumeline worth 1', caution: CAUTION, ...table, vehicles }, null, 2)
      : worthText(table, vehicles, study, terminal.width),
  );
  return EXIT.answered;
}

async function flown(study: Study, shelf: DataShelf): Promise<readonly VehicleWorth[]> {
  const { answer, solutions } = await solveStudyLive(study, shelf);
  return vehicleWorths(study, answer, solutions);
}

function worthText(
  table: WorthTable,
  vehicles: readonly VehicleWorth[],
  study: Study,
  width: number,
): string {
  const names = (id: string): string => study.engines.find((engine) => engine.id === id)?.name ?? id;
  const { base, other, bound, rows } = table;
  const group = (heading: string, which: 'gain' | 'price') => ({
    heading,
    rows: rows
      .filter((row) => row.group === which)
      .map((row) => ({
        label: rowWords(row),
        cells: [
          sideWords(row, row.base),
          sideWords(row, row.other),
          ...(bound === null ? [] : [row.bound === null ? '' : sideWords(row, row.bound)]),
        ],
      })),
  });
  const columns = [base, other, ...(bound === null ? [] : [bound])].map(names);
  const groups = [group('Gain', 'gain'), group('Price', 'price')].filter((each) => each.rows.length > 0);
  return [
    ...worthWords(table, names, vehicles).map((line) => wrapped(line, width)),
    tableText({ names: columns, groups }),
    wrapped(`In brackets: ${table.drawn}`, width),
    ...vehicles.map((vehicle) => exchangeText(vehicle)),
    wrapped(CAUTION, width),
  ].join('\n\n');
}

function exchangeText(vehicle: VehicleWorth): string {
  const rows = exchangeRows(vehicle).map(([label, ...cells]) => ({ label, cells }));
  const heading = `What a little more is worth to ${vehicle.name}`;
  return tableText({ names: EXCHANGE_HEAD.slice(1), groups: [{ heading, rows }] });
}

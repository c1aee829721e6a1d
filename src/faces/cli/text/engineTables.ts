/** The engines side by side: at the pad, higher up, in vacuum, and what does not change with the air. */

import { type CatalogueEntry, quantity } from '../../../answer/catalogue.ts';
import { differenceInWords } from '../../../answer/compare/quantities.ts';
import { show, showIn, showStated, unitFor } from '../../../answer/display.ts';
import type { ConditionRow, EngineAnswer } from '../../../answer/model.ts';
import type { PlumeFigures } from '../../../answer/plumeModel.ts';
import { caseWords } from '../../../answer/separationWords.ts';
import { cycleGroup } from './cycleRows.ts';
import { heatGroups } from './heatRows.ts';
import { lossGroup } from './lossRows.ts';
import { plugRows } from './plugRows.ts';
import { plumeRows } from './plumeRows.ts';
import { columnsThatFit, type TableGroup, type TableRow, tableText } from './table.ts';

/** What was asked for besides the pad, 10 km and vacuum, by altitude [m] or by pressure [Pa]. */
export interface Asked {
  readonly altitudes: readonly number[];
  readonly ambients: readonly number[];
}

/** One table, or several below each other where the engines do not fit beside each other. */
export function engineTables(
  engines: readonly EngineAnswer[],
  compared: boolean,
  asked: Asked,
  width: number,
): string {
  if (engines.length === 0) return '';
  const [, other] = engines;
  if (compared && engines.length === 2 && other) {
    const names = [...engines.map(({ name }) => name), `${other.name} has`];
    const table = { names, groups: groupsOf(engines, asked, true) };
    if (columnsThatFit(table, width) === names.length) return tableText(table);
  }
  const table = { names: engines.map(({ name }) => name), groups: groupsOf(engines, asked, false) };
  const fit = columnsThatFit(table, width);
  if (fit === engines.length) return tableText(table);
  return [engines.slice(0, fit), engines.slice(fit)]
    .map((part) => engineTables(part, false, asked, width))
    .join('\n\n');
}

function groupsOf(
  engines: readonly EngineAnswer[],
  asked: Asked,
  withDifference: boolean,
): readonly TableGroup[] {
  const row = (name: string, values: readonly (number | null)[]): TableRow =>
    quantityRow(name, values, withDifference);
  const altitudes = [...new Set([0, 10_000, ...asked.altitudes])].sort((a, b) => a - b);
  const climb = altitudes.map((altitude) => {
    const rows = engines.map((engine) => engine.altitudes.find((r) => r.altitude === altitude));
    const plumes = engines.map((engine) => engine.plume.altitudes.find((p) => p.altitude === altitude));
    const bands = bandsAt(engines, 'altitudes', (r) => r.altitude === altitude);
    return withPlumes(groupAt(headingAt(altitude, rows[0]), rows, row, bands), plumes);
  });
  const stands = [...new Set(asked.ambients)].map((pressure) => {
    const rows = engines.map((engine) => engine.ambients.find((r) => r.ambientPressure === pressure));
    const plumes = engines.map((engine) => engine.plume.ambients.find((p) => p.ambientPressure === pressure));
    const bands = bandsAt(engines, 'ambients', (r) => r.ambientPressure === pressure);
    return withPlumes(groupAt(`In surroundings of ${pressureText(pressure)}`, rows, row, bands), plumes);
  });
  return [
    ...climb,
    vacuumGroup(engines, row),
    ...stands,
    lossGroup(engines),
    cycleGroup(engines),
    ...heatGroups(engines),
    engineGroup(engines, row),
  ].filter(({ rows }) => rows.length > 0);
}

type MakeRow = (name: string, values: readonly (number | null)[]) => TableRow;

function headingAt(altitude: number, row: ConditionRow | undefined): string {
  const outside = row ? `, ${pressureText(row.ambientPressure)} outside` : '';
  const where = altitude === 0 ? 'At the pad' : `At ${showStated('altitude', altitude).text}`;
  return `${where}${outside}`;
}

export function pressureText(pressure: number): string {
  if (pressure === 0) return 'no pressure at all';
  return showStated('ambientPressure', pressure).text;
}

/** The band of one figure in the row of each engine that fits. */
type BandsAt = (key: 'thrust' | 'specificImpulse') => readonly Band[];
type Band = EngineAnswer['bands'][string] | undefined;

function bandsAt(
  engines: readonly EngineAnswer[],
  list: 'altitudes' | 'ambients',
  fits: (row: ConditionRow) => boolean,
): BandsAt {
  return (key) => engines.map(({ bands, [list]: rows }) => bands[`${list}[${rows.findIndex(fits)}].${key}`]);
}

/** `293 to 300 s`: between which ends 95 % of what is not known leaves the number above; no row where nothing is left open. */
function bandRows(name: string, bands: readonly Band[]): readonly TableRow[] {
  if (bands.every((band) => band === undefined)) return [];
  const entry = quantity(name);
  return [
    {
      label: '  within, 95 %',
      cells: bands.map((band) => {
        if (band === undefined) return '';
        const unit = unitFor(entry, [band.low, band.high]);
        return `${showIn(unit, band.low, 3).number} to ${showIn(unit, band.high, 3).text}`;
      }),
    },
  ];
}

function groupAt(
  heading: string,
  rows: readonly (ConditionRow | undefined)[],
  makeRow: MakeRow,
  bands: BandsAt,
): TableGroup {
  if (rows.every((row) => row === undefined)) return { heading, rows: [] };
  return {
    heading,
    rows: [
      makeRow(
        'thrust',
        rows.map((row) => row?.thrust ?? null),
      ),
      ...bandRows('thrust', bands('thrust')),
      makeRow(
        'specificImpulse',
        rows.map((row) => row?.specificImpulse ?? null),
      ),
      ...bandRows('specificImpulse', bands('specificImpulse')),
      ...modeRows(rows),
      { label: 'the gas', cells: rows.map((row) => (row ? flowWords(row) : 'no number')) },
      ...plugRows(rows),
      ...separationRows(rows),
    ],
  };
}

/** In which of its two forms a nozzle that changes over works here, e.g. `skirt drawn up`; no row where none changes. */
function modeRows(rows: readonly (ConditionRow | undefined)[]): readonly TableRow[] {
  const modes = rows.map((row) => row?.mode);
  if (modes.every((mode) => mode === undefined)) return [];
  return [{ label: 'works in the form', cells: modes.map((mode) => mode ?? 'has one form') }];
}

function flowWords({ flow, separation, plug }: ConditionRow): string {
  if (separation !== undefined) return caseWords[separation.case];
  switch (flow.state) {
    case 'full':
      return plug === undefined ? 'fills the nozzle' : 'stays on the plug';
    case 'near the limit':
      return 'fills it, near the limit';
    case 'separated':
      return 'lets go of the wall';
    case 'unchoked':
      return 'does not choke';
  }
}

/** Where the gas lets go and what the criteria make of the thrust; no rows where none lets it go. */
function separationRows(rows: readonly (ConditionRow | undefined)[]): readonly TableRow[] {
  const found = rows.map((row) => row?.separation);
  if (found.every((separation) => separation === undefined || separation.lettingGo === 0)) return [];
  return [
    {
      label: 'where it lets go, area ratio',
      cells: found.map((separation) => {
        if (separation === undefined || separation.lettingGo === 0) return 'at the lip';
        const { place, earliest, latest } = separation;
        return spanText('separation.place.areaRatio', place.areaRatio, earliest.areaRatio, latest.areaRatio);
      }),
    },
    {
      label: 'criteria that let it go',
      cells: found.map((separation) =>
        separation === undefined ? 'none' : `${separation.lettingGo} of ${separation.counted}`,
      ),
    },
    {
      label: quantity('separation.thrust').label,
      cells: found.map((separation) => {
        const thrust = separation?.thrust;
        if (!thrust || separation.lettingGo === 0) return 'one value';
        const entry = quantity('separation.thrust');
        const unit = unitFor(entry, [thrust.low, thrust.high]);
        return `${showIn(unit, thrust.low, 3).text} to ${showIn(unit, thrust.high, 3).text}`;
      }),
    },
  ];
}

/** Down to which throttle the gas fills the nozzle at sea level; no row where no engine has a wall to leave. */
function throttleRows(engines: readonly EngineAnswer[]): readonly TableRow[] {
  const name = 'separation.lowestFullThrottle';
  const found = engines.map(({ separation }) => separation?.lowestFullThrottle);
  if (found.every((throttle) => throttle === undefined)) return [];
  const cells = found.map((throttle) =>
    throttle === undefined ? 'not judged' : spanText(name, throttle.best, throttle.low, throttle.high),
  );
  return [{ label: quantity(name).label, cells }];
}

/** `21 (18 to 25)` */
function spanText(name: string, best: number, low: number, high: number): string {
  const text = (value: number): string => show(name, value).text;
  return low === high ? text(best) : `${text(best)} (${text(low)} to ${text(high)})`;
}

function withPlumes(group: TableGroup, plumes: readonly (PlumeFigures | undefined)[]): TableGroup {
  return group.rows.length === 0 ? group : { ...group, rows: [...group.rows, ...plumeRows(plumes)] };
}

function vacuumGroup(engines: readonly EngineAnswer[], makeRow: MakeRow): TableGroup {
  return {
    heading: 'In vacuum',
    rows: [
      makeRow(
        'thrust',
        engines.map((engine) => engine.vacuum.thrust),
      ),
      ...bandRows(
        'thrust',
        engines.map(({ bands }) => bands['vacuum.thrust']),
      ),
      makeRow(
        'specificImpulse',
        engines.map((engine) => engine.vacuum.specificImpulse),
      ),
      ...bandRows(
        'specificImpulse',
        engines.map(({ bands }) => bands['vacuum.specificImpulse']),
      ),
      ...plumeRows(engines.map((engine) => engine.plume.vacuum)),
    ],
  };
}

function engineGroup(engines: readonly EngineAnswer[], makeRow: MakeRow): TableGroup {
  const rows: readonly (readonly [string, (engine: EngineAnswer) => number | null])[] = [
    ['massFlow', (e) => e.massFlow],
    ['characteristicVelocity', (e) => e.characteristicVelocity],
    ['chamber.temperature', (e) => e.chamber.temperature],
    ['throat.diameter', (e) => e.throat.diameter],
    ['exit.diameter', (e) => e.exit.diameter],
    ['contour.totalLength', (e) => e.contour.totalLength],
    ['matched.altitude', (e) => e.matched.altitude],
  ];
  return {
    heading: 'Wherever it flies',
    rows: [
      ...rows.flatMap(([name, of]) => [
        makeRow(name, engines.map(of)),
        ...bandRows(
          name,
          engines.map(({ bands }) => bands[name]),
        ),
      ]),
      ...throttleRows(engines),
    ],
  };
}

/** Cells of a row share a unit, so that they can be compared at a glance, unless their sizes are worlds apart. */
function quantityRow(name: string, values: readonly (number | null)[], withDifference: boolean): TableRow {
  const entry = quantity(name);
  const cells = values.map((value) => (value === null ? 'no number' : cellText(entry, value, values)));
  if (!withDifference) return { label: entry.label, cells };
  const [base = null, other = null] = values;
  const words = base === null || other === null ? '' : differenceInWords(name, base, other);
  return { label: entry.label, cells: [...cells, words] };
}

const WORLDS_APART = 1000;

function cellText(entry: CatalogueEntry, value: number, row: readonly (number | null)[]): string {
  const sizes = row.flatMap((other) => (other === null || other === 0 ? [] : Math.abs(other)));
  const apart = Math.max(...sizes) > WORLDS_APART * Math.min(...sizes);
  return showIn(unitFor(entry, apart ? [value] : row), value, entry.digits).text;
}

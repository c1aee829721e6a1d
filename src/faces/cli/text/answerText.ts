/** The answer of a study as a reader at a terminal meets it: question, answer, comparison, honesty. */

import { findQuantity, quantity } from '../../../answer/catalogue.ts';
import { showIn, showStated, unitFor } from '../../../answer/display.ts';
import type { ConditionRow, EngineAnswer, StudyAnswer } from '../../../answer/model.ts';
import { type TableGroup, type TableRow, tableText } from './table.ts';
import { wrapped } from './wrap.ts';

/** What was asked for besides the pad, 10 km and vacuum, by altitude [m] or by pressure [Pa]. */
export interface Asked {
  readonly altitudes: readonly number[];
  readonly ambients: readonly number[];
}

export function answerText(answer: StudyAnswer, asked: Asked, width: number): string {
  const engines = columnsOf(answer);
  const parts = [
    wrapped(answer.question, width),
    shortAnswerText(answer, width),
    failedText(answer, width),
    heldEqualText(answer, width),
    engines.length === 0
      ? ''
      : tableText(
          engines.map((engine) => engine.name),
          groupsOf(engines, asked),
        ),
    crossingText(answer),
    notesText(engines, width),
    listText('Why a number is missing', missingReasons(engines, asked), width),
    listText(
      'What the engines are',
      engines.map((e) => `${e.name}: ${e.description}; ${e.propellants}; ${e.chemistry}.`),
      width,
    ),
    listText('Not in these numbers', notInNumbers(answer, engines), width),
    listText('Handle with care', answer.hazards, width),
    wrapped(answer.caution, width),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

/** Base and other first, then the rest in the study's order. */
function columnsOf(answer: StudyAnswer): readonly EngineAnswer[] {
  const all = Object.values(answer.engines);
  const pair = answer.comparison ? [answer.comparison.base, answer.comparison.other] : [];
  const first = pair.flatMap((id) => answer.engines[id] ?? []);
  return [...first, ...all.filter((engine) => !pair.includes(engine.id))];
}

function shortAnswerText(answer: StudyAnswer, width: number): string {
  const { verdict, text } = answer.shortAnswer;
  return `${wrapped(`${verdict}.`, width, '  ')}\n${wrapped(text, width, '  ')}`;
}

function failedText(answer: StudyAnswer, width: number): string {
  const items = Object.entries(answer.failed).map(
    ([id, problem]) => `${id}: ${problem.what} ${problem.mend}`,
  );
  return listText('Could not be computed', items, width);
}

function heldEqualText(answer: StudyAnswer, width: number): string {
  const comparison = answer.comparison;
  if (!comparison) return '';
  const equal = comparison.heldEqual.length === 0 ? 'nothing' : comparison.heldEqual.join(', ');
  const differs = comparison.differs.length === 0 ? 'nothing' : comparison.differs.join(', ');
  return [
    wrapped(equal, width, '             ', 'Held equal   '),
    wrapped(differs, width, '             ', 'Different    '),
  ].join('\n');
}

function groupsOf(engines: readonly EngineAnswer[], asked: Asked): readonly TableGroup[] {
  const altitudes = [...new Set([0, 10_000, ...asked.altitudes])].sort((a, b) => a - b);
  const groups = altitudes.map((altitude) => {
    const rows = engines.map((engine) => engine.altitudes.find((row) => row.altitude === altitude));
    return groupAt(headingAt(altitude, rows[0]), rows);
  });
  const stands = asked.ambients.map((pressure) => {
    const rows = engines.map((engine) => engine.ambients.find((row) => row.ambientPressure === pressure));
    return groupAt(`In surroundings of ${pressureText(pressure)}`, rows);
  });
  return [...groups, vacuumGroup(engines), ...stands, engineGroup(engines)].filter(
    (group) => group.rows.length > 0,
  );
}

function headingAt(altitude: number, row: ConditionRow | undefined): string {
  const outside = row ? `, ${pressureText(row.ambientPressure)} outside` : '';
  const where = altitude === 0 ? 'At the pad' : `At ${showStated('altitude', altitude).text}`;
  return `${where}${outside}`;
}

function groupAt(heading: string, rows: readonly (ConditionRow | undefined)[]): TableGroup {
  if (rows.every((row) => row === undefined)) return { heading, rows: [] };
  return {
    heading,
    rows: [
      quantityRow(
        'thrust',
        rows.map((row) => row?.thrust ?? null),
      ),
      quantityRow(
        'specificImpulse',
        rows.map((row) => row?.specificImpulse ?? null),
      ),
      { label: 'the gas', cells: rows.map((row) => (row ? flowWords(row) : 'no number')) },
    ],
  };
}

function flowWords(row: ConditionRow): string {
  switch (row.flow.state) {
    case 'full':
      return 'fills the nozzle';
    case 'near the limit':
      return 'still fills the nozzle, near the limit';
    case 'separated':
      return 'lets go of the wall';
    case 'unchoked':
      return 'never reaches the speed of sound';
  }
}

function vacuumGroup(engines: readonly EngineAnswer[]): TableGroup {
  return {
    heading: 'In vacuum',
    rows: [
      quantityRow(
        'thrust',
        engines.map((engine) => engine.vacuum.thrust),
      ),
      quantityRow(
        'specificImpulse',
        engines.map((engine) => engine.vacuum.specificImpulse),
      ),
    ],
  };
}

function engineGroup(engines: readonly EngineAnswer[]): TableGroup {
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
    rows: rows.map(([name, of]) => quantityRow(name, engines.map(of))),
  };
}

/** All cells of a row in one unit, so that they can be compared at a glance. */
function quantityRow(name: string, values: readonly (number | null)[]): TableRow {
  const entry = quantity(name);
  const unit = unitFor(entry, values);
  return {
    label: entry.label,
    cells: values.map((value) => (value === null ? 'no number' : showIn(unit, value, entry.digits).text)),
  };
}

function pressureText(pressure: number): string {
  if (pressure === 0) return 'no pressure at all';
  const entry = quantity('ambientPressure');
  return showIn(unitFor(entry, [pressure]), pressure, entry.digits).text;
}

function crossingText(answer: StudyAnswer): string {
  const crossings = answer.comparison?.crossings ?? [];
  if (crossings.length === 0) return '';
  const entry = quantity('comparison.crossing');
  const where = crossings.map((z) => showIn(entry.unit, z, z < 10_000 ? 2 : 3).text).join(', ');
  return `Equal specific impulse at ${where}.`;
}

function notesText(engines: readonly EngineAnswer[], width: number): string {
  return listText(
    'To know about the inputs',
    engines.flatMap((engine) => engine.notes.map((note) => `${engine.name}: ${note}`)),
    width,
  );
}

/** Reasons for the missing numbers that this page shows, each once. */
function missingReasons(engines: readonly EngineAnswer[], asked: Asked): readonly string[] {
  const shown = new Set([0, 10_000, ...asked.altitudes]);
  const lines = engines.flatMap((engine) =>
    engine.reasons
      .filter(({ path }) => {
        const row = /^altitudes\[(\d+)\]/.exec(path);
        if (!row) return !path.startsWith('seaLevel');
        const altitude = engine.altitudes[Number(row[1])]?.altitude;
        return altitude !== null && altitude !== undefined && shown.has(altitude);
      })
      .map(({ path, reason, mend }) => `${engine.name}, ${whereOf(engine, path)}: ${reason} ${mend}`),
  );
  return [...new Set(lines)];
}

function whereOf(engine: EngineAnswer, path: string): string {
  const row = /^(altitudes|ambients)\[(\d+)\]/.exec(path);
  if (!row) return labelOf(path);
  const index = Number(row[2]);
  if (row[1] === 'ambients') {
    return `in ${pressureText(engine.ambients[index]?.ambientPressure ?? 0)}`;
  }
  const altitude = engine.altitudes[index]?.altitude ?? 0;
  return altitude === 0 ? 'at the pad' : `at ${showStated('altitude', altitude).text}`;
}

function labelOf(path: string): string {
  return findQuantity(path)?.label ?? path;
}

function notInNumbers(answer: StudyAnswer, engines: readonly EngineAnswer[]): readonly string[] {
  return [...new Set([...engines.flatMap((engine) => engine.omitted), ...answer.notModelled])];
}

function listText(heading: string, items: readonly string[], width: number): string {
  if (items.length === 0) return '';
  return [heading, ...items.map((item) => wrapped(item, width, '    ', '  - '))].join('\n');
}

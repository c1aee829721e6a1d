/** The answer of a study as a reader at a terminal meets it: question, answer, comparison, honesty. */

import { findQuantity, quantity } from '../../../answer/catalogue.ts';
import { changeWords } from '../../../answer/changeWords.ts';
import { cycleVerdict } from '../../../answer/cycle/cycleWords.ts';
import { showIn, showStated } from '../../../answer/display.ts';
import { vehicleLines } from '../../../answer/flight/index.ts';
import { coolingVerdict, heatComparedWords } from '../../../answer/heat/heatWords.ts';
import type { EngineAnswer, StudyAnswer } from '../../../answer/model.ts';
import { besideWords, type CheckedSentence } from '../../../answer/sentences/index.ts';
import { type Asked, engineTables, pressureText } from './engineTables.ts';
import { publishedText } from './publishedText.ts';
import { wrapped } from './wrap.ts';

export function answerText(
  answer: StudyAnswer,
  sentences: readonly CheckedSentence[],
  asked: Asked,
  width: number,
): string {
  const engines = columnsOf(answer);
  const parts = [
    wrapped(answer.question, width),
    shortAnswerText(answer, width),
    failedText(answer, width),
    heldEqualText(answer, width),
    engineTables(engines, answer.comparison !== null, asked, width),
    crossingText(answer),
    publishedText(engines, width),
    sentencesText(sentences, width),
    vehiclesText(answer, width),
    cyclesText(engines, width),
    heatText(answer, engines, width),
    changesText(engines, width),
    sideLoadsText(engines, asked, width),
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

function vehiclesText({ vehicles }: StudyAnswer, width: number): string {
  return listText('What the engines lift', vehicles.flatMap(vehicleLines), width);
}

function cyclesText(engines: readonly EngineAnswer[], width: number): string {
  const told = engines.flatMap((engine) =>
    engine.cycle === undefined ? [] : [`${engine.name}: ${cycleVerdict(engine)}`],
  );
  return told.length === 0 ? '' : listText('Who drives the pumps, and what it costs', told, width);
}

function heatText(answer: StudyAnswer, engines: readonly EngineAnswer[], width: number): string {
  const { comparison } = answer;
  const base = comparison && answer.engines[comparison.base];
  const other = comparison && answer.engines[comparison.other];
  const verdicts = engines.flatMap(({ name, cooling }) =>
    cooling ? [`${name}: ${[coolingVerdict(cooling), ...cooling.notes].join(' ')}`] : [],
  );
  if (verdicts.length === 0) return '';
  const compared = base && other ? heatComparedWords(base, other) : null;
  return listText('Do the walls live?', [...verdicts, ...(compared === null ? [] : [compared])], width);
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

function crossingText(answer: StudyAnswer): string {
  const crossings = answer.comparison?.crossings ?? [];
  if (crossings.length === 0) return '';
  const entry = quantity('comparison.crossing');
  const where = crossings.map((z) => showIn(entry.unit, z, z < 10_000 ? 2 : 3).text).join(', ');
  return `Equal specific impulse at ${where}.`;
}

function sentencesText(sentences: readonly CheckedSentence[], width: number): string {
  const items = sentences.map(
    (sentence) => `${sentence.verdict}: “${sentence.say}” ${besideWords(sentence)}`,
  );
  return listText('Sentences (plumeline check tells more)', items, width);
}

function changesText(engines: readonly EngineAnswer[], width: number): string {
  return listText(
    'Where a nozzle changes over',
    engines.flatMap(({ name, change }) => (change === undefined ? [] : [`${name}: ${changeWords(change)}`])),
    width,
  );
}

/** The caution that goes with gas that has let go of a wall at any place of the tables. */
function sideLoadsText(engines: readonly EngineAnswer[], asked: Asked, width: number): string {
  const shown = new Set([0, 10_000, ...asked.altitudes]);
  const items = engines.flatMap(({ name, altitudes, ambients }) => {
    const rows = [
      ...altitudes.filter(({ altitude }) => altitude !== null && shown.has(altitude)),
      ...ambients,
    ];
    const warned = rows.find(({ separation }) => separation?.sideLoads !== undefined);
    return warned === undefined ? [] : [`${name}: ${warned.separation?.sideLoads}`];
  });
  return listText('Sideways forces', items, width);
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
  const isShown = (engine: EngineAnswer, path: string): boolean => {
    const row = /^altitudes\[(\d+)\]/.exec(path);
    if (!row) return /^(altitudes|ambients|vacuum|matched)/.test(path);
    const altitude = engine.altitudes[Number(row[1])]?.altitude;
    return altitude !== null && altitude !== undefined && shown.has(altitude);
  };
  const lines = engines.flatMap((engine) =>
    engine.reasons
      .filter(({ path }) => isShown(engine, path))
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

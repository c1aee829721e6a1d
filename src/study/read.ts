/** A study's text to its meaning: SI values, every engine complete, every problem with its place. */
import { isAlias, isMap } from 'yaml';
import { tornItem } from './commaInFlow.ts';
import {
  type Cursor,
  describeFound,
  type Entries,
  entriesAt,
  itemsAt,
  keyOffset,
  offsetAt,
  quantityAt,
  refuseOtherKeys,
  textAt,
} from './cursor.ts';
import {
  altitudeRange,
  ambientPressureRange,
  compareKeys,
  ENGINE_ID,
  PLAIN_ID,
  type Range,
  STUDY_FORMAT,
  sentenceKeys,
  sourceKeys,
  topKeys,
} from './form.ts';
import { readMeasured } from './measured/readMeasured.ts';
import { migrateStudy } from './migrations.ts';
import type { EngineInput, Quantity, SentenceInput, SourceInput, StudyOutcome } from './model.ts';
import { type KnownName, nameBook } from './names.ts';
import { nearestName } from './nearest.ts';
import { citedSources, idFits, proseAt, saidAt, testAt } from './prose.ts';
import { readAnalogies } from './readAnalogies.ts';
import { type EngineContext, engineNameAt, readEngine } from './readEngine.ts';
import { readFacts } from './readFacts.ts';
import { customIngredientsAt } from './readIngredients.ts';
import { readPackage } from './readPackage.ts';
import { readMaps, readNeeds, readSweeps } from './readSweeps.ts';
import { readVehicles } from './readVehicles.ts';
import { listNames, quote, type Report } from './report.ts';
import type { EngineDraft } from './sections.ts';
import type { QuantityKind } from './unitTable.ts';
import { readYaml } from './yamlText.ts';

export interface ReadOptions {
  /** Name of the file, for messages. */ readonly file?: string;
  /** Propellants of the data. Absent: names are taken as they are written. */
  readonly knownPropellants?: readonly KnownName[];
  /** Gases that can be heated. Absent: as `knownPropellants`. */
  readonly knownGases?: readonly KnownName[];
}

const MOST_ENGINES = 50;
const MOST_CONDITIONS = 200;

/** The version of the file form, or null with a problem. */
function readVersion(entries: Entries, report: Report): number | null {
  const at = entries.get('plumeline');
  if (at === undefined) {
    const near = nearestName('plumeline', entries.keys());
    report.problem(
      {
        code: 'version-missing',
        what: `The study does not say which version of the file form it is written in.${near === null ? '' : ` There is a key ${quote(near)}.`}`,
        why: 'Without it a later program could misread the file.',
        mend: `Begin the file with the line plumeline: ${STUDY_FORMAT}`,
      },
      'plumeline',
      0,
    );
    return null;
  }
  const text = textAt(at, 'a version number', `Write plumeline: ${STUDY_FORMAT}`, report)?.trim();
  if (text === undefined) return null;
  if (!/^[1-9]\d{0,8}$/.test(text)) {
    report.problem(
      {
        code: 'version-unreadable',
        what: `${quote(text)} is not a version of the file form.`,
        mend: `Write plumeline: ${STUDY_FORMAT}`,
      },
      at.path,
      offsetAt(at),
    );
    return null;
  }
  const version = Number(text);
  if (version > STUDY_FORMAT) {
    report.problem(
      {
        code: 'version-newer',
        what: `The study is written in version ${version} of the file form; this program knows up to version ${STUDY_FORMAT}.`,
        why: 'A newer form may hold what this program would misread or lose.',
        mend: 'Use a newer program. The file has been left as it is.',
        facts: { version, known: STUDY_FORMAT },
      },
      at.path,
      offsetAt(at),
    );
    return null;
  }
  return version;
}

function quantitiesAt(
  cursor: Cursor | undefined,
  kind: QuantityKind,
  range: Range,
  example: string,
  report: Report,
): Quantity[] {
  if (cursor === undefined) return [];
  const items = itemsAt(cursor, 'a list of values', `Write [${example}].`, report) ?? [];
  if (items.length > MOST_CONDITIONS) {
    report.problem(
      {
        code: 'too-many-values',
        what: `${quote(cursor.path)} lists ${items.length} values; up to ${MOST_CONDITIONS} are read.`,
        mend: 'Keep those that matter; the standard altitudes are computed anyway.',
      },
      cursor.path,
      offsetAt(cursor),
    );
    return [];
  }
  return items.flatMap((item, i) => {
    const pointed = tornItem(items, i);
    if (pointed !== null) {
      report.problem(
        {
          code: 'decimal-comma',
          what: `${describeFound(item)} in ${quote(cursor.path)} has no unit.`,
          mend: `If ${pointed.replace('.', ',')} is one value, write ${pointed}, with a point; else give each value its unit.`,
        },
        item.path,
        offsetAt(item),
      );
      return [];
    }
    const read = quantityAt(item, [kind], range, example, report);
    if (read === null) return [];
    const { kind: _, ...quantity } = read;
    return [quantity];
  });
}

/** For each engine the one it is like; null: none; 'broken': named, but not to be followed. */
function readLikes(
  engines: ReadonlyMap<string, Entries>,
  context: EngineContext,
): Map<string, string | 'broken' | null> {
  const likes = new Map<string, string | 'broken' | null>();
  for (const [id, entries] of engines) {
    const at = entries.get('like');
    likes.set(id, at === undefined ? null : (engineNameAt(at, context) ?? 'broken'));
  }
  for (const id of engines.keys()) {
    const chain = [id];
    for (let next = likes.get(id); next && next !== 'broken'; next = likes.get(next)) {
      const start = chain.indexOf(next);
      if (start < 0) {
        chain.push(next);
        continue;
      }
      const circle = chain.slice(start);
      const at = engines.get(circle.at(-1)!)!.get('like')!;
      context.report.problem(
        {
          code: 'like-circle',
          what:
            circle.length === 1
              ? `The engine ${quote(next)} is like itself.`
              : `The engines ${circle.join(', ')} are like each other in a circle.`,
          mend: 'Give one of them inputs of its own instead of like.',
        },
        at.path,
        offsetAt(at),
      );
      for (const member of circle) likes.set(member, 'broken');
      break;
    }
  }
  return likes;
}

/** Sizes taken from each other in a circle have no size at all. */
function refuseSizeCircles(
  engines: readonly EngineInput[],
  cursors: ReadonlyMap<string, Cursor>,
  report: Report,
): void {
  const next = new Map(engines.map((e) => [e.id, e.size.by === 'same' ? e.size.as : null]));
  const toldOf = new Set<string>();
  for (const { id } of engines) {
    const chain: string[] = [];
    let at: string | null = id;
    while (at !== null && !chain.includes(at)) {
      chain.push(at);
      at = next.get(at) ?? null;
    }
    if (at === null || toldOf.has(at)) continue;
    const circle = chain.slice(chain.indexOf(at));
    for (const member of circle) toldOf.add(member);
    const last = cursors.get(circle.at(-1)!)!;
    report.problem(
      {
        code: 'size-circle',
        what: `The engines ${circle.join(', ')} take their size from each other in a circle.`,
        mend: 'Give one of them a throat, an exit or a thrust.',
      },
      `${last.path}.size`,
      keyOffset(last),
    );
  }
}

function readEngines(
  cursor: Cursor,
  context: Omit<EngineContext, 'engineIds'>,
): EngineContext & { readonly engines: readonly EngineInput[] } {
  const { report } = context;
  const mend =
    'Write at least one engine: engines: { bell: { propellants: …, chamber: …, nozzle: …, size: … } }.';
  const found = entriesAt(cursor, 'a map of engines', mend, report) ?? new Map<string, Cursor>();
  if (isMap(cursor.node) && found.size === 0) {
    report.problem(
      { code: 'value-missing', what: 'The study has no engine.', mend },
      cursor.path,
      keyOffset(cursor),
    );
  }
  if (found.size > MOST_ENGINES) {
    report.problem(
      {
        code: 'too-many-engines',
        what: `The study has ${found.size} engines; up to ${MOST_ENGINES} are read.`,
        mend: 'Split it into several studies.',
      },
      cursor.path,
      keyOffset(cursor),
    );
    return { ...context, engineIds: [], engines: [] };
  }
  const maps = new Map<string, Entries>();
  for (const [id, at] of found) {
    const words =
      'Use a letter, then letters, digits and underscores, up to 40 in all: bell, plugB, short_bell.';
    if (!idFits(id, ENGINE_ID, at, 'an engine', words, report)) continue;
    const entries = entriesAt(at, 'the inputs of an engine', mend, report);
    if (entries !== null) maps.set(id, entries);
  }
  // An engine whose own text cannot be read may still be named by others.
  const full: EngineContext = { ...context, engineIds: [...found.keys()] };
  const likes = readLikes(maps, full);
  const drafts = new Map<string, EngineDraft>();
  const draft = (id: string): EngineDraft | 'broken' => {
    const entries = maps.get(id);
    if (entries === undefined) return 'broken';
    const done = drafts.get(id);
    if (done !== undefined) return done;
    const like = likes.get(id) ?? null;
    const base = like === null || like === 'broken' ? like : draft(like);
    const read = readEngine(id, found.get(id)!, entries, base, like === 'broken' ? null : like, full);
    drafts.set(id, read);
    return read;
  };
  const engines = [...maps.keys()].flatMap((id) => {
    const read = draft(id);
    return read === 'broken' || read.engine === null ? [] : [read.engine];
  });
  refuseSizeCircles(engines, found, report);
  return { ...full, engines };
}

function readCompare(cursor: Cursor | undefined, context: EngineContext) {
  if (cursor === undefined) return null;
  const { report } = context;
  const mend = 'Write { base: bell, other: adapting }.';
  const entries = entriesAt(cursor, 'the two engines to compare', mend, report);
  if (entries === null) return null;
  refuseOtherKeys(entries, compareKeys, 'compare', report);
  const [base, other] = compareKeys.map((key) => {
    const at = entries.get(key);
    if (at !== undefined) return engineNameAt(at, context);
    report.problem(
      { code: 'key-missing', what: `“compare” has no ${key}.`, mend },
      `${cursor.path}.${key}`,
      keyOffset(cursor),
    );
    return null;
  });
  if (!base || !other) return null;
  if (base === other) {
    const at = entries.get('other')!;
    report.problem(
      {
        code: 'compare-with-itself',
        what: `${quote(base)} is compared with itself.`,
        mend: `Name two engines of ${listNames(context.engineIds)}.`,
      },
      at.path,
      offsetAt(at),
    );
  }
  return { base, other };
}

function readSources(cursor: Cursor | undefined, report: Report): SourceInput[] {
  if (cursor === undefined) return [];
  const mend = 'Write each as id: { title: …, author: …, year: 1972, where: … }.';
  const sources: SourceInput[] = [];
  for (const [id, at] of entriesAt(cursor, 'a map of sources', mend, report) ?? []) {
    const words = 'Use letters, digits, dashes, dots and underscores, up to 64 of them.';
    const fits = idFits(id, PLAIN_ID, at, 'a source', words, report);
    const entries = entriesAt(at, 'a source', mend, report);
    if (entries === null) continue;
    refuseOtherKeys(entries, sourceKeys, 'a source', report);
    if (!entries.has('title')) {
      report.problem(
        { code: 'key-missing', what: `The source ${quote(id)} has no title.`, mend },
        `${at.path}.title`,
        keyOffset(at),
      );
    }
    const prose = (key: 'title' | 'author' | 'where'): string | null => {
      const found = entries.get(key);
      return found === undefined ? null : proseAt(found, 'text', `${key}: …`, report);
    };
    const title = prose('title');
    const author = prose('author');
    const where = prose('where');
    const yearAt = entries.get('year');
    const yearText = yearAt && textAt(yearAt, 'a year', 'Write it like 1972.', report)?.trim();
    const yearFits = yearText !== undefined && /^\d{4}$/.test(yearText);
    if (yearAt && yearText !== undefined && !yearFits) {
      report.problem(
        { code: 'year-unreadable', what: `${quote(yearText)} is not a year.`, mend: 'Write it like 1972.' },
        yearAt.path,
        offsetAt(yearAt),
      );
    }
    if (fits && title !== null)
      sources.push({ id, title, author, year: yearFits ? Number(yearText) : null, where });
  }
  return sources;
}

function readSentences(
  cursor: Cursor | undefined,
  sourceIds: readonly string[],
  report: Report,
): SentenceInput[] {
  if (cursor === undefined) return [];
  const mend = 'Write each as - { id: lets-go, say: …, holds: … }.';
  const sentences: SentenceInput[] = [];
  const ids = new Set<string>();
  for (const item of itemsAt(cursor, 'a list of sentences', mend, report) ?? []) {
    const entries = entriesAt(item, 'a sentence', mend, report);
    if (entries === null) continue;
    refuseOtherKeys(entries, sentenceKeys, 'a sentence', report);
    for (const key of ['id', 'say']) {
      if (entries.has(key)) continue;
      report.problem(
        { code: 'key-missing', what: `The sentence ${quote(item.path)} has no ${key}.`, mend },
        `${item.path}.${key}`,
        offsetAt(item),
      );
    }
    const idAt = entries.get('id');
    const id = idAt ? (textAt(idAt, 'an id', mend, report)?.trim() ?? null) : null;
    if (idAt && id !== null) {
      const words = 'Use letters, digits, dashes, dots and underscores, up to 64 of them.';
      const valueAt = { ...idAt, key: null };
      if (!idFits(id, PLAIN_ID, valueAt, 'a sentence', words, report)) continue;
      if (ids.has(id)) {
        report.problem(
          {
            code: 'id-twice',
            what: `Two sentences have the id ${quote(id)}.`,
            mend: 'Give each an id of its own.',
          },
          idAt.path,
          offsetAt(idAt),
        );
      }
      ids.add(id);
    }
    const sayAt = entries.get('say');
    const say = sayAt ? proseAt(sayAt, 'a sentence', 'say: The gas lets go of the wall.', report) : null;
    const holdsAt = entries.get('holds');
    const holds = testAt(
      holdsAt,
      `The sentence ${quote(id ?? item.path)}`,
      id === null ? `${item.path}.holds` : `sentences.${id}.holds`,
      'holds: bell.exitPressure < 0.4 bar',
      report,
    );
    const said = saidAt(entries.get('said'), 'a sentence', report);
    const sources = citedSources(entries.get('sources'), sourceIds, report);
    if (id !== null && say !== null) sentences.push({ id, say, said, holds, sources });
  }
  return sentences;
}

/**
 * Read the text of a study. Pure: no file, no clock. Every problem is told at once, each with line and column;
 * with any problem there is no study, so nothing half-read is ever computed.
 */
export function readStudy(text: string, options: ReadOptions = {}): StudyOutcome {
  const { document, report } = readYaml(text, options.file ?? 'study.yaml');
  const failed = (): StudyOutcome => ({ ok: false, problems: report.problems });
  if (document === null) return failed();
  const root = (node: typeof document.contents): Cursor => ({ node, key: null, path: '' });
  const mend = `Begin with the lines plumeline: ${STUDY_FORMAT}, question: … and engines: …`;
  if (document.contents === null || isAlias(document.contents)) {
    report.problem({ code: 'file-empty', what: 'The file holds no study.', mend }, '', 0);
    return failed();
  }
  const written = entriesAt(root(document.contents), 'a map of keys', mend, report);
  const version = written && readVersion(written, report);
  if (written === null || version === null) return failed();
  const entries =
    version === STUDY_FORMAT
      ? written
      : entriesAt(root(migrateStudy(document, version).contents), 'a map of keys', mend, report);
  if (entries === null) return failed();
  refuseOtherKeys(entries, topKeys, 'a study', report);

  const known = options.knownPropellants;
  const propellantBook = known === undefined ? null : nameBook(known);
  const gases = options.knownGases ?? known;
  const gasBook = gases === undefined ? null : nameBook(gases);
  const customAt = entries.get('ingredients');
  const custom = customAt ? customIngredientsAt(customAt, propellantBook, report) : new Map<string, never>();

  const needed = (key: 'question' | 'engines', example: string): Cursor | null => {
    const at = entries.get(key);
    if (at !== undefined) return at;
    report.problem(
      { code: 'key-missing', what: `The study has no ${key}.`, mend: `Add ${example}.` },
      key,
      0,
    );
    return null;
  };
  const questionAt = needed('question', 'the line question: and what you want to know');
  const question = questionAt && proseAt(questionAt, 'a question', 'question: Which one lifts more?', report);
  const enginesAt = needed('engines', 'the section engines: with at least one engine');
  const sourcesNode = entries.get('sources')?.node;
  const sourceIds = isMap(sourcesNode) ? sourcesNode.items.map((pair) => String(pair.key)) : [];
  const read = enginesAt && readEngines(enginesAt, { custom, propellantBook, gasBook, sourceIds, report });
  const vehicles = read ? readVehicles(entries.get('vehicles'), read) : [];
  const compare = read ? readCompare(entries.get('compare'), read) : null;
  const altitudes = quantitiesAt(entries.get('altitudes'), 'length', altitudeRange, '5 km', report);
  const ambients = quantitiesAt(entries.get('ambients'), 'pressure', ambientPressureRange, '0.2 bar', report);
  const sources = readSources(entries.get('sources'), report);
  const sentences = readSentences(entries.get('sentences'), sourceIds, report);
  const facts = readFacts(entries.get('facts'), sourceIds, report);
  const analogies = readAnalogies(entries.get('analogies'), sourceIds, report);
  const engineIds = read?.engineIds ?? [];
  const sweeps = readSweeps(entries.get('sweeps'), engineIds, report);
  const maps = readMaps(entries.get('maps'), engineIds, report);
  const needs = readNeeds(entries.get('needs'), engineIds, report);
  const packaged = readPackage(entries.get('package'), report);
  const measured = readMeasured(
    entries.get('measured'),
    { engineIds, vehicleIds: vehicles.map(({ id }) => id), sourceIds },
    report,
  );

  if (report.problems.length > 0 || question === null || read === null) return failed();
  return {
    ok: true,
    study: {
      format: version,
      question,
      engines: read.engines,
      vehicles,
      compare,
      altitudes,
      ambients,
      sentences,
      facts,
      analogies,
      sweeps,
      maps,
      needs,
      measured,
      package: packaged,
      sources,
    },
    warnings: report.warnings,
  };
}

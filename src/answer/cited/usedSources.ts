/** Everything that an answer rests on: works that its texts, models and rows of data name, and what the study cites. */

import type { PropellantRecord } from '../../physics/gas/index.ts';
import type { SourceInput, Study } from '../../study/model.ts';
import type { CheckedAnalogy } from '../analogies/model.ts';
import { findQuantity } from '../catalogue.ts';
import type { StudyAnswer } from '../model.ts';
import type { CheckedSentence } from '../sentences/model.ts';
import type { EngineSolution } from '../solution.ts';
import { BIBLIOGRAPHY, worksNamedIn } from './bibliography.ts';
import type { DataRowUsed } from './dataRows.ts';
import { namesInAnswer } from './namesInAnswer.ts';
import type { Work } from './work.ts';
import { WORKS_OF_MODELS } from './worksOfModels.ts';

/** A source and what for: one entry of a list of references. */
export interface UsedSource {
  /** Key in every list: of the work, or as the study calls it. */ readonly id: string;
  readonly work: Work | null;
  /** As the study cites it; null where only the program does. */ readonly cited: SourceInput | null;
  /** A citation in words, beside a published figure. */ readonly words: string | null;
  /** One line each: quantities, models, rows of data, sentences, published figures. */
  readonly usedFor: readonly string[];
}

export interface SourcesOf {
  readonly study: Study;
  readonly answer: StudyAnswer;
  readonly solutions: ReadonlyMap<string, EngineSolution>;
  readonly sentences: readonly CheckedSentence[];
  readonly analogies: readonly CheckedAnalogy[];
  /** Rows of coolants and walls, with their sources. */ readonly rows: readonly DataRowUsed[];
  /** Models of what is shown besides, such as whole flows: their pages in docs/methods. */ readonly shown?: readonly string[];
}

/** What the program itself brings first, in the order of its list, then what only the study cites. */
export function usedSources(of: SourcesOf): readonly UsedSource[] {
  const uses = new Map<string, Set<string>>();
  const use = (works: readonly string[], what: string): void => {
    for (const id of works) uses.set(id, (uses.get(id) ?? new Set()).add(what));
  };
  const named = (text: string, what: string): void => {
    use(
      worksNamedIn(text).map(({ id }) => id),
      what,
    );
  };
  quantitiesUsed(of, named);
  for (const model of modelsUsed(of)) use(WORKS_OF_MODELS[model] ?? [], `model ${model}`);
  for (const { name, source } of propellantRows(of.solutions)) named(source, name);
  for (const { name, source } of of.rows) named(source, name);
  const cited = new Map(of.study.sources.map((source) => [source.id, workMeant(source)] as const));
  for (const source of of.study.sources) {
    const work = cited.get(source.id) ?? null;
    if (work !== null) use([work.id], `in the study as [${source.id}]`);
  }
  const works = BIBLIOGRAPHY.filter(({ id }) => uses.has(id)).map((work): UsedSource => {
    const own = of.study.sources.find(({ id }) => cited.get(id) === work) ?? null;
    return { id: work.id, work, cited: own, words: null, usedFor: [...(uses.get(work.id) ?? [])] };
  });
  return ownIds([...works, ...onlyCited(of, cited), ...inWords(of)]);
}

/** A study may call a source as the program calls another one: each has a key of its own, and is told as what the study knows it. */
function ownIds(sources: readonly UsedSource[]): readonly UsedSource[] {
  const taken = new Set<string>();
  return sources.map((source) => {
    let id = source.id;
    for (let n = 1; taken.has(id.toLowerCase()); n++) id = `${source.id}-of-study${n === 1 ? '' : `-${n}`}`;
    taken.add(id.toLowerCase());
    if (id === source.id) return source;
    return { ...source, id, usedFor: [`in the study as [${source.id}]`, ...source.usedFor] };
  });
}

/** Quantities with a number in the answer, and those that decide a sentence. */
function quantitiesUsed({ answer, sentences }: SourcesOf, named: (text: string, what: string) => void): void {
  const deciding = sentences.flatMap(({ numbers }) => numbers.flatMap(({ quantity }) => quantity ?? []));
  for (const name of new Set([...namesInAnswer(answer), ...deciding])) {
    const entry = findQuantity(name);
    if (entry === undefined) continue;
    named(`${entry.source} ${entry.typicalError}`, entry.label);
  }
}

/** Pages of docs/methods: of the engines, and of the quantities that decide sentences. */
function modelsUsed({ answer, sentences, study, shown = [] }: SourcesOf): readonly string[] {
  const engines = Object.values(answer.engines).flatMap(({ models }) => models);
  const deciding = sentences.flatMap(({ numbers }) =>
    numbers.flatMap(({ quantity }) => (quantity === null ? [] : (findQuantity(quantity)?.model ?? []))),
  );
  const drawn = sentences.some(({ share }) => share !== null) ? ['not-knowing'] : [];
  const swept = study.sweeps.length + study.maps.length + study.needs.length > 0 ? ['sweeps'] : [];
  const flown = answer.vehicles.length > 0 ? ['flight', 'air'] : ['air'];
  return [...new Set([...engines, ...flown, ...deciding, ...drawn, ...swept, ...shown])];
}

function propellantRows(solutions: ReadonlyMap<string, EngineSolution>): readonly DataRowUsed[] {
  const records = new Map<string, PropellantRecord>();
  for (const { records: own } of solutions.values()) for (const row of own) records.set(row.id, row);
  return [...records.values()].map(({ name, enthalpySource, densitySource }) => ({
    name: `data of ${name}`,
    source: `${enthalpySource} ${densitySource}`,
  }));
}

/** The work that the study means, where its words name exactly one. */
function workMeant({ author, year, title, where }: SourceInput): Work | null {
  const found = worksNamedIn([author, year, title, where].filter((part) => part !== null).join(', '));
  return found.length === 1 ? found[0]! : null;
}

function onlyCited(
  { study, sentences, analogies }: SourcesOf,
  cited: ReadonlyMap<string, Work | null>,
): readonly UsedSource[] {
  const own = study.sources.filter(({ id }) => (cited.get(id) ?? null) === null);
  return own.map((source) => {
    const mark = `[${source.id}] `;
    const tells = [...sentences, ...analogies].filter(({ sources }) =>
      sources.some((line) => line.startsWith(mark)),
    );
    const facts = study.facts.filter(
      ({ sources, disagree }) =>
        sources.includes(source.id) || disagree?.values.some(({ source: by }) => by === source.id),
    );
    const published = study.engines.filter(({ published: rows }) =>
      rows?.rows.some(({ source: of }) => 'key' in of && of.key === source.id),
    );
    return {
      id: source.id,
      work: null,
      cited: source,
      words: null,
      usedFor: [
        ...tells.map(({ id }) => `sentence ${id}`),
        ...facts.map(({ id }) => `fact ${id}`),
        ...published.map(({ id }) => `published figures of ${id}`),
      ],
    };
  });
}

function inWords({ study }: SourcesOf): readonly UsedSource[] {
  const words = new Map<string, Set<string>>();
  for (const { name, published } of study.engines) {
    for (const { source } of published?.rows ?? []) {
      if (!('words' in source)) continue;
      words.set(source.words, (words.get(source.words) ?? new Set()).add(`published figures of ${name}`));
    }
  }
  return [...words].map(([text, usedFor], i) => ({
    id: `published-${i + 1}`,
    work: null,
    cited: null,
    words: text,
    usedFor: [...usedFor],
  }));
}

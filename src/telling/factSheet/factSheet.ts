/** What was checked, gathered into a fact sheet. */

import type { CheckedAnalogy } from '../../answer/analogies/model.ts';
import { findQuantity } from '../../answer/catalogue.ts';
import type { StudyAnswer } from '../../answer/model.ts';
import { SCRIPT_ID, type SignOffStanding, standingWords } from '../../answer/review/index.ts';
import { shareText, verdictLabel } from '../../answer/sentences/index.ts';
import type { CheckedSentence, DecidingNumber } from '../../answer/sentences/model.ts';
import { formatValue } from '../numbers/formatNumber.ts';
import { saidOnce } from '../page/saidOnce.ts';
import type { Reference } from '../sources/reference.ts';
import type {
  FactSheet,
  FactSheetItem,
  FactSheetNumber,
  FactSheetScript,
  FactSheetSignOff,
} from './model.ts';

export interface FactSheetParts {
  readonly answer: StudyAnswer;
  /** SHA-256 of `study.yaml`. */ readonly studyHash: string;
  readonly date: string | null;
  readonly sentences: readonly CheckedSentence[];
  readonly facts: readonly CheckedSentence[];
  readonly analogies: readonly CheckedAnalogy[];
  readonly standings: readonly SignOffStanding[];
  /** Its script, and SHA-256 of `script.md`. */ readonly script: Omit<FactSheetScript, 'signOffs'> | null;
  readonly references: readonly Reference[];
}

export function factSheetOf(parts: FactSheetParts): FactSheet {
  const { answer, studyHash, sentences, facts, analogies, standings, references } = parts;
  const tested = saidOnce(sentences.map(({ conditions }) => conditions));
  const signed = (id: string): readonly FactSheetSignOff[] =>
    standings
      .filter((standing) => standing.id === id)
      .map((standing) => ({
        by: standing.by,
        date: standing.date,
        stands: standing.stands,
        words: standingWords(standing),
      }));
  return {
    format: 'plumeline fact sheet 1',
    caution: answer.caution,
    question: answer.question,
    program: answer.program,
    study: { file: 'study.yaml', sha256: studyHash },
    date: parts.date,
    engines: Object.values(answer.engines).map(({ id, name, description, propellants }) => ({
      id,
      name,
      description: `${description}; ${propellants}`,
    })),
    conditions: tested.common,
    items: [
      ...sentences.map((sentence) => ({
        ...sentenceItem(sentence, signed(sentence.id)),
        conditions: tested.rest(sentence.conditions),
      })),
      ...facts.map((fact) => ({ ...sentenceItem(fact, signed(fact.id)), kind: 'fact' as const })),
      ...analogies.map((analogy) => analogyItem(analogy, signed(analogy.id))),
    ],
    script: parts.script === null ? null : { ...parts.script, signOffs: signed(SCRIPT_ID) },
    references,
  };
}

function sentenceItem(sentence: CheckedSentence, signOffs: readonly FactSheetSignOff[]): FactSheetItem {
  const { id, say, said, verdict, share, holds, wording, instead, why, problem, sources } = sentence;
  const numbers = sentence.numbers.map(numberOf);
  return {
    kind: 'sentence',
    id,
    say,
    said,
    verdict,
    label: verdictLabel(sentence),
    share,
    shareWords: share === null ? null : shareText(share),
    test: holds,
    wording,
    instead,
    why: problem === null ? why : `${why} ${problem.mend}`,
    numbers,
    parts: sentence.alternatives.map(
      ({ of, by, share: by1 }) =>
        `By ${by} (${of}): ${by1 === null ? 'no number here' : `holds in ${shareText(by1)}`}`,
    ),
    conditions: sentence.conditions,
    models: [...new Set(numbers.flatMap(({ model }) => model ?? []))],
    sources,
    signOffs,
  };
}

function numberOf({ expression, quantity, value, low, high, words }: DecidingNumber): FactSheetNumber {
  const entry = quantity === null ? undefined : findQuantity(quantity);
  return {
    expression,
    label: entry?.label ?? null,
    words,
    value,
    low,
    high,
    within:
      entry === undefined ? null : `${formatValue(entry.name, low)} to ${formatValue(entry.name, high)}`,
    equation: entry?.equation ?? null,
    model: entry?.model ?? null,
  };
}

function analogyItem(analogy: CheckedAnalogy, signOffs: readonly FactSheetSignOff[]): FactSheetItem {
  const { id, say, said, verdict, wording, why, problem, legs, stands, holdsFor, breaksWhere, sources } =
    analogy;
  const relations = stands.flatMap(({ relation }) => relation ?? []);
  return {
    kind: 'analogy',
    id,
    say,
    said,
    verdict,
    label: verdictLabel(analogy),
    share: null,
    shareWords: null,
    test: null,
    wording,
    instead: null,
    why: problem === null ? why : `${why} ${problem.mend}`,
    numbers: [],
    parts: [
      ...legs.map((leg) => `“${leg.say}” ${leg.verdict}. ${leg.found}`),
      ...relations.map(({ label, equation }) => `${label}: ${equation}`),
      `It holds for ${holdsFor}.`,
      ...breaksWhere.map(({ say: where }) => `It breaks: ${where}.`),
    ],
    conditions: [...new Set(legs.flatMap(({ conditions }) => conditions))],
    models: [],
    sources: [...new Set([...sources, ...relations.map(({ source }) => source)])],
    signOffs,
  };
}

/** Reported facts: not computed, told with their citation; one that has none is no fact to be said. */

import type { Problem } from '../../numerics/problem.ts';
import type { ReportedFact, Study } from '../../study/model.ts';
import { nearestName } from '../../study/nearest.ts';
import { listNames, quote } from '../../study/report.ts';
import type { CheckedSentence } from './model.ts';
import { citation } from './sourcesOf.ts';

type FactsOf = Pick<Study, 'facts' | 'sources'>;

export function checkFacts(study: FactsOf): readonly CheckedSentence[] {
  return study.facts.map((fact) => checkedFact(fact, study));
}

function checkedFact(fact: ReportedFact, study: FactsOf): CheckedSentence {
  const { id, say, at } = fact;
  const problem = problemOf(fact, study);
  return {
    id,
    say,
    said: true,
    holds: null,
    verdict: 'reported',
    share: null,
    shareError: null,
    numbers: [],
    wording: null,
    instead: null,
    wordingHolds: null,
    conditions: at === null ? [] : [at],
    flips: [],
    matters: [],
    alternatives: [],
    absolutes: [],
    saidNumbers: [],
    saidReasons: [],
    why: whyOf(fact, problem),
    provisional: false,
    problem,
    sources: study.sources.filter((source) => citedBy(fact).includes(source.id)).map(citation),
  };
}

const citedBy = ({ sources, disagree }: ReportedFact): readonly string[] => [
  ...sources,
  ...(disagree?.values.map(({ source }) => source) ?? []),
];

function whyOf({ disagree }: ReportedFact, problem: Problem | null): string {
  if (problem !== null) return `Reported, not computed. ${problem.what}`;
  if (disagree === null) return 'Reported, not computed.';
  const [first, second] = disagree.values;
  const followed = disagree.values[disagree.chosen - 1]!;
  return `Reported, not computed. Sources disagree: ${first.value.text} (${first.source}), ${second.value.text} (${second.source}). ${followed.value.text} is followed: ${disagree.because}`;
}

function problemOf(fact: ReportedFact, { sources }: FactsOf): Problem | null {
  const known = sources.map(({ id }) => id);
  const where = `facts.${fact.id}`;
  if (fact.sources.length === 0) {
    return {
      code: 'citation-missing',
      what: 'It has no source.',
      mend: `Name under sources where it is reported: ${listNames(known)}.`,
      where,
    };
  }
  const unknown = citedBy(fact).find((source) => !known.includes(source));
  if (unknown !== undefined) {
    const near = nearestName(unknown, known);
    return {
      code: 'citation-unknown',
      what: `Its source ${quote(unknown)} is none of the study.`,
      mend: `${near === null ? '' : `Did you mean ${near}? `}Sources of this study: ${listNames(known)}.`,
      where,
    };
  }
  return otherThanChosen(fact, where);
}

/** The value that is said must be the one that is followed. */
function otherThanChosen({ value, disagree }: ReportedFact, where: string): Problem | null {
  const followed = disagree?.values[disagree.chosen - 1];
  if (value === null || followed === undefined || value.value === followed.value.value) return null;
  return {
    code: 'fact-not-chosen',
    what: `It has the value ${value.text}, but of the two that disagree ${followed.value.text} is chosen.`,
    mend: 'Say the chosen value, or choose the other.',
    where,
    facts: { value: value.value, chosen: followed.value.value },
  };
}

/** Analogies checked leg by leg: a likeness is as good as what it makes people believe. */

import type { AnalogyInput, SentenceInput, StandsFor, Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import { resolveQuantity } from '../asked/resolveQuantity.ts';
import { checkSentences } from '../sentences/checkSentences.ts';
import type { CheckedSentence } from '../sentences/model.ts';
import { citation } from '../sentences/sourcesOf.ts';
import { followedLeg } from './followedLeg.ts';
import { judgeAnalogy } from './judgeAnalogy.ts';
import type { CheckedAnalogy, CheckedBreak, CheckedLeg, LegVerdict, TiedStand } from './model.ts';

export interface AnalogyOptions {
  readonly signal?: AbortSignal;
}

/** @throws ProblemError of the draws; what the crew throws, an abort among it */
export async function checkAnalogies(
  study: Study,
  crew: Crew,
  { signal }: AnalogyOptions = {},
): Promise<readonly CheckedAnalogy[]> {
  if (study.analogies.length === 0) return [];
  const tested = await testedParts(study, crew, signal);
  const checked: CheckedAnalogy[] = [];
  for (const analogy of study.analogies)
    checked.push(await checkedAnalogy(analogy, study, crew, tested, signal));
  return checked;
}

const legKey = ({ id }: AnalogyInput, i: number): string => `${id}.legs[${i}]`;
const breakKey = ({ id }: AnalogyInput, i: number): string => `${id}.breaksWhere[${i}]`;

/** All tests of all analogies, drawn together. */
async function testedParts(
  study: Study,
  crew: Crew,
  signal: AbortSignal | undefined,
): Promise<ReadonlyMap<string, CheckedSentence>> {
  const test = (id: string, say: string, holds: string | null): readonly SentenceInput[] =>
    holds === null ? [] : [{ id, say, holds, said: true, sources: [] }];
  const sentences = study.analogies.flatMap((analogy) => [
    ...analogy.legs.flatMap(({ say, holds }, i) => test(legKey(analogy, i), say, holds)),
    ...analogy.breaksWhere.flatMap(({ say, when }, i) => test(breakKey(analogy, i), say, when)),
  ]);
  const checked = await checkSentences({ ...study, sentences }, crew, {
    flips: false,
    ...(signal && { signal }),
  });
  return new Map(checked.map((sentence) => [sentence.id, sentence]));
}

async function checkedAnalogy(
  analogy: AnalogyInput,
  study: Study,
  crew: Crew,
  tested: ReadonlyMap<string, CheckedSentence>,
  signal: AbortSignal | undefined,
): Promise<CheckedAnalogy> {
  const legs: CheckedLeg[] = [];
  for (const [i, leg] of analogy.legs.entries()) {
    const where = `analogies.${legKey(analogy, i)}`;
    const test = tested.get(legKey(analogy, i));
    if (test !== undefined) legs.push({ ...testedLeg(test, where), say: leg.say, main: leg.main });
    else if (leg.as !== null) legs.push(await followedLeg(study, crew, leg, leg.as, where, signal));
    else legs.push(untestedLeg(leg.say, leg.main));
  }
  const breaksWhere = analogy.breaksWhere.map(({ say, when }, i): CheckedBreak => {
    const test = tested.get(breakKey(analogy, i));
    const where = `analogies.${breakKey(analogy, i)}`;
    const problem = test?.problem ? { ...test.problem, where: `${where}.when` } : null;
    return { say, when, here: test === undefined ? null : breaksHere(test), problem };
  });
  const stands = analogy.stands.map((stand) => checkedStand(stand));
  const { id, say, said, holdsFor, sources } = analogy;
  return {
    id,
    say,
    said,
    ...judgeAnalogy(analogy, stands, legs, breaksWhere),
    stands: stands.map(({ stand }) => stand),
    legs,
    holdsFor,
    breaksWhere,
    sources: study.sources.filter((source) => sources.includes(source.id)).map(citation),
  };
}

const LEG_VERDICT: Readonly<Record<CheckedSentence['verdict'], LegVerdict>> = {
  'safe to say': 'right',
  'say with care': 'partly right',
  'don’t say': 'wrong',
  'can’t tell': 'can’t tell',
  reported: 'not tested',
  'not checked': 'not tested',
};

function testedLeg(test: CheckedSentence, where: string): Omit<CheckedLeg, 'say' | 'main'> {
  const { verdict, holds, share, why, instead, wording, conditions, problem } = test;
  const truth = instead ?? wording;
  return {
    verdict: LEG_VERDICT[verdict],
    claim: holds,
    found: truth === null || verdict === 'say with care' ? [why, truth].filter(Boolean).join(' ') : truth,
    share,
    steepness: null,
    conditions,
    relations: [],
    problem: problem === null ? null : { ...problem, where: `${where}.holds` },
  };
}

const untestedLeg = (say: string, main: boolean): CheckedLeg => ({
  say,
  main,
  verdict: 'not tested',
  claim: null,
  found: 'No test stands beside it.',
  share: null,
  steepness: null,
  conditions: [],
  relations: [],
  problem: null,
});

function breaksHere({ verdict }: CheckedSentence): boolean | null {
  if (verdict === 'safe to say' || verdict === 'say with care') return true;
  return verdict === 'don’t say' ? false : null;
}

function checkedStand({ this: one, for: other, relation }: StandsFor): TiedStand {
  const plain = { this: one, for: other, relation: null };
  if (relation === null) return { stand: plain, unknown: null };
  const found = resolveQuantity(relation, false);
  if (!found.ok) return { stand: plain, unknown: found.problem };
  const { name, label, equation, source } = found.value;
  return { stand: { ...plain, relation: { quantity: name, label, equation, source } }, unknown: null };
}

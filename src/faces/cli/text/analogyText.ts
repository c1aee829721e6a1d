/** Reported facts and checked analogies as a reader at a terminal meets them. */

import type { CheckedAnalogy, CheckedLeg } from '../../../answer/analogies/index.ts';
import { type CheckedSentence, verdictLabel } from '../../../answer/sentences/index.ts';
import { placeInAnalogy } from '../../../study/placeInTest.ts';
import { testPlaceLines } from './testPlace.ts';
import { padEnd, wrapped } from './wrap.ts';

const INDENT = '  ';

const line = (label: string, text: string, width: number): string =>
  wrapped(text, width, INDENT + ' '.repeat(10), `${INDENT}${padEnd(label, 9)} `);

/** Empty where the study has none. */
export function factsText(facts: readonly CheckedSentence[], width: number): string {
  return facts.map((fact) => factText(fact, width)).join('\n\n');
}

function factText({ id, say, why, conditions, problem, sources }: CheckedSentence, width: number): string {
  return [
    `${problem === null ? 'reported' : 'no fact yet'}  ${id}`,
    wrapped(`“${say}”`, width, INDENT),
    ...conditions.map((text) => line('At', text, width)),
    line('Why', problem === null ? why : `${why} ${problem.mend}`, width),
    ...sources.map((text) => line('Source', text, width)),
  ].join('\n');
}

/** Empty where the study has none. */
export function analogiesText(
  analogies: readonly CheckedAnalogy[],
  file: string,
  whole: boolean,
  width: number,
): string {
  return analogies.map((analogy) => analogyText(analogy, file, whole, width)).join('\n\n');
}

function analogyText(analogy: CheckedAnalogy, file: string, whole: boolean, width: number): string {
  const { id, say, said, verdict, legs, stands, holdsFor, breaksWhere, wording, why, problem } = analogy;
  const lines = [
    `${verdictLabel(analogy)}  analogy ${id}${said ? '' : '  (kept, not said)'}`,
    wrapped(`“${say}”`, width, INDENT),
    ...stands.map((stand) => {
      const tied = stand.relation === null ? '' : ` (${stand.relation.label}: ${stand.relation.equation})`;
      return line('Stands', `${stand.this} for ${stand.for}${tied}`, width);
    }),
    ...legs.map((leg) => line(leg.main ? 'Main leg' : 'Leg', legWords(leg, whole), width)),
    line('Holds', holdsFor, width),
    ...breaksWhere.map((one) => line('Breaks', `${one.say}${HERE[String(one.here)] ?? ''}`, width)),
    ...(verdict === 'safe to say'
      ? []
      : [line('Why', problem === null ? why : `${why} ${problem.mend}`, width)]),
    ...placeLines(analogy, file).map((text) => line('Where', text, width)),
    ...(wording === null ? [] : [line('Say', wording, width)]),
    ...(whole ? analogy.sources.map((text) => line('Source', text, width)) : []),
  ];
  return lines.join('\n');
}

/** In the leg, or where it breaks, whose test cannot be read. */
function placeLines({ id, legs, breaksWhere, problem }: CheckedAnalogy, file: string): readonly string[] {
  const parts = [
    ...legs.map((leg, at) => ({ test: leg.claim, at, key: 'legs' as const, problem: leg.problem })),
    ...breaksWhere.map((one, at) => ({
      test: one.when,
      at,
      key: 'breaksWhere' as const,
      problem: one.problem,
    })),
  ];
  const unread = parts.find((part) => part.problem !== null && part.problem === problem);
  if (unread === undefined || unread.test === null) return [];
  return testPlaceLines(problem, unread.test, (start) =>
    placeInAnalogy(file, id, unread.key, unread.at, start),
  );
}

const HERE: Readonly<Record<string, string>> = { true: ' – as in this study', false: ' – not in this study' };

function legWords({ say, verdict, claim, found, conditions }: CheckedLeg, whole: boolean): string {
  const tested = whole ? [...(claim === null ? [] : [`Claim: ${claim}.`]), ...conditions] : [];
  return [`“${say}” – ${verdict}. ${found}`, ...tested].join(' ');
}

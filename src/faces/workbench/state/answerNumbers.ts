/** The numbers in the short answer, each with what it is worked out from. */

import { spokenAltitude, spokenSeconds, spokenShare } from '../../../answer/compare/speech.ts';
import type { EngineAnswer, EnginesAnswer } from '../../../answer/model.ts';
import { adapts } from '../../../telling/figures/drawnEngines.ts';
import { type ToldPart, toldParts } from './toldParts.ts';
import type { OpenCard } from './view.ts';

const PLACES = [
  ['(pad)', 'at the pad', 'seaLevel'],
  ['(vacuum)', 'in vacuum', 'vacuum'],
] as const;

/** A text of the short answer, cut at its numbers. */
export const answerParts = (text: string, answer: EnginesAnswer): readonly ToldPart[] =>
  toldParts(text, numbersOf(answer));

function numbersOf({ comparison, engines }: EnginesAnswer): readonly OpenCard[] {
  const [base, other] = [engines[comparison?.base ?? ''], engines[comparison?.other ?? '']];
  if (comparison === null || base === undefined || other === undefined) {
    return Object.values(engines).flatMap(ownNumbers);
  }
  // A bound leads the real engine, on whichever side it stands.
  const [behind, ahead] = adapts(base) && !adapts(other) ? [other, base] : [base, other];
  const ties = comparison.crossings.map(
    (altitude): OpenCard => ({
      quantity: 'comparison.crossing',
      engine: null,
      shown: spokenAltitude(altitude),
      condition: `${base.name} and ${other.name}`,
      expression: null,
      instead: {
        say: `At ${spokenAltitude(altitude)} ${base.name} and ${other.name} have the same specific impulse.`,
        holds: `${other.id}.specificImpulse(${kilometres(altitude)}) is about ${base.id}.specificImpulse(${kilometres(altitude)}) within 0.5 %`,
        sweep: { quantity: 'specificImpulse', input: 'altitude', vehicle: null },
      },
    }),
  );
  return [...leads(behind, ahead), ...ties];
}

const kilometres = (altitude: number): string => `${(altitude / 1000).toFixed(1)} km`;

function leads(base: EngineAnswer, other: EngineAnswer): readonly OpenCard[] {
  return PLACES.flatMap(([place, condition, key]): readonly OpenCard[] => {
    const [from, to] = [base[key].specificImpulse, other[key].specificImpulse];
    if (from === null || to === null) return [];
    const [one, two] = [`${base.id}.specificImpulse${place}`, `${other.id}.specificImpulse${place}`];
    const seconds = spokenSeconds(to - from);
    const share = spokenShare((to - from) / Math.abs(from));
    const card = { quantity: 'specificImpulse', engine: other.id, condition } as const;
    const difference = `${two} - ${one}`;
    return [
      { ...card, shown: `${seconds} (${share})`, expression: difference },
      { ...card, shown: share, expression: `${two} / ${one} - 1` },
      { ...card, shown: spokenSeconds(from), engine: base.id, expression: one },
    ];
  });
}

function ownNumbers(engine: EngineAnswer): readonly OpenCard[] {
  return PLACES.flatMap(([place, condition, key]): readonly OpenCard[] => {
    const value = engine[key].specificImpulse;
    if (value === null) return [];
    const expression = `${engine.id}.specificImpulse${place}`;
    return [
      { quantity: 'specificImpulse', engine: engine.id, shown: spokenSeconds(value), condition, expression },
    ];
  });
}

/** The numbers in the short answer, each with what it is worked out from. */

import { spokenAltitude, spokenSeconds, spokenShare } from '../../../answer/compare/speech.ts';
import type { EngineAnswer, EnginesAnswer } from '../../../answer/model.ts';
import { adapts } from '../../../telling/figures/drawnEngines.ts';
import type { OpenCard } from './view.ts';

export interface AnswerPart {
  readonly text: string;
  /** Null where it tells no number. */ readonly card: OpenCard | null;
  /** What closes it, behind a number: a full stop, a comma. */ readonly mark: string;
}

const PLACES = [
  ['(pad)', 'at the pad', 'seaLevel'],
  ['(vacuum)', 'in vacuum', 'vacuum'],
] as const;

/** A text of the short answer, cut at its numbers. */
export function answerParts(text: string, answer: EnginesAnswer): readonly AnswerPart[] {
  const parts: AnswerPart[] = [];
  const used = new Set<OpenCard>();
  const cards = numbersOf(answer);
  let from = 0;
  while (from < text.length) {
    const next = firstIn(text, from, cards, used);
    if (next === null) break;
    if (next.at > from) parts.push({ text: text.slice(from, next.at), card: null, mark: '' });
    const end = next.at + next.card.shown.length;
    const [mark = ''] = /^[.,;:]/.exec(text.slice(end)) ?? [];
    parts.push({ text: next.card.shown, card: next.card, mark });
    used.add(next.card);
    from = end + mark.length;
  }
  if (from < text.length) parts.push({ text: text.slice(from), card: null, mark: '' });
  return parts;
}

/** The nearest, of those the longest, of those one that has not been told yet. */
function firstIn(
  text: string,
  from: number,
  cards: readonly OpenCard[],
  used: ReadonlySet<OpenCard>,
): { readonly at: number; readonly card: OpenCard } | null {
  const found = cards
    .map((card) => ({ card, at: placeOf(text, card.shown, from) }))
    .filter(({ at }) => at >= 0)
    .sort(
      (a, b) =>
        a.at - b.at ||
        b.card.shown.length - a.card.shown.length ||
        Number(used.has(a.card)) - Number(used.has(b.card)),
    );
  return found[0] ?? null;
}

/** As a number of its own: `3 s` is not in `13 s`, nor in `3 stages`. */
function placeOf(text: string, shown: string, from: number): number {
  for (let at = text.indexOf(shown, from); at >= 0; at = text.indexOf(shown, at + 1)) {
    if (!/[\d.]/.test(text[at - 1] ?? '') && !/[a-z\d]/i.test(text[at + shown.length] ?? '')) return at;
  }
  return -1;
}

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
    }),
  );
  return [...leads(behind, ahead), ...ties];
}

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

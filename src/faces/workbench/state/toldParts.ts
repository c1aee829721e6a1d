/** A text cut at its numbers, each with what it is worked out from. */

import type { OpenCard } from './view.ts';

export interface ToldPart {
  readonly text: string;
  /** Null where it tells no number. */ readonly card: OpenCard | null;
  /** What closes it, behind a number: a full stop, a comma. */ readonly mark: string;
}

/** @param cards of the numbers that the text may tell, as it shows them */
export function toldParts(text: string, cards: readonly OpenCard[]): readonly ToldPart[] {
  const parts: ToldPart[] = [];
  const used = new Set<OpenCard>();
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

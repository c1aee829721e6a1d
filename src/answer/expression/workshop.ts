/** What all parts of one text share while it is compiled: its asks, each once, and how much has been built. */

import { type Ask, askKey } from '../asked/model.ts';
import type { TestedRange, TestScope } from './model.ts';
import type { Span } from './tree.ts';
import { refuse } from './trouble.ts';

/** More numbers than one sentence may ask for. */
const MOST_ASKS = 2000;
/** Ranges within ranges multiply; more parts than this are never needed. */
const MOST_PARTS = 200_000;

export interface Workshop {
  readonly text: string;
  readonly scope: TestScope;
  readonly asks: Ask[];
  readonly indexOf: Map<string, number>;
  readonly ranges: TestedRange[];
  /** Index of a range by where it stands in the text: inside another it is met many times. */
  readonly rangeAt: Map<number, number>;
  parts: number;
}

export const newWorkshop = (text: string, scope: TestScope): Workshop => ({
  text,
  scope,
  asks: [],
  indexOf: new Map(),
  ranges: [],
  rangeAt: new Map(),
  parts: 0,
});

/** Index of the ask, new or known. */
export function askIndex(shop: Workshop, ask: Ask, at: Span): number {
  const key = askKey(ask);
  const known = shop.indexOf.get(key);
  if (known !== undefined) return known;
  if (shop.asks.length >= MOST_ASKS) {
    refuse(
      at,
      'too-many-asks',
      `The test asks for more than ${MOST_ASKS} numbers.`,
      'Take fewer points (… at 17 points) or split the test.',
    );
  }
  shop.indexOf.set(key, shop.asks.length);
  return shop.asks.push(ask) - 1;
}

export function countPart(shop: Workshop, at: Span): void {
  shop.parts += 1;
  if (shop.parts <= MOST_PARTS) return;
  refuse(
    at,
    'test-too-large',
    'The ranges of this test multiply to more than can be worked out.',
    'Take fewer points (… at 17 points) or split the test.',
  );
}

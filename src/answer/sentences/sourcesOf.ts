/** What stands behind a sentence: what the study cites, and where the quantities of its test come from. */

import type { SentenceInput, SourceInput, Study } from '../../study/model.ts';
import type { Ask } from '../asked/model.ts';
import { quantity } from '../catalogue.ts';

export function sourcesOf({ sources }: SentenceInput, asks: readonly Ask[], study: Study): readonly string[] {
  const cited = study.sources.filter(({ id }) => sources.includes(id)).map(citation);
  const models = asks.map((ask) => quantity(ask.quantity).source);
  return [...new Set([...cited, ...models])];
}

/** `[key] author, (year), title, where` */
export function citation({ id, author, year, title, where }: SourceInput): string {
  const parts = [author, year === null ? null : `(${year})`, title, where].filter((part) => part !== null);
  return `[${id}] ${parts.join(', ')}`;
}

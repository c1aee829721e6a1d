/** What stands in braces at the end of a paragraph or heading: `{#why weight=2 relies=match,pad pause=1s}`. */

import { PLAIN_ID } from '../form.ts';
import { nearestName } from '../nearest.ts';
import { listNames, quote, type Report } from '../report.ts';
import { parseQuantity } from '../units.ts';

export interface Attributes {
  readonly id?: string;
  readonly weight?: number;
  readonly relies?: readonly Named[];
  readonly says?: Named;
  /** [s] */ readonly pause?: number;
}

/** An id, and where it stands. */
export interface Named {
  readonly id: string;
  readonly at: number;
}

export type AttributeKey = 'weight' | 'relies' | 'says' | 'pause';

export const LINE_KEYS: readonly AttributeKey[] = ['weight', 'relies', 'says', 'pause'];
export const SCENE_KEYS: readonly AttributeKey[] = ['weight', 'relies'];

export const MOST_WEIGHT = 100;
/** [s] */
const LONGEST_PAUSE = 60;
const ONE = /#\S*|[A-Za-z]+=(?:"[^"]*"|\S*)|\S+/g;

/** @param raw with its braces, from `from` on */
export function readAttributes(
  raw: string,
  from: number,
  keys: readonly AttributeKey[],
  report: Report,
): Attributes {
  const found: { -readonly [Key in keyof Attributes]: Attributes[Key] } = {};
  const inner = raw.slice(1, raw.lastIndexOf('}'));
  for (const { 0: text, index } of inner.matchAll(ONE)) {
    const at = from + 1 + index;
    const refuse = (code: string, what: string, mend: string): void =>
      report.problem({ code, what, mend }, '', at);
    if (text.startsWith('#')) {
      const id = text.slice(1);
      if (PLAIN_ID.test(id)) found.id = id;
      else refuse('id-unfit', `${quote(text)} cannot name a line or scene.`, ID_MEND);
      continue;
    }
    const equals = text.indexOf('=');
    const key = equals < 0 ? text : text.slice(0, equals);
    const value = text.slice(equals + 1).replace(/^"(.*)"$/s, '$1');
    if (equals < 0 || !keys.includes(key as AttributeKey)) {
      const near = nearestName(key, keys);
      refuse(
        'attribute-unknown',
        `${quote(text)} is nothing that can be said of this here.`,
        `${near === null ? '' : `Did you mean ${near}=? `}Write #id or ${listNames(keys.map((one) => `${one}=…`))}; before a brace that belongs to the words put a backslash.`,
      );
      continue;
    }
    if (key === 'weight') {
      const weight = weightOf(value);
      if (weight !== null) found.weight = weight;
      else
        refuse('weight-unfit', `${quote(value)} is no weight.`, `Write a number from 0 to ${MOST_WEIGHT}.`);
    } else if (key === 'pause') {
      const pause = pauseOf(value);
      if (pause !== null) found.pause = pause;
      else
        refuse(
          'pause-unfit',
          `${quote(value)} is no pause.`,
          `Write seconds, as pause=1s, up to ${LONGEST_PAUSE}.`,
        );
    } else {
      const start = at + equals + 1 + (text[equals + 1] === '"' ? 1 : 0);
      const named = namesIn(value, start).filter(({ id, at: place }) => {
        if (PLAIN_ID.test(id)) return true;
        report.problem({ code: 'id-unfit', what: `${quote(id)} is no id.`, mend: ID_MEND }, '', place);
        return false;
      });
      if (key === 'relies') found.relies = named;
      else if (named.length === 1) found.says = named[0]!;
      else
        refuse(
          'says-unfit',
          `${quote(text)} names no sentence, or several.`,
          'Write says= and the id of one sentence of the study.',
        );
    }
  }
  return found;
}

const ID_MEND =
  'Use letters, digits, dashes, dots and underscores, up to 64 of them, a letter or digit first.';

export function weightOf(text: string): number | null {
  const weight = /^\d+(?:\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
  return weight <= MOST_WEIGHT ? weight : null;
}

function pauseOf(text: string): number | null {
  const parsed = parseQuantity(text, 'time');
  if (!parsed.ok || parsed.value.plusMinus !== null || parsed.value.spread !== null) return null;
  const { value } = parsed.value;
  return value >= 0 && value <= LONGEST_PAUSE ? value : null;
}

function namesIn(text: string, from: number): readonly Named[] {
  return [...text.matchAll(/[^,\s]+/g)].map(({ 0: id, index }) => ({ id, at: from + index }));
}

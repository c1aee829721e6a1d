/** The live answer in words: the number, its ±, what it is, and how sure. */

import { computed } from '@preact/signals';
import type { CatalogueEntry } from '../../../answer/catalogue.ts';
import { show, showIn, unitFor } from '../../../answer/display.ts';
import { widerSide, withPlusMinus } from '../../../telling/numbers/plusMinus.ts';
import type { Span } from '../workshop/deskMessages.ts';
import { type LiveNumber, liveAbsence, liveAsk, liveEntry, liveNumber, liveSpan } from './live.ts';
import { ownerName } from './pair.ts';

export interface LiveWords {
  /** `+5 %`, `334 s`, `too close to call`. */ readonly number: string;
  /** `± 2`; empty where it is not known, or says nothing. */ readonly plusMinus: string;
  /** `specific impulse, Alder P against Alder B`. */ readonly what: string;
  /** How sure it is; empty until that is known. */ readonly sure: string;
}

export const liveWords = computed((): LiveWords => {
  const ask = liveAsk.value;
  const entry = liveEntry.value;
  const number = liveNumber.value;
  if (ask === null || entry === null) return { number: '–', plusMinus: '', what: nothingAsked, sure: '' };
  const name = (id: string): string => (ownerName(id) ?? id).replaceAll(' ', '\u00a0');
  const [of, against] = [name(ask.of), ask.against === null ? null : name(ask.against)];
  const what = `${entry.label}, ${against === null ? of : `${of} against ${against}`}`;
  if (number === null) {
    return { number: '–', plusMinus: '', what, sure: liveAbsence.value ?? '' };
  }
  const spans = liveSpan.value;
  if (number.against === null) return { ...ownWords(entry, number.of, spans?.own[0] ?? null), what };
  return { ...differenceWords(entry, number, spans?.difference ?? null), what };
});

const nothingAsked = 'The address names an engine or a quantity that this study does not have.';

function ownWords(entry: CatalogueEntry, value: number, span: Span | null): Omit<LiveWords, 'what'> {
  const unit = unitFor(entry, [value]);
  const half = span === null ? 0 : widerSide(value, span.low, span.high);
  if (half <= 0) return { number: show(entry.name, value).text, plusMinus: '', sure: '' };
  const { number, plusMinus } = withPlusMinus(value * unit.perSI, half * unit.perSI);
  const gap = unit.symbol === '' || unit.symbol === '°' ? '' : '\u00a0';
  const ends = [span?.low ?? value, span?.high ?? value].map((end) => showIn(unit, end, 3).text);
  return {
    number: `${number}${gap}${unit.symbol}`,
    plusMinus: `±\u00a0${plusMinus}`,
    sure: `95 % of what is not known leaves it between ${ends[0]} and ${ends[1]}`,
  };
}

/** As a share of what it is held against. */
function differenceWords(
  entry: CatalogueEntry,
  { of, against }: LiveNumber,
  span: Span | null,
): Omit<LiveWords, 'what'> {
  const base = Math.abs(against ?? 0);
  const difference = of - (against ?? 0);
  if (difference === 0) return { number: 'the same', plusMinus: '', sure: '' };
  if (base === 0) return { number: show(entry.name, difference).text, plusMinus: '', sure: '' };
  const share = (100 * difference) / base;
  const half = span === null ? 0 : (100 * widerSide(difference, span.low, span.high)) / base;
  if (half <= 0)
    return { number: signed(share.toFixed(Math.abs(share) < 2 ? 1 : 0)), plusMinus: '', sure: '' };
  const ends = [span?.low ?? 0, span?.high ?? 0].map((end) => signed(((100 * end) / base).toFixed(1)));
  const sure = `95 % of what is not known leaves it between ${ends[0]} and ${ends[1]}`;
  if (span !== null && span.low < 0 && span.high > 0)
    return { number: 'too close to call', plusMinus: '', sure };
  const { number, plusMinus } = withPlusMinus(share, half);
  return { number: signed(number), plusMinus: `±\u00a0${plusMinus}`, sure };
}

/** `+5 %`, with a true minus. */
function signed(text: string): string {
  const plain = text.replace('-', '\u2212');
  return `${plain.startsWith('\u2212') ? '' : '+'}${plain}\u00a0%`;
}

/** The address of the live answer: `#live=exitPressure&of=plug&at=10km`, or `#live=&sentence=vacuum-gain`; with `&overlay` on a clear ground. */

import type { AskedAmbient } from '../../../answer/asked/model.ts';

/** The one number of a live answer. */
export interface LiveAsk {
  /** Name in the catalogue. */ readonly quantity: string;
  readonly of: string;
  /** The engine it is held against; null: the number itself. */ readonly against: string | null;
  /** Null: it is the same everywhere. */ readonly at: AskedAmbient | null;
}

export interface LiveRoute {
  /** Null: what the study compares. */ readonly ask: LiveAsk | null;
  /** Id of the sentence whose verdict is shown in place of a number; null: none. */
  readonly sentence: string | null;
  readonly overlay: boolean;
}

/** @param ask null: what the study compares, at the altitude on the scale */
export function liveHash(ask: LiveAsk | null): string {
  if (ask === null) return '#live';
  const parts = new URLSearchParams({ live: ask.quantity, of: ask.of });
  if (ask.against !== null) parts.set('against', ask.against);
  if (ask.at !== null) parts.set('at', placeText(ask.at));
  return `#${parts.toString()}`;
}

export function liveSentenceHash(id: string): string {
  return `#${new URLSearchParams({ live: '', sentence: id }).toString()}`;
}

function placeText(at: AskedAmbient): string {
  if (at.kind === 'vacuum') return 'vacuum';
  return at.kind === 'altitude' ? `${at.altitude / 1000}km` : `${at.pressure / 1e5}bar`;
}

/** Null: the address is none of a live answer. */
export function readLiveHash(hash: string): LiveRoute | null {
  const parts = new URLSearchParams(hash.replace(/^#/, ''));
  const quantity = parts.get('live');
  if (quantity === null) return null;
  const overlay = parts.has('overlay');
  const of = parts.get('of');
  const sentence = parts.get('sentence');
  if (quantity === '' || of === null) return { ask: null, sentence, overlay };
  const ask = { quantity, of, against: parts.get('against'), at: placeOf(parts.get('at')) };
  return { ask, sentence: null, overlay };
}

function placeOf(text: string | null): AskedAmbient | null {
  if (text === 'vacuum') return { kind: 'vacuum' };
  const [, number = '', unit] = /^([\d.]+)\s*(km|bar)$/.exec(text ?? '') ?? [];
  const value = Number(number);
  if (unit === undefined || !Number.isFinite(value)) return null;
  return unit === 'km'
    ? { kind: 'altitude', altitude: value * 1000 }
    : { kind: 'pressure', pressure: value * 1e5 };
}

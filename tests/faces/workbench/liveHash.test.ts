import { describe, expect, it } from 'vitest';
import {
  type LiveAsk,
  liveHash,
  liveSentenceHash,
  readLiveHash,
} from '../../../src/faces/workbench/state/liveHash.ts';

const asks: readonly LiveAsk[] = [
  { quantity: 'exitPressure', of: 'plug', against: null, at: { kind: 'altitude', altitude: 10_000 } },
  { quantity: 'specificImpulse', of: 'plug', against: 'bell', at: { kind: 'vacuum' } },
  { quantity: 'thrust', of: 'odd id & more', against: null, at: { kind: 'pressure', pressure: 50_000 } },
  { quantity: 'massFlow', of: 'bell', against: null, at: null },
];

describe('the address of a live answer', () => {
  it.each(asks)('is read as it was written (%o)', (ask) => {
    expect(readLiveHash(liveHash(ask))).toEqual({ ask, sentence: null, overlay: false });
    expect(readLiveHash(`${liveHash(ask)}&overlay`)).toEqual({ ask, sentence: null, overlay: true });
  });

  it('may leave all to the study, and is none without its word', () => {
    expect(readLiveHash('#live')).toEqual({ ask: null, sentence: null, overlay: false });
    expect(readLiveHash('#live&overlay')).toEqual({ ask: null, sentence: null, overlay: true });
    expect(readLiveHash('')).toBeNull();
    expect(readLiveHash('#sentences')).toBeNull();
  });

  it('may name a sentence in place of a number', () => {
    const route = { ask: null, sentence: 'odd id & more', overlay: false };
    expect(readLiveHash(liveSentenceHash('odd id & more'))).toEqual(route);
  });

  it('has no place where it names none that can be read', () => {
    for (const at of ['', 'NaNkm', '10', '1e9', '12 parsec', '--3km'])
      expect(readLiveHash(`#live=thrust&of=bell&at=${at}`)?.ask?.at).toBeNull();
  });
});

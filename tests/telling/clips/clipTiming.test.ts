import { describe, expect, it } from 'vitest';
import { type ClipTiming, timedFrames, USUAL_TIMING } from '../../../src/telling/clips/clipTiming.ts';
import { EASES } from '../../../src/telling/clips/ease.ts';
import { FRAME_RATES, frameRateOf, secondsOfFrame } from '../../../src/telling/clips/frameRate.ts';

const at25: ClipTiming = { ...USUAL_TIMING, rate: frameRateOf('25') };
const shares = (timing: ClipTiming): readonly number[] => {
  const { frames, shareAt } = timedFrames(timing);
  return Array.from({ length: frames }, (_, n) => shareAt(n));
};

describe('frame rates', () => {
  it('are exact: the fractional ones are 1000/1001 of whole ones (SMPTE ST 12-1)', () => {
    for (const [name, whole] of [
      ['23.976', 24],
      ['29.97', 30],
      ['59.94', 60],
    ] as const)
      expect(secondsOfFrame(whole * 1000, frameRateOf(name))).toBe(1001);
    expect(FRAME_RATES.map(({ name }) => name)).toEqual([
      '23.976',
      '24',
      '25',
      '29.97',
      '30',
      '50',
      '59.94',
      '60',
    ]);
  });

  it('refuse others, and say which there are', () => {
    expect(() => frameRateOf('26')).toThrow(/26 frames a second/);
  });
});

describe('a clip in time', () => {
  it('has the length asked for at every rate, to half a frame', () => {
    for (const rate of FRAME_RATES) {
      const { frames } = timedFrames({ ...at25, rate, seconds: 10 });
      expect(Math.abs(secondsOfFrame(frames, rate) - 10)).toBeLessThanOrEqual(secondsOfFrame(1, rate) / 2);
    }
  });

  it('holds its first and its last picture as long as asked', () => {
    const all = shares({ ...at25, seconds: 4, holdFirst: 1, holdLast: 0.4 });
    expect(all.length).toBe(100);
    // 25 frames are held, and the first that moves comes after them.
    expect(all.filter((share) => share === 0).length).toBe(26);
    expect(all.filter((share) => share === 1).length).toBe(11);
  });

  it('puts handles outside, standing still', () => {
    const plain = shares(at25);
    const handled = shares({ ...at25, handles: 1 });
    expect(handled.length).toBe(plain.length + 50);
    expect(handled.slice(25, -25)).toEqual(plain);
    expect(new Set(handled.slice(0, 25))).toEqual(new Set([0]));
    expect(new Set(handled.slice(-25))).toEqual(new Set([1]));
  });

  it.each([4, 4.04])(
    'goes there and back: the last frame is the first, and each way is the other backwards (%d s)',
    (seconds) => {
      const all = shares({ ...at25, seconds, loop: true });
      expect(all[0]).toBe(0);
      expect(all.at(-1)).toBe(0);
      expect(Math.max(...all)).toBe(1);
      expect([...all].reverse()).toEqual(all);
    },
  );

  it.each(EASES)('never turns back (%s)', (ease) => {
    const all = shares({ ...at25, ease });
    for (let n = 1; n < all.length; n++) expect(all[n]!).toBeGreaterThanOrEqual(all[n - 1]!);
    expect(all[0]).toBe(0);
    expect(all.at(-1)).toBe(1);
  });

  it('is refused where no time is left to move, and where a time is none', () => {
    expect(() => timedFrames({ ...at25, seconds: 1, holdFirst: 0.5, holdLast: 0.5 })).toThrow(
      /no time is left/,
    );
    expect(() => timedFrames({ ...at25, seconds: Number.NaN })).toThrow(/for its length/);
    expect(() => timedFrames({ ...at25, handles: -1 })).toThrow(/for its handles/);
  });
});

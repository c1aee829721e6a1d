import { describe, expect, it } from 'vitest';
import { climbAltitude, timeOfAltitude } from '../../../src/faces/workbench/state/climbProfile.ts';

describe('the climb', () => {
  it('begins on the pad and ends in vacuum', () => {
    expect(climbAltitude(0, 24)).toBe(0);
    expect(climbAltitude(24, 24)).toBe(Number.POSITIVE_INFINITY);
    expect(climbAltitude(12, 24)).toBeCloseTo(20, 9);
  });

  it('is linear between the eases: equal times give equal climbs', () => {
    const first = climbAltitude(5, 24) - climbAltitude(4, 24);
    const last = climbAltitude(20, 24) - climbAltitude(19, 24);
    expect(first).toBeCloseTo(last, 9);
    expect(first).toBeCloseTo(40 / 23.6, 9);
  });

  it.each([6, 12, 24, 48])('never jumps or turns back (%d s)', (duration) => {
    let before = 0;
    for (let i = 1; i < 1000; i++) {
      const now = climbAltitude((i * duration) / 1000, duration);
      expect(now).toBeGreaterThan(before);
      expect(now - before).toBeLessThan(0.06);
      before = now;
    }
  });

  it('goes on from where it stands', () => {
    for (const altitude of [1, 12.3, 39]) {
      expect(climbAltitude(timeOfAltitude(altitude, 24), 24)).toBeCloseTo(altitude, 9);
    }
  });
});

import { describe, expect, it } from 'vitest';
import { flightCase, flownCase } from './runFlightCampaign.ts';

const CASES = 2000;
const TYPED = new Set(['orbit-not-reached', 'flight-falls-back', 'flight-does-not-rise']);

describe(`${CASES} random vehicles`, () => {
  it('reach their orbit, at least 97 % of them; the others say why', () => {
    const ends = Array.from({ length: CASES }, (_, seed) => ({ seed, ...flownCase(flightCase(seed + 1)) }));
    const solved = ends.filter(({ code }) => code === 'solved');
    const others = ends.filter(({ code }) => code !== 'solved');
    console.log(
      `${solved.length} of ${CASES} solved; ${others.map(({ seed, code }) => `${seed} ${code}`).join(', ')}`,
    );
    expect(others.filter(({ code, why }) => !TYPED.has(code) || why === null)).toEqual([]);
    expect(Math.max(...solved.map(({ rest }) => Math.abs(rest)))).toBeLessThan(1e-6);
    expect(solved.length / CASES).toBeGreaterThanOrEqual(0.97);
  }, 3_600_000);
});

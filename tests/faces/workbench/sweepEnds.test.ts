/** Ends of a sweep that is tried out: as usual, as typed in any unit, either way round. */

import { describe, expect, it } from 'vitest';
import { endsOf, noEnds } from '../../../src/faces/workbench/state/sweepEnds.ts';
import type { SweepChoice } from '../../../src/faces/workbench/workshop/deskMessages.ts';

const pressure: SweepChoice = {
  name: 'chamber.pressure',
  label: 'chamber pressure',
  quantity: 'chamber.pressure',
  range: { from: 10e5, to: 300e5, spacing: 'in equal ratios' },
};

describe('ends of a sweep', () => {
  it('are those worth looking over where nothing is typed', () => {
    const { range, from, to, words } = endsOf(pressure, noEnds);
    expect(range).toEqual(pressure.range);
    expect([from.replace(/\s/, ' '), to.replace(/\s/, ' '), words]).toEqual(['10 bar', '300 bar', null]);
  });

  it('may be typed in any unit and either way round, which is said', () => {
    const { range, words, isFault } = endsOf(pressure, { from: '12 MPa', to: '290 psi' });
    expect(range.to).toBeCloseTo(12e6, 3);
    // 1 psi = 6894.757293168 Pa (NIST SP 811).
    expect(range.from).toBeCloseTo(290 * 6894.757293168, 0);
    expect([words, isFault]).toEqual(['Taken from 290 psi to 12 MPa.', false]);
  });

  it('that cannot be read leave the usual ones, with the reason', () => {
    const wrong = endsOf(pressure, { from: '3 km', to: null });
    expect(wrong.range).toEqual(pressure.range);
    expect(wrong.isFault).toBe(true);
    expect(wrong.words).toMatch(/pressure is expected/);
    expect(endsOf(pressure, { from: '20 bar', to: '20 bar' }).isFault).toBe(true);
  });

  it('go evenly where they reach nothing or less', () => {
    const altitude: SweepChoice = { ...pressure, name: 'altitude', quantity: 'altitude' };
    expect(endsOf(altitude, { from: '0 km', to: '20 km' }).range.spacing).toBe('even');
  });
});

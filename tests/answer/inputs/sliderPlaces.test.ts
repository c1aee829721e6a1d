/** A slider goes over few-digit values: even, or in about equal ratios where the range is wide. */

import { describe, expect, it } from 'vitest';
import { placeOf, sliderPlaces } from '../../../src/answer/inputs/sliderPlaces.ts';

const asIs = (si: number): number => si;

describe('places of a slider', () => {
  it('are even with a step of 1, 2 or 5 where the ends are near each other', () => {
    const { values } = sliderPlaces({ from: 0.9, to: 1, spacing: 'even' }, (si) => si * 100, false);
    expect(values[0]).toBe(90);
    expect(values.at(-1)).toBe(100);
    expect(values[1]).toBe(90.05);
    expect(values.every((value) => Number(value.toFixed(2)) === value)).toBe(true);
  });

  it('stay within the ends, also where these are no multiples of the step', () => {
    const { values } = sliderPlaces({ from: 1.7501, to: 7.0003, spacing: 'even' }, asIs, false);
    expect(Math.min(...values)).toBeGreaterThanOrEqual(1.7501);
    expect(Math.max(...values)).toBeLessThanOrEqual(7.0003);
    expect(values.length).toBeGreaterThan(100);
  });

  it('go in about equal ratios over decades: neighbours never more than 2.6 % apart, three digits each', () => {
    const { values } = sliderPlaces(
      { from: 1e4, to: 3e6, spacing: 'in equal ratios' },
      (si) => si / 1e3,
      false,
    );
    expect(values[0]).toBe(10);
    expect(values.at(-1)).toBe(3000);
    for (const [i, value] of values.slice(1).entries()) {
      expect(value / values[i]!).toBeGreaterThan(1.009);
      // From 2.00 to 2.05.
      expect(value / values[i]!).toBeLessThan(1.0251);
      expect(Number(value.toPrecision(3))).toBe(value);
    }
  });

  it('are whole where only whole numbers make sense', () => {
    const { values } = sliderPlaces({ from: 6, to: 60, spacing: 'even' }, asIs, true);
    expect(values).toEqual(Array.from({ length: 55 }, (_, i) => 6 + i));
  });

  it('rise also in a unit that falls where SI rises', () => {
    const { values } = sliderPlaces({ from: 1, to: 2, spacing: 'even' }, (si) => -si, false);
    expect(values[0]).toBe(-2);
    expect(values.at(-1)).toBe(-1);
  });

  it('the nearest is found for any number', () => {
    const places = sliderPlaces({ from: 0, to: 10, spacing: 'even' }, asIs, false);
    expect(places.values[placeOf(places, 3.337)]).toBeCloseTo(3.35, 9);
    expect(placeOf(places, -5)).toBe(0);
    expect(placeOf(places, 50)).toBe(places.values.length - 1);
  });
});

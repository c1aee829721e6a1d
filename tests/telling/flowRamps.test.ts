import { describe, expect, it } from 'vitest';
import { FIELD_TINTS, RAMPS, rampColour } from '../../src/telling/look/flowRamps.ts';
import { COLOURS } from '../../src/telling/look/tokens.ts';

/** Relative luminance, WCAG 2.2. */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
/** Lightness L* of CIE 1976. */
const lightness = (hex: string): number => {
  const y = luminance(hex);
  return y > 0.008856 ? 116 * Math.cbrt(y) - 16 : 903.3 * y;
};

describe.each(FIELD_TINTS)('the ramp of %s', (tint) => {
  const { steps, stepOf, startOf } = RAMPS[tint];

  it.each(['light', 'dark'] as const)('goes away from the paper step by step (%s)', (theme) => {
    const all = Array.from({ length: steps + 1 }, (_, step) => lightness(rampColour(tint, step, theme)));
    expect(rampColour(tint, 0, theme)).toBe(COLOURS[theme].paper);
    const away = theme === 'light' ? -1 : 1;
    for (let i = 1; i < all.length; i++)
      expect(away * ((all[i] ?? 0) - (all[i - 1] ?? 0))).toBeGreaterThan(0);
    // Told apart without colour: in all at least 60 of 100 in lightness.
    expect(Math.abs((all.at(-1) ?? 0) - (all[0] ?? 0))).toBeGreaterThan(60);
  });

  it('finds each step at its own beginning, paper below and the last above', () => {
    for (let step = 1; step <= steps; step++) {
      expect(stepOf(startOf(step) * (1 + 1e-9))).toBe(step);
      expect(stepOf(Math.sqrt(startOf(step) * startOf(step + 1)))).toBe(step);
    }
    expect(stepOf(0)).toBe(0);
    expect(stepOf(1e9)).toBe(steps);
  });
});

it('gives no two ramps the same colour halfway', () => {
  for (const theme of ['light', 'dark'] as const) {
    const middles = FIELD_TINTS.map((tint) => rampColour(tint, RAMPS[tint].steps / 2, theme));
    expect(new Set(middles).size).toBe(FIELD_TINTS.length);
    // sRGB of OKLCH (0.5775, 0.11 sin, 75°): red above green above blue, the warm one.
    const warm = rampColour('temperature', 8, theme);
    const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(warm.slice(at, at + 2), 16));
    expect(r).toBeGreaterThan(g ?? 0);
    expect(g).toBeGreaterThan(b ?? 0);
  }
});

import { describe, expect, test } from 'vitest';
import { ENGINE_STYLES } from '../../src/telling/look/engineStyles.ts';
import {
  PRESSURE_RAMP,
  PRESSURE_STEPS,
  pressureStep,
  pressureStepStart,
} from '../../src/telling/look/pressureRamp.ts';
import { COLOURS, type ColourToken, THEMES } from '../../src/telling/look/tokens.ts';
import { ciede2000, contrast, labOf } from './ciede2000.ts';

describe('the colour difference', () => {
  // Test pairs of Sharma, Wu, Dalal 2005 (from memory).
  test.each([
    [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
    [[50, 0, 0], [50, -1, 2], 2.3669],
    [[50, 2.5, 0], [73, 25, -18], 27.1492],
    [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
  ] as const)('%o to %o is %f', (one, other, published) => {
    expect(ciede2000(one, other)).toBeCloseTo(published, 4);
  });
});

describe.each([...THEMES, 'print'] as const)('the look, %s', (theme) => {
  const colours = COLOURS[theme];
  const ramp = PRESSURE_RAMP[theme];

  test('text tokens have at least 4.5 to 1 on paper and the second paper, marks 3 to 1', () => {
    // All tokens but the grounds and the grid, which carries no meaning.
    const tokens = (Object.keys(colours) as ColourToken[]).filter((token) => !/^(paper|rule)/.test(token));
    expect(tokens).toHaveLength(7);
    for (const paper of [colours.paper, colours['paper-2']]) {
      for (const ink of tokens) {
        expect(contrast(colours[ink], paper), `${ink} on ${paper}`).toBeGreaterThanOrEqual(4.5);
      }
    }
    expect(contrast(colours['rule-2'], colours.paper)).toBeGreaterThanOrEqual(3);
  });

  test('the pressure ramp runs one way in lightness, in steps of at least 3 CIEDE2000', () => {
    expect(ramp).toHaveLength(PRESSURE_STEPS);
    const labs = ramp.map(labOf);
    for (let i = 1; i < labs.length; i++) {
      const rise = labs[i]![0] - labs[i - 1]![0];
      expect(theme === 'dark' ? rise > 0 : rise < 0, `step ${i}`).toBe(true);
      expect(ciede2000(labs[i - 1]!, labs[i]!), `step ${i}`).toBeGreaterThanOrEqual(3);
    }
    // It begins at the paper.
    expect(ciede2000(labs[0]!, labOf(colours.paper))).toBeLessThan(5);
  });

  test('the two engines are far apart in hue, and told apart by more than hue', () => {
    expect(ciede2000(labOf(colours['engine-1']), labOf(colours['engine-2']))).toBeGreaterThan(30);
    expect(new Set(ENGINE_STYLES.map((style) => style.marker)).size).toBe(ENGINE_STYLES.length);
    expect(new Set(ENGINE_STYLES.map((style) => style.dash.join())).size).toBe(ENGINE_STYLES.length);
  });
});

test('a pressure has its step: six to a power of ten from 0.0316 bar', () => {
  expect(pressureStep(0)).toBe(0);
  expect(pressureStep(3000)).toBe(0);
  expect(pressureStep(10 ** 3.5 * 1.0001)).toBe(1);
  expect(pressureStep(1e5)).toBe(10);
  expect(pressureStep(1e9)).toBe(PRESSURE_STEPS);
  for (let step = 1; step <= PRESSURE_STEPS; step++)
    expect(pressureStep(pressureStepStart(step) * 1.0001)).toBe(step);
  expect(() => pressureStep(Number.NaN)).toThrow();
});

import { describe, expect, test } from 'vitest';
import { deliveredText, idealText, lossLines } from '../../src/answer/lossWords.ts';
import { lossBudget } from '../../src/physics/nozzle/losses/index.ts';

const item = (name: string, specificImpulse: number, low: number, high: number) => ({
  name,
  specificImpulse,
  band: { low, high },
  source: 'an invented leaflet',
});

describe('the budget in words', () => {
  const budget = {
    ...lossBudget(
      400,
      [item('friction', 4, 0.008, 0.012), item('gain', -2, -0.006, 0), item('exact', 0, 0, 0)],
      { value: 1, low: 1, high: 1, source: 'y' },
    ),
    layer: null,
  };
  const [friction, gain, exact] = lossLines(budget);

  test('a loss has a minus, a gain a plus, nothing neither', () => {
    expect(friction).toMatchObject({ impulse: '−4.0 s', share: '−1.0 %', band: '−1.2 to −0.80 %' });
    expect(gain).toMatchObject({ impulse: '+2.0 s', share: '+0.50 %', band: '0 to 0.60 %' });
    expect(exact).toMatchObject({ impulse: '0 s', share: '0 %', band: '' });
  });

  test('from ideal to delivered', () => {
    expect([idealText(budget), deliveredText(budget)]).toEqual(['400.0 s', '398.0 s']);
  });
});

import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { CheckAnswer } from '../../../src/answer/sentences/index.ts';
import { runMain } from './runMain.ts';

/**
 * Real engines. Textbook facts (G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., chapter 3): choked flow goes in
 * proportion to the chamber pressure; gas is faster at the lip than in the throat; exhaust speed goes with √T.
 */
describe('analogies of the starters', () => {
  test.each([
    ['choking', 'turnstile', 'say with care', ['right', 'wrong']],
    ['nozzle-speeds-up', 'thumb-on-the-hose', 'don’t say', ['wrong', 'right']],
    ['pressure-temperature-molar-mass', 'thrown-balls', 'safe to say', ['right', 'right', 'right']],
  ])('%s: %s is %s', { timeout: 60_000 }, async (starter, id, verdict, legs) => {
    const folder = fileURLToPath(new URL(`../../../starters/${starter}`, import.meta.url));
    const ran = await runMain(['check', folder, '--json']);
    expect(ran.status).toBe(0);
    const { analogies } = JSON.parse(ran.out) as CheckAnswer;
    const found = analogies.find((one) => one.id === id)!;
    expect(found.verdict).toBe(verdict);
    expect(found.legs.map((leg) => leg.verdict)).toEqual(legs);
  });
});

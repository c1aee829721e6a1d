/** What a need asks, before it is worked out, in words rather than as written. */

import { expect, it, vi } from 'vitest';
import type { NeedInput } from '../../../src/study/model.ts';

// The scale that stands beside it reads the window.
vi.mock('../../../src/faces/workbench/state/shown.ts', () => ({
  kilometresText: (kilometres: number) => `${kilometres.toFixed(1)} km`,
}));
const { needSaid } = await import('../../../src/faces/workbench/state/needSaid.ts');

const owners = [
  { id: 'bell', name: 'Oak B' },
  { id: 'plug', name: 'Oak P' },
];
const need = (so: string, title: string | null = null) => ({ title, so }) as Partial<NeedInput> as NeedInput;

it.each([
  [
    'bell.specificImpulse(vacuum) >= plug.specificImpulse(vacuum)',
    'The specific impulse of Oak B in vacuum is at least the specific impulse of Oak P in vacuum: at which area ratio?',
  ],
  ['bell.thrust(10 km) > 800 kN', 'The thrust of Oak B at 10.0 km is more than 800 kN: at which area ratio?'],
  ['bell.areaRatio <= 40', 'The area ratio of Oak B is at most 40: at which area ratio?'],
  // More than a quantity a side stays as it is written.
  ['bell.thrust(pad) >= 2 * plug.thrust(pad)', 'bell.thrust(pad) >= 2 * plug.thrust(pad)'],
  ['bell.thrust(pad, throttle = 50 %) >= 1 kN', 'bell.thrust(pad, throttle = 50 %) >= 1 kN'],
])('%s', (so, words) => {
  expect(needSaid(need(so), owners, 'area ratio')).toBe(words);
});

it('is its title, where it has one', () => {
  expect(needSaid(need('bell.areaRatio <= 40', 'Not too wide'), owners, 'area ratio')).toBe('Not too wide');
});

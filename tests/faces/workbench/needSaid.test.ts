/** What a need asks, before it is worked out, in words rather than as written. */

import { expect, it, vi } from 'vitest';
import type { NeedInput } from '../../../src/study/model.ts';
import { readStudy } from '../../../src/study/read.ts';

// The scale that stands beside it reads the window.
vi.mock('../../../src/faces/workbench/state/shown.ts', () => ({
  kilometresText: (kilometres: number) => `${kilometres.toFixed(1)} km`,
}));
const { inputOfNeed, needSaid } = await import('../../../src/faces/workbench/state/needSaid.ts');

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
  [
    'bell.exit.velocity >= 3000 m/s',
    'The speed of the gas at the lip of Oak B is at least 3000 m/s: at which area ratio?',
  ],
  ['bell.thrust(pad) > 8e2 kN', 'The thrust of Oak B at the pad is more than 8e2 kN: at which area ratio?'],
  ['bell.thrust(pad) > 8 zebras', 'bell.thrust(pad) > 8 zebras'],
  // More than a quantity a side stays as it is written.
  ['bell.thrust(pad) >= 2 * plug.thrust(pad)', 'bell.thrust(pad) >= 2 * plug.thrust(pad)'],
  ['bell.thrust(pad, throttle = 50 %) >= 1 kN', 'bell.thrust(pad, throttle = 50 %) >= 1 kN'],
])('%s', (so, words) => {
  expect(needSaid(need(so), owners, 'area ratio')).toBe(words);
});

it('is its title, where it has one', () => {
  expect(needSaid(need('bell.areaRatio <= 40', 'Not too wide'), owners, 'area ratio')).toBe('Not too wide');
});

it('calls the input as the engines do that it moves on', () => {
  const read = readStudy(
    `plumeline: 1
question: How large?
engines:
  bell: { name: Oak B, propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 25 } }
  dual: { like: bell, name: Oak D, nozzle: { kind: dualBell, baseAreaRatio: 20, areaRatio: 60 } }
`,
    { file: 'study.yaml' },
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { engines } = read.study;
  const over = (name: string, on: readonly string[] | null) =>
    inputOfNeed({ range: { over: name }, engines: on } as Partial<NeedInput> as NeedInput, engines);
  expect(over('nozzle.areaRatio', ['bell'])).toBe('area ratio');
  expect(over('engines.dual.nozzle.areaRatio', null)).toBe('area ratio');
  expect(over('ambientPressure', null)).toBe('outside pressure');
  // What only another engine has is no input of these.
  expect(over('nozzle.baseAreaRatio', ['bell'])).toBe('nozzle.baseAreaRatio');
  expect(over('nozzle.baseAreaRatio', ['dual'])).not.toContain('.');
});

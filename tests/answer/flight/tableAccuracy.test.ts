/** The table that a flight asks, against the model that it stands for. */
import { expect, test } from 'vitest';
import { figuresAt } from '../../../src/answer/conditions.ts';
import { enginePropulsion } from '../../../src/answer/flight/propulsion.ts';
import { solveText } from '../solveText.ts';

const SEA = 101_325;
const common = 'propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, size: { throat: 236 mm }';
const engines: Readonly<Record<string, string>> = {
  bell: 'chamber: { pressure: 100 bar }, nozzle: { kind: bell, areaRatio: 25, length: 80 % }',
  large: 'chamber: { pressure: 100 bar }, nozzle: { kind: bell, areaRatio: 80, length: 80 % }',
  separated: 'chamber: { pressure: 12 bar }, nozzle: { kind: bell, areaRatio: 25, length: 80 % }',
  plug: 'chamber: { pressure: 100 bar }, nozzle: { kind: plug, form: annular, areaRatio: 60, kept: 30 % }',
  wavy: 'chamber: { pressure: 30 bar }, nozzle: { kind: plug, form: annular, areaRatio: 60, kept: 30 % }',
  dual: 'chamber: { pressure: 100 bar }, nozzle: { kind: dualBell, areaRatio: 100, baseAreaRatio: 30 }',
};
const { solutions } = await solveText(
  Object.entries(engines)
    .map(([id, rest]) => `${id}: { ${common}, ${rest} }`)
    .join('\n'),
);

/** Half of the ramp that stands for a jump [Pa]. */
const RAMP = 25;
const POINTS = 150;

test.each(Object.keys(engines))('%s: within a thousandth of the model from the pad to 70 km', (id) => {
  const solution = solutions.get(id)!;
  const one = { value: 1, plusMinus: null, text: '1', path: '', byDefault: false };
  const none = { ...one, value: 0 };
  // As an engine of a stage that flies from the pad; a Mach number of zero has no slipstream.
  const propulsion = enginePropulsion(solution, { count: one, stopped: none, lowestThrottle: one }, SEA);
  const direct = (pressure: number): number => figuresAt(solution, pressure, null).figures.thrust!;
  const errors = Array.from({ length: POINTS }, (_, i) => SEA * Math.exp((-9.5 * i) / POINTS)).flatMap(
    (pressure) => {
      const there = direct(pressure);
      const [above, below] = [direct(pressure + RAMP), direct(Math.max(0, pressure - RAMP))];
      const jumps = Math.abs(above - below) > 0.004 * there;
      return jumps ? [] : [propulsion.thrust(pressure, 0) / there - 1];
    },
  );
  expect(errors.length).toBeGreaterThan(POINTS - 8);
  expect(Math.max(...errors.map(Math.abs))).toBeLessThan(1e-3);
  const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
  expect(Math.abs(mean)).toBeLessThan(5e-5);
});

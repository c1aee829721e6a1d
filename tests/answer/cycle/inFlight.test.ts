import { expect, test } from 'vitest';
import { engineFiguresAt } from '../../../src/answer/cycle/cycleFigures.ts';
import { enginePropulsion } from '../../../src/answer/flight/propulsion.ts';
import { STANDARD_GRAVITY } from '../../../src/physics/constants.ts';
import type { Quantity } from '../../../src/study/index.ts';
import { solveText } from '../solveText.ts';

const engine =
  'propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.4 }, chamber: { pressure: 100 bar, efficiency: 98 % }, nozzle: { kind: bell, areaRatio: 20 }, size: { throat: 200 mm }';
const { solutions } = await solveText(`open: { ${engine}, cycle: { kind: gasGenerator } }
bare: { ${engine} }`);

const number = (value: number): Quantity => ({
  value,
  plusMinus: null,
  text: '',
  path: '',
  byDefault: false,
});
const four = { count: number(4), stopped: number(0), lowestThrottle: number(0.5) };

// Four engines push and take four times what one does; thrust over flow is that of the whole engine, dump counted.
test('a vehicle flies the whole engine where its cycle is stated', () => {
  const solution = solutions.get('open')!;
  const propulsion = enginePropulsion(solution, four, 101325);
  const { vacuumThrust, massFlow } = propulsion;
  const whole = engineFiguresAt(solution, 0, null);
  expect(vacuumThrust / whole.thrust).toBeCloseTo(4, 6);
  expect(vacuumThrust / massFlow / STANDARD_GRAVITY / whole.specificImpulse).toBeCloseTo(1, 6);
  expect(propulsion.thrust(101325, 0) / engineFiguresAt(solution, 101325, 0).thrust).toBeCloseTo(4, 4);
});

test('else it flies the thrust chamber', () => {
  const solution = solutions.get('bare')!;
  expect(enginePropulsion(solution, four, 101325).massFlow / solution.massFlow).toBeCloseTo(4, 9);
});

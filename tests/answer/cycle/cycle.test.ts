import { describe, expect, test } from 'vitest';
import type { Ask, Told } from '../../../src/answer/asked/model.ts';
import { tell } from '../../../src/answer/asked/tell.ts';
import { quantityNameAt } from '../../../src/answer/catalogue.ts';
import { cycleKinds } from '../../../src/study/cycleForm.ts';
import { leaves } from '../asked/leaves.ts';
import { solveText } from '../solveText.ts';

const engine = (fuel: string, ratio: number, cycle: string, pressure = '60 bar'): string =>
  `{ propellants: { oxidiser: oxygen, fuel: ${fuel}, ratio: ${ratio} }, chamber: { pressure: ${pressure}, efficiency: 98 % }, nozzle: { kind: bell, areaRatio: 40 }, size: { thrust: 100 kN, at: vacuum }, cycle: ${cycle} }`;

const { answer, solutions } = await solveText(
  [
    ...cycleKinds.map((kind) => `${kind}: ${engine('hydrogen', 5.5, `{ kind: ${kind} }`)}`),
    `kerosene: ${engine('kerosene', 2.4, '{ kind: gasGenerator }')}`,
    `tooMuch: ${engine('hydrogen', 5.5, '{ kind: closedExpander }', '250 bar')}`,
    `weakTanks: ${engine('methane', 3.2, '{ kind: pressureFed, tankPressure: 30 bar }', '15 bar')}`,
    `gas: { like: kerosene, propellants: { gas: hydrogen, temperature: 2700 K } }`,
    `fromGas: { like: kerosene, propellants: { oxidiser: GOX, fuel: GH2, ratio: 5 } }`,
    `none: { like: kerosene, cycle: none }`,
  ].join('\n'),
);

function told(id: string, quantity: string, part: Partial<Ask> = {}): Told {
  const nothing = { throttle: null, inputs: [], ambient: null, station: null } as const;
  return tell(solutions.get(id)!, { ...nothing, engine: id, quantity, ...part });
}

function value(id: string, quantity: string): number {
  const found = told(id, quantity);
  if (!found.ok) throw new Error(found.problem.what);
  return found.value;
}

const VACUUM = { ambient: { kind: 'vacuum' } } as const;

describe('every kind', () => {
  test.each([...cycleKinds, 'kerosene', 'tooMuch', 'weakTanks'])(
    '%s: each number is in the catalogue, each null has its reason',
    (id) => {
      const { cycle, mass, reasons } = answer.engines[id]!;
      for (const { path, value: leaf } of leaves({ cycle, mass })) {
        if (typeof leaf === 'number') expect(quantityNameAt(`engines.x.${path}`), path).toBeDefined();
        if (leaf === null)
          expect(
            reasons.map((one) => one.path),
            path,
          ).toContain(path);
      }
    },
  );

  test.each(['stagedCombustion', 'closedExpander', 'electricPump', 'pressureFed'])(
    '%s dumps nothing: engine and chamber are one',
    (id) => {
      const whole = told(id, 'cycle.specificImpulse', VACUUM);
      const chamber = told(id, 'specificImpulse', VACUUM);
      if (!whole.ok || !chamber.ok) throw new Error('no value');
      expect(whole.value).toBeCloseTo(chamber.value, 9);
      expect(value(id, 'cycle.dumpShare')).toBe(0);
      expect(value(id, 'cycle.mixtureRatio')).toBeCloseTo(5.5, 9);
    },
  );

  test.each(['gasGenerator', 'tapOff', 'bleedExpander'])(
    '%s costs specific impulse, and its scatter follows the chamber’s',
    (id) => {
      const whole = told(id, 'cycle.specificImpulse', VACUUM);
      const chamber = told(id, 'specificImpulse', VACUUM);
      if (!whole.ok || !chamber.ok) throw new Error('no value');
      expect(whole.value).toBeLessThan(chamber.value);
      expect(value(id, 'cycle.mixtureRatio')).toBeLessThan(5.5);
      expect(whole.scatter.map(({ name }) => name)).toEqual(chamber.scatter.map(({ name }) => name));
    },
  );
});

test('an open cycle of kerosene tells how far its gas may be from equilibrium', () => {
  const dumped = told('kerosene', 'cycle.dumpShare');
  if (!dumped.ok) throw new Error(dumped.problem.what);
  expect(dumped.scatter).toHaveLength(1);
  expect(dumped.scatter[0]!.high / dumped.value).toBeCloseTo(1 / 0.77, 9);
  const whole = told('kerosene', 'cycle.specificImpulse', VACUUM);
  if (!whole.ok) throw new Error(whole.problem.what);
  const gas = whole.scatter.find(({ name }) => name === 'gas of a fuel-rich burner')!;
  expect(gas.high).toBeLessThan(whole.value);
});

// Classical closed expanders of hydrogen end at about 40 to 70 bar (from memory).
test('an expander has an end, set by its heat, and says why it cannot go further', () => {
  expect(value('closedExpander', 'cycle.reachablePressure')).toBeGreaterThan(40e5);
  expect(value('closedExpander', 'cycle.reachablePressure')).toBeLessThan(90e5);
  expect(answer.engines.closedExpander!.cycle!.reachSetBy).toContain('heat');
  const flow = told('tooMuch', 'cycle.pumpPower');
  expect(flow.ok ? '' : flow.problem.code).toBe('cycle-cannot-close');
  expect(value('tooMuch', 'cycle.pressureMargin')).toBeLessThan(1);
});

test('tanks of 30 bar allow 30 bar less the drops', () => {
  expect(value('weakTanks', 'cycle.reachablePressure')).toBeCloseTo(30e5 / (1 + 0.2 + 0.2 + 0.035), 3);
  expect(value('weakTanks', 'cycle.tankPressure')).toBe(30e5);
  expect(value('weakTanks', 'cycle.pressurantMass')).toBeGreaterThan(0);
});

test.each([
  ['none', 'cycle-not-stated'],
  ['gas', 'cycle-without-two-propellants'],
  ['fromGas', 'cycle-density-unknown'],
])('%s says why there is no cycle', (id, code) => {
  const found = told(id, 'cycle.pumpPower');
  expect(found.ok ? '' : found.problem.code).toBe(code);
});

test('mass with its band, and none without a turbine', () => {
  const mass = told('gasGenerator', 'mass.engine');
  if (!mass.ok) throw new Error(mass.problem.what);
  const { low, high, engine: printed } = answer.engines.gasGenerator!.mass!;
  expect(printed).toBe(mass.value);
  expect(mass.scatter).toEqual([expect.objectContaining({ low, high })]);
  expect(told('electricPump', 'mass.engine').ok).toBe(false);
  expect(value('electricPump', 'cycle.batteryMass')).toBeGreaterThan(0);
});

test('the chamber’s own figures do not change by what feeds it', () => {
  const { kerosene, none } = answer.engines;
  expect(kerosene!.vacuum).toEqual(none!.vacuum);
  expect(kerosene!.massFlow).toBe(none!.massFlow);
});

// 1.7 times 600 bar lies beyond the 1000 bar of the gas model.
test('a preburner beyond the gas model is refused, not reckoned at another pressure', async () => {
  const at = async (pressure: string): Promise<Told> => {
    const solved = await solveText(`a: ${engine('hydrogen', 5.5, '{ kind: stagedCombustion }', pressure)}`);
    const nothing = { throttle: null, inputs: [], ambient: null, station: null } as const;
    return tell(solved.solutions.get('a')!, {
      ...nothing,
      engine: 'a',
      quantity: 'cycle.turbineInletTemperature',
    });
  };
  expect(await at('600 bar')).toMatchObject({
    ok: false,
    problem: { code: 'preburner-pressure-above-data' },
  });
  expect(await at('580 bar')).toMatchObject({ ok: true });
});

import { expect, test } from 'vitest';
import { ProblemError } from '../../../src/numerics/problem.ts';
import {
  balanceClosed,
  balanceOpen,
  type ClosedCycle,
  closedMargin,
  exhaustOf,
  generatorGas,
  type OpenCycle,
  perfectTurbineGas,
  pumpPressureLimit,
  reachOf,
  withDump,
} from '../../../src/physics/cycle/index.ts';
import { problemCode } from '../problemCode.ts';
import { fedWith } from './fed.ts';

const hydrogen = await fedWith('LOX', 'LH2');
const gas = perfectTurbineGas({ gamma: 1.36, molarMass: 4e-3, temperature: 900, pressure: 50e5 }, 0.9);

const open: OpenCycle = {
  kind: 'gasGenerator',
  fed: hydrogen,
  chamberPressure: 50e5,
  flow: { oxidiser: 200, fuel: 40 },
  drops: { injector: 0.2, jacket: 0.2, lines: 0.04 },
  tankPressure: 3e5,
  pumpEfficiency: { oxidiser: 0.7, fuel: 0.7 },
  pumpPressureLimit: 500e5,
  efficiency: 0.6,
  gas,
  pressureRatio: 20,
  exhaustAreaRatio: 4,
};

// Worked by hand: e_o = (62 − 3)·10⁵/(0.7·1141.3) = 7385 J/kg, e_f = (72 − 3)·10⁵/(0.7·70.8) = 139 225 J/kg;
// c_p = γR/((γ−1)M) = 7852.5 J/(kg K), w = 0.6·7852.5·900·(1 − 20^−0.264706) = 2.3217 MJ/kg.
test('an open cycle by hand', () => {
  const eo = 59e5 / (0.7 * 1141.3);
  const ef = 69e5 / (0.7 * 70.8);
  const cp = (1.36 * 8.31446261815324) / (0.36 * 4e-3);
  const work = 0.6 * cp * 900 * (1 - 20 ** (-0.36 / 1.36));
  const own = (0.9 * eo + ef) / 1.9;
  const balance = balanceOpen(open);
  expect(balance.work! / work).toBeCloseTo(1, 9);
  expect(balance.turbineFlow / ((200 * eo + 40 * ef) / (work - own))).toBeCloseTo(1, 9);
  expect(balance.dumped.oxidiser / balance.dumped.fuel).toBeCloseTo(0.9, 9);
  // The turbine gives what the pumps take, its own gas counted.
  const pumps = (200 + balance.dumped.oxidiser) * eo + (40 + balance.dumped.fuel) * ef;
  expect((balance.turbineFlow * work) / pumps).toBeCloseTo(1, 9);
});

test('a turbine that cannot pump its own gas is told', () => {
  const weak = { ...open, pressureRatio: 1.05, chamberPressure: 300e5 };
  expect(problemCode(() => balanceOpen(weak))).toBe('cycle-cannot-close');
});

// c = √(2 c_p T₂) for endless expansion; a throat alone gives (γ+1) times the sonic push over γ.
test('the dumped gas lies between a bare throat and endless expansion', () => {
  const exhaust = exhaustOf(open);
  const cp = gas.heatCapacity;
  const sonic = Math.sqrt(((2 * 1.36) / 2.36) * (8.31446261815324 / 4e-3) * exhaust.temperature);
  expect(exhaust.temperature).toBeCloseTo(900 - (0.6 * gas.idealWork(20)) / cp, 6);
  expect(exhaust.effectiveVelocity).toBeLessThan(Math.sqrt(2 * cp * exhaust.temperature));
  expect(exhaust.effectiveVelocity).toBeGreaterThan(sonic * (1 + 1 / 1.36));
  expect(exhaust.at(2.5e5)).toBeGreaterThanOrEqual(0);
  expect(exhaust.at(1e5)).toBeLessThan(exhaust.effectiveVelocity);
  expect(withDump(350, 150, 0.02)).toBeCloseTo(346, 12);
});

const staged: ClosedCycle = {
  ...open,
  kind: 'stagedCombustion',
  excess: 'fuel',
  chamberPressure: 207e5,
  flow: { oxidiser: 400, fuel: 67 },
  efficiency: 0.75,
  gas: generatorGas(hydrogen, 'fuel', 1000, 350e5),
};

test('in series, the turbine gives what all streams need', () => {
  const { turbineFlow, work, pressureRatio, oxidiserPressure, fuelPressure } = balanceClosed(staged);
  const through = 67 * staged.gas.mixtureRatio!;
  expect(turbineFlow).toBeCloseTo(67 + through, 9);
  const p = 207e5;
  const inlet = 1.2 * p * pressureRatio!;
  expect(fuelPressure).toBeCloseTo(1.2 * inlet + 0.24 * p, 0);
  expect(oxidiserPressure).toBeCloseTo(1.2 * inlet + 0.04 * p, 0);
  const need =
    ((through * (oxidiserPressure - 3e5) + (400 - through) * (1.24 * p - 3e5)) / 1141.3 +
      (67 * (fuelPressure - 3e5)) / 70.8) /
    0.7;
  expect((turbineFlow * work!) / need).toBeCloseTo(1, 6);
});

// The gas at 1000 K takes 67 · r of oxygen: with less than that there is none left for the chamber.
test('gas for the turbine that takes more oxidiser than there is, is told', () => {
  const all = 67 * staged.gas.mixtureRatio!;
  const fedBy = (oxidiser: number): ClosedCycle => ({ ...staged, flow: { oxidiser, fuel: 67 } });
  expect(problemCode(() => balanceClosed(fedBy(0.99 * all)))).toBe('turbine-gas-hotter-than-chamber');
  expect(problemCode(() => closedMargin(fedBy(0.99 * all)))).toBe('turbine-gas-hotter-than-chamber');
  expect(problemCode(() => balanceClosed({ ...fedBy(1.01 * all), chamberPressure: 50e5 }))).toBe('none');
});

// Little fuel drives the pumps of much oxidiser at a low pressure: the surplus is greatest where d(work)/dπ meets the slope of the need.
const slender: ClosedCycle = { ...staged, gas, chamberPressure: 12e5, flow: { oxidiser: 400, fuel: 0.125 } };

test('a turbine ratio beyond any built is found where it is the root', () => {
  const { pressureRatio, pumpPower, turbineFlow } = balanceClosed(slender);
  expect(pressureRatio).toBeGreaterThan(12);
  const cp = (1.36 * 8.31446261815324) / (0.36 * 4e-3);
  const work = 0.75 * cp * 900 * (1 - pressureRatio! ** (-0.36 / 1.36));
  expect((turbineFlow * work) / pumpPower).toBeCloseTo(1, 6);
  expect(closedMargin(slender)).toBeGreaterThan(0);
  expect(problemCode(() => balanceClosed({ ...slender, chamberPressure: 40e5 }))).toBe('cycle-cannot-close');
});

test('where the data of the gas end before the turbine gives enough, that is the reason', () => {
  const ending = { ...slender, gas: { ...gas, mostRatio: 6 } };
  expect(problemCode(() => balanceClosed(ending))).toBe('turbine-ratio-too-large');
  expect(problemCode(() => balanceClosed({ ...staged, gas: { ...staged.gas, mostRatio: 6 } }))).toBe('none');
});

// P. Fortescue and others, Spacecraft Systems Engineering, table 6.2 (seen; garbled in part): fuel side about 2.06 times the chamber’s;
// staged combustion in general 1.5 to 2.3 (from memory).
test('pump pressures of a hydrogen engine at 207 bar', () => {
  const { fuelPressure } = balanceClosed(staged);
  expect(fuelPressure / 207e5).toBeGreaterThan(1.5);
  expect(fuelPressure / 207e5).toBeLessThan(2.6);
});

test('there is an end to what staged combustion can reach, and no balance beyond it', () => {
  const at = (chamberPressure: number): ClosedCycle => ({ ...staged, chamberPressure });
  const power = { words: 'power', marginAt: (pressure: number) => closedMargin(at(pressure)) };
  const reach = reachOf([power]);
  expect(reach.setBy).toBe('power');
  expect(problemCode(() => balanceClosed(at(1.01 * reach.pressure)))).toBe('cycle-cannot-close');
  expect(problemCode(() => balanceClosed(at(0.99 * reach.pressure)))).toBe('none');
  const limited = reachOf([power, pumpPressureLimit((p) => balanceClosed(at(p)), 500e5)]);
  expect(limited.setBy).toContain('behind a pump');
  expect(balanceClosed(at(limited.pressure)).fuelPressure).toBeCloseTo(500e5, -2);
});

test('a hotter turbine reaches further', () => {
  const reachAt = (temperature: number): number => {
    const hotter = generatorGas(hydrogen, 'fuel', temperature, 350e5);
    return reachOf([
      { words: '', marginAt: (p) => closedMargin({ ...staged, gas: hotter, chamberPressure: p }) },
    ]).pressure;
  };
  expect(reachAt(1000)).toBeGreaterThan(reachAt(800));
});

test('only a balance that the power does not allow is left to the limit of the power', () => {
  const failing = (code: string): (() => number) => {
    const limit = pumpPressureLimit(() => {
      throw new ProblemError({ code, what: 'No balance.', mend: 'None.' });
    }, 500e5);
    return () => limit.marginAt(100e5);
  };
  expect(failing('cycle-cannot-close')()).toBe(1);
  expect(failing('expander-too-cold')()).toBe(1);
  expect(problemCode(failing('temperature-above-range'))).toBe('temperature-above-range');
});

test('what reaches nothing says so', () => {
  expect(problemCode(() => reachOf([{ words: 'all', marginAt: () => -1 }]))).toBe('cycle-reaches-nothing');
});

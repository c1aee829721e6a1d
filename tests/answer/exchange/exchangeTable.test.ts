import { expect, it } from 'vitest';
import { type ExchangeRate, exchangeTable } from '../../../src/answer/exchange/index.ts';
import { fly } from '../../../src/answer/flight/index.ts';
import { solveStudyLive } from '../../../src/answer/solve.ts';
import { vehicleWorths } from '../../../src/answer/worth/index.ts';
import type { StageName } from '../../../src/study/model.ts';
import { shelf, studyOf } from '../solveText.ts';

const study = await studyOf(
  `
bell: { propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }, chamber: { pressure: 100 bar }, size: { thrust: 800 kN, at: vacuum }, nozzle: { kind: ideal, areaRatio: 20 }, losses: none }
wide: { like: bell, nozzle: { areaRatio: 30 } }`.trim(),
  `vehicles:
  booster:
    first: { engine: bell, count: 5, propellant: 210 t, dry: 16 t }
    second: { specificImpulse: 350 s, thrust: 300 kN, propellant: 36 t, dry: 3.6 t }
    drag: { area: 11 m2 }
    orbit: { altitude: 200 km }`,
);
const { answer, solutions } = await solveStudyLive(study, shelf);
const solutionOf = (id: string) => solutions.get(id)!;
const [vehicle] = study.vehicles;
const table = exchangeTable(vehicle!, solutionOf)!;
const rate = (stage: StageName, lever: ExchangeRate['lever']): ExchangeRate =>
  table.rates.find((one) => one.stage === stage && one.lever === lever)!;

it('a kilogram on the last stage is a kilogram of payload less', () => {
  expect(rate('second', 'dryMass').payload).toBeCloseTo(-1, 3);
});

it('a kilogram on the first stage costs a part of one', () => {
  const { payload, paysFor } = rate('first', 'dryMass');
  expect(payload).toBeLessThan(-0.05);
  expect(payload).toBeGreaterThan(-0.5);
  expect(paysFor).toBeNull();
});

// The rates leave the steering as it is; the best steering anew makes a difference of second order only.
it('a rate with the steering held is that with the steering found anew', () => {
  const [first, second] = vehicle!.stages;
  const heavier = {
    ...vehicle!,
    stages: [
      first!,
      { ...second!, propellant: { ...second!.propellant, value: second!.propellant.value * 1.02 } },
    ],
  };
  const anew = (fly(heavier, solutionOf).payload - table.payload) / 2;
  expect(anew / rate('second', 'propellant').payload).toBeCloseTo(1, 0);
  const lighter = { ...vehicle!, stages: [{ ...first!, dry: { ...first!.dry, value: 15_000 } }, second!] };
  const gained = fly(lighter, solutionOf).payload - table.payload;
  expect(gained / (-1000 * rate('first', 'dryMass').payload)).toBeCloseTo(1, 1);
});

// Tsiolkovsky: the ideal speed of the second stage grows with its impulse as g₀ ln(m₀/m₁) a second; payload pays it back at dv/dm.
it('a second of the upper stage is worth what the equation of Tsiolkovsky says', () => {
  const { propellant, dry } = vehicle!.stages[1]!;
  const after = dry.value + table.payload;
  const before = after + propellant.value;
  const perSecond = 9.80665 * Math.log(before / after);
  // A kilogram of payload slows the second stage by g₀ I (1/m₁ − 1/m₀), and the first by far less.
  const second = 9.80665 * 350 * (1 / after - 1 / before);
  const found = rate('second', 'specificImpulse').payload;
  expect(found).toBeLessThan(perSecond / second);
  expect(found).toBeGreaterThan(0.75 * (perSecond / second));
});

it('says how much heavier the other engine may be, and what else would carry as much', () => {
  const [worth] = vehicleWorths(study, answer, solutions);
  const gained = answer.vehicles[0]!.exchanged!.payload! - table.payload;
  if (gained > 0) {
    expect(worth!.breakEven).toBeCloseTo(gained / -rate('first', 'dryMass').payload / 5, 0);
    expect(worth!.words.join(' ')).toContain('may weigh');
  } else expect(worth!.breakEven).toBeNull();
});

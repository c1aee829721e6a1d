/** Published figures of an engine that dumps what drives its turbine are held against the whole engine's. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { EngineAnswer } from '../../../src/answer/model.ts';
import { publishedQuantityAt } from '../../../src/answer/published/figures.ts';
import { figureWords } from '../../../src/answer/published/words.ts';
import { solveText } from '../solveText.ts';

/**
 * J-2: 425 s and 232 250 lbf in vacuum at an engine mixture ratio of 5.5, area ratio 27.5 (encyclopaedia pages, secondary); turbine
 * temperature from memory. The chamber's mixture ratio is the one at which the whole engine has 5.5.
 */
const rows = `
  - { quantity: specificImpulse, value: 425 s, at: vacuum, source: encyclopaedia page }
  - { quantity: thrust, value: 232250 lbf, at: vacuum, source: encyclopaedia page }
  - { quantity: massFlow, value: 248 kg/s, source: thrust over specific impulse }
  - { quantity: mixtureRatio, value: 5.5, source: encyclopaedia page }
  - { quantity: chamberPressure, value: 763 psi, source: encyclopaedia page }
  - { quantity: characteristicVelocity, value: 2300 m/s, source: an invented row }
  - { quantity: throatDiameter, value: 374 mm, source: an invented row }`;
const common = `
propellants: { oxidiser: oxygen, fuel: hydrogen, ratio: 5.69 }
chamber: { pressure: 763 psi }
size: { thrust: 1014 kN, at: vacuum }
nozzle: { kind: bell, areaRatio: 27.5, length: 80 % }
published:${rows}`.replace(/\n/g, '\n  ');
const cycle = '\n  cycle: { kind: gasGenerator, turbineInletTemperature: 920 K }';

let whole: EngineAnswer;
let chamber: EngineAnswer;
beforeAll(async () => {
  const { answer } = await solveText(`whole:${common}${cycle}\nchamber:${common}`);
  whole = answer.engines['whole']!;
  chamber = answer.engines['chamber']!;
});

describe('with a cycle', () => {
  test('specific impulse, thrust, flow and mixture ratio are the whole engine’s', () => {
    const [impulse, thrust, flow, ratio, pressure] = whole.published;
    expect(impulse!.comparedWith).toBe('cycle.specificImpulse');
    expect(thrust!.comparedWith).toBe('cycle.thrust');
    expect(flow!.comparedWith).toBe('cycle.massFlow');
    expect(ratio!.comparedWith).toBe('cycle.mixtureRatio');
    expect(pressure!.comparedWith).toBe('chamber.pressure');
    // The published figure is met within 2 %, while the chamber alone lies further above.
    expect(Math.abs(impulse!.share!)).toBeLessThan(0.02);
    expect(ratio!.computed).toBeCloseTo(5.5, 1);
    const [alone] = chamber.published;
    expect(alone!.computed! - impulse!.computed!).toBeGreaterThan(1.5);
    // Thrust over flow is the specific impulse, of the whole engine too.
    expect(thrust!.computed! / (flow!.computed! * 9.80665)).toBeCloseTo(impulse!.computed!, 6);
  });

  test('the words say so', () => {
    const [impulse, thrust] = whole.published.map((figure) => figureWords(figure).what);
    expect(impulse).toBe('specific impulse of the whole engine in vacuum');
    expect(thrust).toBe('thrust of the whole engine in vacuum');
    expect(figureWords(chamber.published[0]!).what).toBe('specific impulse in vacuum');
    expect(publishedQuantityAt(whole, 'published[0].computed')).toBe('cycle.specificImpulse');
    expect(publishedQuantityAt(whole, 'published[0].value')).toBe('specificImpulse');
  });

  test('no road leads from the flow through the throat to the flow of the engine', () => {
    const flows = ({ publishedChecks }: EngineAnswer) =>
      publishedChecks.filter(({ quantity }) => quantity === 'massFlow').map(({ other }) => other.by);
    expect(flows(whole)).toEqual(['thrust over specific impulse in vacuum']);
    expect(flows(chamber)).toHaveLength(3);
  });
});

test('a cycle that cannot close leaves the figures without a computed value, and says why', async () => {
  const text = `one:
  propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }
  chamber: { pressure: 400 bar }
  size: { throat: 200 mm }
  nozzle: { kind: ideal, areaRatio: 30 }
  cycle: { kind: closedExpander }
  published: [{ quantity: specificImpulse, value: 350 s, at: vacuum, source: an invented leaflet }]`;
  const one = (await solveText(text)).answer.engines['one']!;
  expect(one.published[0]!.computed).toBeNull();
  expect(one.reasons.find(({ path }) => path === 'published[0].computed')?.reason).toBeTruthy();
});

test('an input left to the rows is settled by the whole engine', async () => {
  const settled = (extra: string) =>
    solveText(`one:
  propellants: { oxidiser: oxygen, fuel: hydrogen, ratio: 5.69 }
  chamber: { pressure: 763 psi }
  size: { throat: 374 mm }
  nozzle: { kind: ideal }
  published:
    solveFor: areaRatio
    rows: [{ quantity: specificImpulse, value: 430 s, at: vacuum, source: an invented leaflet }]${extra}`);
  const withCycle = await settled(cycle);
  const [alone, engine] = [await settled(''), withCycle].map(
    ({ answer }) => answer.engines['one']!.publishedSolve!.value!,
  );
  // What the cycle costs must be made up by a larger nozzle.
  expect(engine!).toBeGreaterThan(1.05 * alone!);
  expect(withCycle.answer.engines['one']!.published[0]!.computed).toBeCloseTo(430, 4);
});

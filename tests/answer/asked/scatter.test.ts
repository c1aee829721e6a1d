import { beforeAll, describe, expect, test } from 'vitest';
import type { Ask, AskedAmbient, Scatter, Told } from '../../../src/answer/asked/model.ts';
import { tell } from '../../../src/answer/asked/tell.ts';
import type { SolvedStudy } from '../../../src/answer/solve.ts';
import { STANDARD_GRAVITY } from '../../../src/physics/constants.ts';
import { solveText } from '../solveText.ts';

const engines = `
bell: { name: Bell, propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }, chamber: { pressure: 100 bar }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 60 } }
sized: { name: Sized, like: bell, size: { thrust: 1 MN, at: vacuum } }
follows: { name: Follows, like: bell, size: { same: throat, as: sized }, nozzle: { kind: plug, areaRatio: 40, kept: 30 %, modules: 24 } }
alike: { name: Alike, like: bell, size: { same: thrust, as: sized, at: vacuum }, nozzle: { kind: cone, areaRatio: 20 } }
low: { name: Low, like: bell, chamber: { pressure: 100 bar, efficiency: 99.5 % } }
high: { name: High, like: bell, chamber: { pressure: 100 bar, efficiency: 98 % } }
plug: { name: Plug, like: bell, nozzle: { kind: plug, areaRatio: 40, kept: 30 %, modules: 24, machOne: 8 km } }
dual: { name: Dual, like: bell, nozzle: { kind: dualBell, areaRatio: 80, baseAreaRatio: 25, extensionLength: 80 % } }
hydrogen: { name: Hydrogen, like: bell, propellants: { oxidiser: oxygen, fuel: hydrogen, ratio: 6 } }`;

let solved: SolvedStudy;
beforeAll(async () => {
  solved = await solveText(engines);
});

const VACUUM = { kind: 'vacuum' } as const;
const PAD = { kind: 'altitude', altitude: 0 } as const;

function told(engine: string, quantity: string, ambient: AskedAmbient | null = null): Told & { ok: true } {
  const ask: Ask = { engine, quantity, ambient, throttle: null, station: null, inputs: [] };
  const found = tell(solved.solutions.get(engine)!, ask);
  if (!found.ok) throw new Error(found.problem.what);
  return found;
}

function scatterNamed({ scatter }: { readonly scatter: readonly Scatter[] }, name: string): Scatter {
  const found = scatter.find((one) => one.name === name);
  if (found === undefined) throw new Error(`No scatter ${name}`);
  return found;
}

const names = ({ scatter }: { readonly scatter: readonly Scatter[] }): readonly string[] =>
  scatter.map(({ name }) => name);

describe('scatter', () => {
  test('energy release is what the same engine gives with the efficiency stated at either end', () => {
    for (const quantity of ['vacuum.specificImpulse', 'massFlow', 'characteristicVelocity']) {
      const { low, high } = scatterNamed(told('bell', quantity), 'energy release');
      expect(low / told('low', quantity).value, quantity).toBeCloseTo(1, 10);
      expect(high / told('high', quantity).value, quantity).toBeCloseTo(1, 10);
    }
    expect(names(told('low', 'vacuum.specificImpulse'))).not.toContain('energy release');
  });

  test('thrust is weight flow times specific impulse at each end', () => {
    for (const engine of ['bell', 'sized', 'follows', 'alike', 'plug']) {
      const [thrust, impulse, flow] = ['vacuum.thrust', 'vacuum.specificImpulse', 'massFlow'].map(
        (quantity) => told(engine, quantity),
      );
      for (const name of names(impulse!)) {
        for (const end of ['low', 'high'] as const) {
          const of = (one: typeof thrust): number =>
            one!.scatter.find((each) => each.name === name)?.[end] ?? one!.value;
          expect((of(impulse) * of(flow) * STANDARD_GRAVITY) / of(thrust), `${engine} ${name}`).toBeCloseTo(
            1,
            10,
          );
        }
      }
    }
  });

  test('a thrust that is stated has none there; what follows from it has', () => {
    expect(names(told('sized', 'vacuum.thrust'))).toEqual([]);
    expect(names(told('alike', 'vacuum.thrust'))).toEqual([]);
    expect(names(told('sized', 'throat.diameter'))).toContain('friction on the wall');
    expect(names(told('bell', 'throat.diameter'))).toEqual([]);
    // The plug takes its throat from an engine sized by thrust, and with it that engine's errors.
    const own = scatterNamed(told('plug', 'vacuum.thrust'), 'friction on the wall');
    expect(own.low).toBeGreaterThan(told('plug', 'vacuum.thrust').value);
    expect(told('follows', 'throat.area').scatter).toEqual(told('sized', 'throat.area').scatter);
  });

  test('one name an error, whatever the engine; fuels that burn otherwise have their own', () => {
    const [bell, plug, hydrogen] = ['bell', 'plug', 'hydrogen'].map((id) =>
      names(told(id, 'thrust', VACUUM)),
    );
    expect(plug).toEqual(expect.arrayContaining([...bell!]));
    expect(bell).toContain('slow chemistry, carbon');
    expect(hydrogen).toContain('slow chemistry, hydrogen');
    expect(hydrogen).not.toContain('slow chemistry, carbon');
  });

  test('of the push on a plug’s base is all that the base leaves open of the thrust', () => {
    const ask: Ask = {
      engine: 'plug',
      quantity: 'thrustParts.force',
      part: 'base',
      ambient: VACUUM,
      throttle: null,
      station: null,
      inputs: [],
    };
    const base = tell(solved.solutions.get('plug')!, ask);
    if (!base.ok) throw new Error(base.problem.what);
    const thrust = told('plug', 'thrust', VACUUM);
    const own = scatterNamed(base, 'base pressure of a plug');
    const whole = scatterNamed(thrust, 'base pressure of a plug');
    expect(own.high - base.value).toBeGreaterThan(0);
    expect((own.high - base.value) / (whole.high - thrust.value)).toBeCloseTo(1, 6);
    expect((base.value - own.low) / (thrust.value - whole.low)).toBeCloseTo(1, 6);
  });

  test('of a plug’s base is its band times its area', () => {
    const { thrust, plug } = solved.answer.engines.plug!.altitudes.find(
      ({ altitude }) => altitude === 20_000,
    )!;
    const area = solved.answer.engines.plug!.contour.plug!.baseArea;
    const at = { kind: 'altitude', altitude: 20_000 } as const;
    const found = scatterNamed(told('plug', 'thrust', at), 'base pressure of a plug');
    const { low, high, pressure } = plug!.base!;
    expect(found.low).toBeCloseTo(thrust! + (low - pressure) * area, 4);
    expect(found.high).toBeCloseTo(thrust! + (high - pressure) * area, 4);
  });

  test('of the slipstream is there in flight alone', () => {
    expect(names(told('plug', 'thrust', { kind: 'altitude', altitude: 8000 }))).toContain(
      'slipstream round a plug',
    );
    expect(names(told('plug', 'thrust', PAD))).not.toContain('slipstream round a plug');
    const still = told('plug', 'thrust', { kind: 'pressure', pressure: 35_600 });
    expect(names(still)).not.toContain('slipstream round a plug');
  });
});

describe('alternatives', () => {
  test('there are none where the gas stays on the wall by all criteria', () => {
    expect(told('bell', 'thrust', VACUUM).alternatives).toEqual([]);
    expect(told('bell', 'specificImpulse', { kind: 'altitude', altitude: 30_000 }).alternatives).toEqual([]);
  });

  test('every criterion that counts has its thrust, within the span of the answer', () => {
    const { separation, thrust } = solved.answer.engines.bell!.altitudes[0]!;
    const { alternatives } = told('bell', 'thrust', PAD);
    expect(alternatives).toHaveLength(separation!.counted);
    expect(alternatives.every(({ of }) => of === 'separation criterion')).toBe(true);
    const values = alternatives.map(({ value }) => value!);
    // Both roads sum the same surfaces, not in the same order.
    expect(Math.min(...values)).toBeGreaterThanOrEqual(separation!.thrust!.low * (1 - 1e-12));
    expect(Math.max(...values)).toBeLessThanOrEqual(separation!.thrust!.high * (1 + 1e-12));
    expect(values.some((value) => Math.abs(value / thrust! - 1) < 1e-12)).toBe(true);
  });

  test('places and pressures at which the gas lets go stand beside each other', () => {
    const { earliest, latest, counted } = solved.answer.engines.bell!.separation!.seaLevel;
    const place = told('bell', 'separation.place.areaRatio', PAD).alternatives.map(({ value }) => value!);
    expect(Math.min(...place)).toBeCloseTo(earliest.areaRatio, 10);
    expect(Math.max(...place)).toBeCloseTo(latest.areaRatio, 10);
    expect(told('bell', 'flow.separationPressure', PAD).alternatives).toHaveLength(counted);
    const { low, high } = solved.answer.engines.bell!.separation!.lowestFullThrottle;
    for (const { value } of told('bell', 'separation.lowestFullThrottle').alternatives) {
      expect(value).toBeGreaterThanOrEqual(low);
      expect(value).toBeLessThanOrEqual(high);
    }
  });

  test('a dual bell between its criteria of transition has both thrusts', () => {
    const { change } = solved.answer.engines.dual!;
    const { low, high } = change!.band!;
    const between = {
      kind: 'pressure',
      pressure: Math.sqrt(low.ambientPressure * high.ambientPressure),
    } as const;
    const { alternatives, value } = told('dual', 'thrust', between);
    const modes = solved.solutions.get('dual')!.nozzle.change!;
    const share = (of: 'thick' | 'thin'): number => modes[of].at(between.pressure).thrustCoefficient!;
    expect(alternatives).toHaveLength(change!.estimates.length);
    const spread =
      Math.max(...alternatives.map((one) => one.value!)) - Math.min(...alternatives.map((one) => one.value!));
    expect(spread / value).toBeGreaterThan(0.5 * Math.abs(share('thin') / share('thick') - 1));
    expect(
      told('dual', 'thrust', { kind: 'pressure', pressure: low.ambientPressure / 2 }).alternatives,
    ).toEqual([]);
    expect(told('dual', 'change.ambientPressure').alternatives).toHaveLength(change!.estimates.length);
  });
});

describe('the bands of the answer', () => {
  test.each(['bell', 'plug', 'sized', 'dual'])('%s: are the ends of the scatter added up', (id) => {
    const { bands } = solved.answer.engines[id]!;
    for (const quantity of ['vacuum.specificImpulse', 'vacuum.thrust', 'seaLevel.specificImpulse']) {
      const { value, scatter, alternatives } = told(id, quantity);
      if (scatter.length === 0) {
        expect(bands[quantity], quantity).toBeUndefined();
        continue;
      }
      const low = scatter.reduce((sum, one) => sum + Math.min(one.low, one.high) - value, value);
      const high = scatter.reduce((sum, one) => sum + Math.max(one.low, one.high) - value, value);
      const [least, greatest] = [low, high].map((end) => end / value);
      if (alternatives.length === 0) {
        expect(bands[quantity]!.low / value, quantity).toBeCloseTo(least!, 10);
        expect(bands[quantity]!.high / value, quantity).toBeCloseTo(greatest!, 10);
      } else {
        expect(bands[quantity]!.low).toBeLessThan(low);
        expect(bands[quantity]!.high).toBeGreaterThan(high);
      }
    }
  });

  test('agree with the loss budget', () => {
    // The budget adds shares of the ideal, the scatter multiplies by the efficiency: they part by a tenth of the band at most.
    const { bands, losses } = solved.answer.engines.bell!;
    const { low, high } = bands['vacuum.specificImpulse']!;
    const width = losses.ideal * (losses.sum.high - losses.sum.low);
    expect(Math.abs(low - losses.ideal * (1 - losses.sum.high))).toBeLessThan(0.1 * width);
    expect(Math.abs(high - losses.ideal * (1 - losses.sum.low))).toBeLessThan(0.1 * width);
  });

  test.each(['97 ± 1 %', '96 to 98 %'])('take in a stated efficiency of %s', async (efficiency) => {
    const stated = engines.split('\n')[1]!.replace('100 bar }', `100 bar, efficiency: ${efficiency} }`);
    const { answer } = await solveText(stated);
    const { bands, vacuum } = answer.engines.bell!;
    const { low, from } = bands['vacuum.specificImpulse']!;
    expect(from).toContain('the chamber efficiency as stated');
    expect(low).toBeLessThan((vacuum.specificImpulse! * 96) / 97);
  });
});

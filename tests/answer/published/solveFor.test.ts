/** Published rows beside computed values, and what they settle: an engine computed and published gives itself back. */
import { describe, expect, test } from 'vitest';
import { findQuantity, quantityNameAt } from '../../../src/answer/catalogue.ts';
import type { EngineAnswer } from '../../../src/answer/model.ts';
import { comparableQuantities } from '../../../src/answer/published/computedValue.ts';
import { publishedQuantityAt } from '../../../src/answer/published/figures.ts';
import { publishedKinds } from '../../../src/study/publishedForm.ts';
import { solveOne, solveText } from '../solveText.ts';

const gas = 'propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }';
interface Inputs {
  readonly nozzle?: string;
  readonly chamber?: string;
  readonly size?: string;
}

function engine(published: string, inputs: Inputs = {}): string {
  const {
    nozzle = '{ kind: cone, areaRatio: 12 }',
    chamber = '{ pressure: 60 bar, efficiency: 96 % }',
    size = '{ throat: 200 mm }',
  } = inputs;
  const sized = size === '' ? '' : `, size: ${size}`;
  return `{ ${gas}, chamber: ${chamber}${sized}, nozzle: ${nozzle}, published: ${published} }`;
}

const row = (quantity: string, value: string, at?: string): string =>
  `{ quantity: ${quantity}, value: ${value}, ${at === undefined ? '' : `at: ${at}, `}source: an invented leaflet }`;

const truth = await solveOne(engine(`[${row('massFlow', '1 kg/s')}]`));

describe('published beside computed', () => {
  test('difference, share and whether it is inside, by ± and by digits', async () => {
    const { published } = await solveOne(
      engine(
        `[${row('massFlow', `${truth.massFlow + 1} ± 1.1 kg/s`)}, ${row('massFlow', `${truth.massFlow + 1} ± 0.9 kg/s`)}, ${row('areaRatio', '12')}, ${row('areaRatio', '12.6')}]`,
      ),
    );
    expect(published.map(({ within }) => within)).toEqual([true, false, true, false]);
    expect(published[0]!.difference).toBeCloseTo(-1, 9);
    expect(published[0]!.share).toBeCloseTo(-1 / (truth.massFlow + 1), 9);
    expect(published[3]!.rounding).toBeCloseTo(0.05, 12);
  });

  test('where nothing flows out there is no computed value, but a reason', async () => {
    const one = await solveOne(
      engine(`[${row('thrust', '100 kN', 'sea level')}]`, {
        chamber: '{ pressure: 0.9 bar }',
        nozzle: '{ kind: cone, areaRatio: 200 }',
      }),
    );
    expect(one.published[0]!.computed).toBeNull();
    for (const key of ['computed', 'difference', 'share', 'within']) {
      const why = one.reasons.find(({ path }) => path === `published[0].${key}`);
      expect(why?.reason).toMatch(/flows out/);
      expect(why?.mend).toBeTruthy();
    }
  });

  test('every quantity that may be published can be compared, and is in the catalogue', () => {
    const names = Object.values(publishedKinds).map(({ quantity }) => quantity);
    expect(new Set(comparableQuantities)).toEqual(new Set(names));
    expect(names.filter((name) => findQuantity(name) === undefined)).toEqual([]);
  });

  test('every number of the answer has its name', async () => {
    const one = await solveOne(
      engine(
        `{ solveFor: areaRatio, rows: [${row('thrust', '300 kN', 'vacuum')}, ${row('thrust', '270 kN', 'sea level')}, ${row('exitDiameter', '700 mm')}] }`,
      ),
    );
    const numbers = numbersIn({
      published: one.published,
      publishedChecks: one.publishedChecks,
      publishedSolve: one.publishedSolve,
    });
    expect(numbers.length).toBeGreaterThan(20);
    const strangers = numbers.filter((path) => {
      const name = quantityNameAt(`engines.one.${path}`, publishedQuantityAt(one, path));
      return name === undefined || findQuantity(name) === undefined;
    });
    expect(strangers).toEqual([]);
  });
});

function numbersIn(value: unknown, path = ''): readonly string[] {
  if (typeof value === 'number') return [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    numbersIn(inner, Array.isArray(value) ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`),
  );
}

const impulse = `${(truth.vacuum.specificImpulse as number).toFixed(4)} s`;
const thrust = `${((truth.vacuum.thrust as number) / 1e3).toFixed(3)} kN`;

describe('an input left out is settled by the rows', () => {
  // The truth was computed by the same models, so the value must come back to what the digits of the row allow.
  test.each([
    ['areaRatio', row('specificImpulse', impulse, 'vacuum'), { nozzle: '{ kind: cone }' }, 12, 1e-4],
    ['chamberPressure', row('thrust', thrust, 'vacuum'), { chamber: '{ efficiency: 96 % }' }, 60e5, 1e-5],
    [
      'efficiency',
      row('specificImpulse', impulse, 'vacuum'),
      { chamber: '{ pressure: 60 bar }' },
      0.96,
      1e-5,
    ],
    ['throatDiameter', row('thrust', thrust, 'vacuum'), { size: '' }, 0.2, 1e-5],
    ['massFlow', row('thrust', thrust, 'vacuum'), { size: '' }, truth.massFlow, 1e-5],
  ] as const)('%s', async (input, published, inputs, expected, tolerance) => {
    const one = await solveOne(engine(`{ solveFor: ${input}, rows: [${published}] }`, inputs));
    const { value, bands, used, stated } = one.publishedSolve!;
    expect(Math.abs((value as number) / expected - 1)).toBeLessThan(tolerance);
    expect(stated).toBe(false);
    expect(used).toBeCloseTo(value as number, 9);
    expect(bands).toHaveLength(1);
    expect(bands[0]!.low).toBeLessThan(value as number);
    expect(bands[0]!.high).toBeGreaterThan(value as number);
    expect(one.published[0]!.within).toBe(true);
    expect(one.notes.join(' ')).toContain('left to the published rows');
  });

  test('the band is where the row’s ± is met: thrust of a throat goes with the square of its diameter', async () => {
    const one = await solveOne(
      engine(
        `{ solveFor: throatDiameter, rows: [${row('thrust', `${thrust.replace(' kN', ' ± 6 kN')}`, 'vacuum')}] }`,
        {
          size: '',
        },
      ),
    );
    const share = 6e3 / (truth.vacuum.thrust as number);
    const [band] = one.publishedSolve!.bands;
    expect(band!.low).toBeCloseTo(0.2 * Math.sqrt(1 - share), 5);
    expect(band!.high).toBeCloseTo(0.2 * Math.sqrt(1 + share), 5);
  });

  test('what the rows settle is not held against them as if the study stated it', async () => {
    const one = await solveOne(
      engine(
        `{ solveFor: areaRatio, rows: [${row('specificImpulse', impulse, 'vacuum')}, ${row('exitDiameter', '692.8 ± 1 mm')}] }`,
        { nozzle: '{ kind: cone }' },
      ),
    );
    expect(one.publishedChecks).toEqual([]);
    expect(one.areaRatio).toBeCloseTo(12, 3);
  });

  test('an input that is stated stays, and both are told', async () => {
    const one = await solveOne(
      engine(`{ solveFor: areaRatio, rows: [${row('specificImpulse', impulse, 'vacuum')}] }`, {
        nozzle: '{ kind: cone, areaRatio: 20 }',
      }),
    );
    expect(one.areaRatio).toBe(20);
    expect(one.publishedSolve).toMatchObject({ used: 20, stated: true });
    expect(one.publishedSolve!.value).toBeCloseTo(12, 2);
  });

  test('two rows allow what both allow', async () => {
    const low = (truth.vacuum.thrust as number) / 1e3;
    const one = await solveOne(
      engine(
        `{ solveFor: throatDiameter, rows: [${row('thrust', `${low} ± 10 kN`, 'vacuum')}, ${row('massFlow', `${truth.massFlow} ± 0.5 kg/s`)}, ${row('areaRatio', '12')}] }`,
        { size: '' },
      ),
    );
    const [band] = one.publishedSolve!.bands;
    expect(band!.high).toBeCloseTo(0.2 * Math.sqrt(1 + 0.5 / truth.massFlow), 5);
    expect(one.publishedSolve!.withoutEffect).toEqual(['published[2]']);
    expect(one.publishedSolve!.value).toBeCloseTo(0.2, 4);
  });
});

describe('rows that settle nothing say why', () => {
  async function failing(input: string, rows: string, inputs: Inputs): Promise<string | undefined> {
    const { answer } = await solveText(`one: ${engine(`{ solveFor: ${input}, rows: [${rows}] }`, inputs)}`);
    expect(answer.failed.one?.where).toBe('engines.one.published.solveFor');
    return answer.failed.one?.code;
  }
  const noRatio = { nozzle: '{ kind: cone }' };

  test.each([
    ['out of reach', row('specificImpulse', '900 s', 'vacuum'), 'published-out-of-reach'],
    ['no effect', row('massFlow', '100 kg/s'), 'published-rows-without-effect'],
    ['only the input itself', row('areaRatio', '12'), 'published-rows-without-effect'],
    [
      'in disagreement',
      `${row('specificImpulse', impulse, 'vacuum')}, ${row('exitDiameter', '900 mm')}`,
      'published-rows-disagree',
    ],
    // At the pad the thrust rises to the matched area ratio and falls again: two answers.
    ['two answers', row('thrust', '284 ± 1 kN', 'sea level'), 'published-several-values'],
  ])('%s', async (_, rows, code) => {
    expect(await failing('areaRatio', rows, noRatio)).toBe(code);
  });

  test('more than ideal combustion is out of reach', async () => {
    const rows = row('specificImpulse', `${1.1 * (truth.vacuum.specificImpulse as number)} s`, 'vacuum');
    expect(await failing('efficiency', rows, { chamber: '{ pressure: 60 bar }' })).toBe(
      'published-out-of-reach',
    );
  });

  test('beside a stated input the engine is computed all the same', async () => {
    const one: EngineAnswer = await solveOne(
      engine(`{ solveFor: areaRatio, rows: [${row('specificImpulse', '900 s', 'vacuum')}] }`),
    );
    expect(one.publishedSolve!.value).toBeNull();
    const why = one.reasons.find(({ path }) => path === 'publishedSolve.value');
    expect(why?.reason).toContain('No area ratio gives');
  });
});

import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../src/answer/catalogue.ts';
import { settableInputs, withInputs } from '../../../src/answer/inputs/index.ts';
import { attempt } from '../../../src/numerics/problem.ts';
import type { EngineInput, Study } from '../../../src/study/model.ts';
import { studyOf } from '../solveText.ts';

const burnt = `propellants: { oxidiser: oxygen, fuel: { ethanol: 75 %, water: 25 % }, ratio: 1.5 }`;
const chamber = 'chamber: { pressure: 100 bar, efficiency: 97.5 ± 1 % }';

async function engineOf(nozzle: string, size = '{ throat: 200 mm }', rest = ''): Promise<EngineInput> {
  const study: Study = await studyOf(
    `one: { ${burnt}, ${chamber}, size: ${size}, nozzle: ${nozzle}${rest} }`,
  );
  return study.engines[0]!;
}

function problemOf(engine: EngineInput, input: string, value: number) {
  const outcome = attempt(() => withInputs(engine, [{ input, value }]));
  if (outcome.ok) throw new Error(`${input} = ${value} was taken`);
  return outcome.problem;
}

/** Every kind of nozzle, and each way of giving a size. */
const nozzles = [
  '{ kind: ideal, areaRatio: 25 }',
  '{ kind: cone, areaRatio: 25 }',
  '{ kind: bell, areaRatio: 25 }',
  '{ kind: idealBell, areaRatio: 25 }',
  '{ kind: adapting, areaRatio: 25 }',
  '{ kind: extendableSkirt, areaRatio: 60, shortAreaRatio: 20 }',
  '{ kind: insert, areaRatio: 60, insertAreaRatio: 15, switchAt: 12 km }',
  '{ kind: expansionDeflection, areaRatio: 40 }',
  '{ kind: dualBell, areaRatio: 60, baseAreaRatio: 20 }',
  '{ kind: plug, form: linear, areaRatio: 60, kept: 30 % }',
];

describe('what may be set on an engine', () => {
  it.each(nozzles)('is in the catalogue and can be set and read back: %s', async (nozzle) => {
    const engine = await engineOf(nozzle, '{ thrust: 800 kN, at: vacuum }');
    const names = new Set(catalogue.map(({ name }) => name));
    const inputs = settableInputs(engine);
    expect(inputs.length).toBeGreaterThan(10);
    for (const { name, quantity, whole, sweep, range } of inputs) {
      expect(names, name).toContain(quantity);
      expect(range).not.toBe('');
      expect(sweep.from, name).toBeLessThan(sweep.to);
      const middle = (sweep.from + sweep.to) / 2;
      const value = whole ? Math.round(middle) : middle;
      const changed = withInputs(engine, [{ input: name, value }]);
      const now = settableInputs(changed).find((each) => each.name === name);
      expect(now?.current, name).toBe(value);
    }
  });

  it.each(nozzles)('has ends at which a sweep may begin and end: %s', async (nozzle) => {
    const engine = await engineOf(nozzle);
    for (const { name, sweep } of settableInputs(engine)) {
      for (const value of [sweep.from, sweep.to]) {
        expect(attempt(() => withInputs(engine, [{ input: name, value }])).ok, `${name} = ${value}`).toBe(
          true,
        );
      }
    }
  });

  it('leaves the rest of the engine as it is', async () => {
    const engine = await engineOf('{ kind: bell, areaRatio: 25 }');
    const changed = withInputs(engine, [
      { input: 'chamber.pressure', value: 50e5 },
      { input: 'nozzle.areaRatio', value: 60 },
    ]);
    expect(changed.chamber.pressure).toMatchObject({ value: 50e5, plusMinus: null, text: '50 bar' });
    expect(changed.chamber.efficiency).toBe(engine.chamber.efficiency);
    expect(changed.nozzle.areaRatio.value).toBe(60);
    expect(changed.size).toBe(engine.size);
    expect(withInputs(engine, [{ input: 'chamber.pressure', value: 100e5 }])).toBe(engine);
  });

  it('lets the other of two go where one fixes the other', async () => {
    const dual = await engineOf('{ kind: dualBell, areaRatio: 60, baseAreaRatio: 20 }');
    expect(withInputs(dual, [{ input: 'nozzle.inflectionAngle', value: 0.3 }]).nozzle).toMatchObject({
      extensionLength: null,
      inflectionAngle: { value: 0.3 },
    });
    const ideal = await engineOf('{ kind: idealBell, areaRatio: 25, length: 80 % }');
    expect(withInputs(ideal, [{ input: 'nozzle.designMach', value: 4 }]).nozzle).toMatchObject({
      length: null,
    });
  });

  it('keeps the shares of a blend whole and the others in proportion', async () => {
    const engine = await engineOf('{ kind: bell, areaRatio: 25 }');
    const changed = withInputs(engine, [{ input: 'propellants.fuel.water', value: 0.1 }]);
    const { propellants } = changed;
    if (propellants.kind !== 'burnt') throw new Error('not burnt');
    expect(propellants.fuel.map(({ share }) => share.value)).toEqual([0.9, 0.1]);
  });

  it('takes a place to change over as an altitude', async () => {
    const engine = await engineOf('{ kind: insert, areaRatio: 60, insertAreaRatio: 15 }');
    expect(withInputs(engine, [{ input: 'nozzle.switchAt', value: 9_000 }]).nozzle).toMatchObject({
      switchAt: { kind: 'altitude', altitude: { value: 9_000, text: '9 km' } },
    });
  });
});

describe('what cannot be set', () => {
  it.each([
    ['areaRatio', 'nozzle.areaRatio'],
    ['nozzle.areaRato', 'nozzle.areaRatio'],
    ['chamber.presure', 'chamber.pressure'],
    ['propelants.ratio', 'propellants.ratio'],
  ])('tells the nearest name: %s', async (input, near) => {
    const engine = await engineOf('{ kind: bell, areaRatio: 25 }');
    const problem = problemOf(engine, input, 1);
    expect(problem.code).toBe('input-unknown');
    expect(problem.mend).toContain(`Did you mean ${near}?`);
  });

  it.each([
    ['nozzle.areaRatio', 1],
    ['nozzle.areaRatio', 1001],
    ['nozzle.length', 0.5],
    ['chamber.pressure', 0],
    ['chamber.pressure', Number.NaN],
    ['chamber.efficiency', 1.001],
    ['size.throat', Number.POSITIVE_INFINITY],
  ])('tells the allowed range: %s = %s', async (input, value) => {
    const engine = await engineOf('{ kind: bell, areaRatio: 25 }');
    const { range } = settableInputs(engine).find(({ name }) => name === input)!;
    const problem = problemOf(engine, input, value);
    expect(problem.code).toBe('input-out-of-range');
    expect(problem.what).toContain(range);
    expect(problem.where).toBe(`engines.one.${input}`);
  });

  it('is half a module', async () => {
    const engine = await engineOf('{ kind: plug, areaRatio: 60, modules: 24 }');
    expect(problemOf(engine, 'nozzle.modules', 12.5).code).toBe('input-not-whole');
  });

  it('is one input twice', async () => {
    const engine = await engineOf('{ kind: bell, areaRatio: 25 }');
    const twice = [1, 2].map((value) => ({ input: 'propellants.ratio', value }));
    const outcome = attempt(() => withInputs(engine, twice));
    expect(!outcome.ok && outcome.problem.code).toBe('input-twice');
  });

  it('is what published figures settle', async () => {
    const rows = '[{ quantity: thrust, value: 800 ± 5 kN, at: vacuum, source: a leaflet }]';
    const study = await studyOf(
      `one: { ${burnt}, ${chamber}, nozzle: { kind: bell, areaRatio: 25 }, published: { rows: ${rows}, solveFor: throatDiameter } }`,
    );
    expect(problemOf(study.engines[0]!, 'size.throat', 0.3).code).toBe('input-settled');
  });
});

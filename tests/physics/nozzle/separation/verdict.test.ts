import { describe, expect, test } from 'vitest';
import { nozzleModel, separationPressureRatioSchmucker } from '../../../../src/physics/nozzle/index.ts';
import { perfectGas, withoutMach } from '../perfectGas.ts';

describe('verdict', () => {
  const gas = perfectGas({ gamma: 1.2, pressure: 1e7 });
  const kinds = [
    { kind: 'ideal', areaRatio: 40 },
    { kind: 'cone', areaRatio: 40, halfAngle: Math.PI / 12 },
    { kind: 'bell', areaRatio: 40, length: 0.8 },
  ] as const;

  test.each(kinds)('$kind: full, near the limit, separated, unchoked as ambient rises', (spec) => {
    const nozzle = nozzleModel(spec, gas);
    const { lipPressure, separationPressure } = nozzle.at(1000).flow;
    const ratio = separationPressure / 1000;
    if (spec.kind === 'ideal') {
      expect(ratio).toBeCloseTo(separationPressureRatioSchmucker(nozzle.exit.mach!), 12);
      expect(lipPressure).toBe(nozzle.exit.pressure);
    }
    const limit = lipPressure / ratio; // ambient at which the deciding criterion is met exactly
    const first = Math.min(
      ...nozzle.separation!()!
        .criteria(limit)
        .filter(({ counts }) => counts)
        .map(({ limitAmbient }) => limitAmbient!),
    );
    const state = (ambient: number) => nozzle.at(ambient).flow.state;
    expect(state(0)).toBe('full');
    expect(state(nozzle.matchedAmbient)).toBe('full');
    expect(state(first * 0.999)).toBe('full');
    if (first < limit * 0.999) expect(state(limit * 0.999)).toBe('near the limit');
    expect(state(limit * 1.001)).toBe('separated');
    expect(state(gas.throat.pressure * 0.999)).toBe('separated');
    expect(state(gas.throat.pressure * 1.001)).toBe('unchoked');
    expect(state(gas.chamber.pressure * 2)).toBe('unchoked');
  });

  test('an ideal nozzle is judged by its mean, and says so; where no field can be had a bell is too', () => {
    expect(nozzleModel({ kind: 'ideal', areaRatio: 40 }, gas).at(1e5).flow.criterion).toMatch(
      /by the mean pressure/,
    );
    const bell = nozzleModel({ kind: 'bell', areaRatio: 40, length: 0.8 }, withoutMach(gas));
    expect(bell.at(1e5).flow.criterion).toMatch(/by the mean pressure/);
  });

  test('an area ratio near 1 at its own exit pressure flows full', () => {
    const nozzle = nozzleModel({ kind: 'ideal', areaRatio: 1.001 }, gas);
    expect(nozzle.at(nozzle.matchedAmbient).flow.state).toBe('full');
    expect(nozzle.at(nozzle.matchedAmbient).flow.criterion).toContain('outside the Mach numbers');
  });

  test('without a Mach number the fixed ratio of Summerfield 1954, 0.4, decides, and the power laws stand beside it', () => {
    const nozzle = nozzleModel({ kind: 'ideal', areaRatio: 40 }, withoutMach(gas));
    const { flow } = nozzle.at(1e5);
    expect(flow.criterion).toContain('Summerfield');
    expect(flow.separationPressure).toBeCloseTo(4e4, 6);
    const criteria = nozzle.separation!()!.criteria(1e5);
    expect(criteria.filter(({ counts }) => counts).map(({ id }) => id)).toEqual([
      'summerfield',
      'kaltBadal',
      'schilling',
    ]);
    for (const { counts, why } of criteria) expect(why === null).toBe(counts);
  });

  test('the adapting bound never separates', () => {
    const nozzle = nozzleModel({ kind: 'adapting', areaRatio: 200 }, gas);
    for (const ambient of [0, 1e3, 1e5, 2e6]) expect(nozzle.at(ambient).flow.state).toBe('full');
    expect(nozzle.at(gas.throat.pressure * 1.01).flow.state).toBe('unchoked');
  });
});

/**
 * Public data of historic engines, sea level, perfect gas of γ = 1.2. F-1: 982 psia (from memory), ε 16, flew full. J-2: 53 atm,
 * ε 27.5 (public encyclopaedia), no meaningful sea-level figure. RS-25: 207 bar, ε 77.5 (Fortescue et al., Spacecraft Systems
 * Engineering, table 6.2), flows full at sea level although its mean exit pressure lies below the limit: the wall's decides.
 */
describe('historic engines at sea level', () => {
  test.each([
    { engine: 'F-1', pressure: 67.7e5, areaRatio: 16, inFact: ['full'] },
    { engine: 'J-2', pressure: 53 * 101_325, areaRatio: 27.5, inFact: ['separated'] },
    { engine: 'RS-25', pressure: 207e5, areaRatio: 77.5, inFact: ['full', 'near the limit'] },
  ])('$engine is judged as it is: $inFact', ({ pressure, areaRatio, inFact }) => {
    const nozzle = nozzleModel(
      { kind: 'bell', areaRatio, length: 0.8 },
      perfectGas({ gamma: 1.2, pressure }),
    );
    const { flow } = nozzle.at(101_325);
    expect(inFact).toContain(flow.state);
    expect(flow.criterion).toBe('Schmucker 1973');
    expect(flow.lipPressure).toBeGreaterThan(1.3 * nozzle.exit.pressure);
  });
});

/** Places along an expansion: by pressure, area and Mach number, before and behind the throat, to the end of the data. */
import { describe, expect, test } from 'vitest';
import { expandBurnt, expandBurntFromInjector, expandPerfect } from '../../../src/physics/gas/index.ts';
import { problemCode } from '../problemCode.ts';
import { burnt, mixed, propellant, species } from './rows.ts';

const hydrolox = burnt('LOX', 'LH2', 6);
const along = (chemistry: Parameters<typeof expandBurnt>[2]['chemistry'], reactants = hydrolox) =>
  expandBurnt(reactants, species, { pressure: 1e7, chemistry });

describe.each(['shifting', 'frozen'] as const)('%s', (kind) => {
  const expansion = along({ kind });

  test('one place has one name: by Mach number, area ratio and pressure', () => {
    for (const mach of [0.02, 0.3, 0.9, 0.999, 1.001, 1.5, 3, 5]) {
      const place = expansion.atMach(mach);
      const side = mach < 1 ? 'subsonic' : 'supersonic';
      expect(Math.abs(place.mach! - mach)).toBeLessThan(1e-9);
      expect(place.pressure < expansion.throat.pressure).toBe(side === 'supersonic');
      expect(expansion.atPressure(place.pressure).mach!).toBeCloseTo(mach, 9);
      // Next to the throat the area hardly changes: a Mach number is known to the root of what the area is.
      const away = Math.abs(mach - 1) < 0.01 ? 6 : 8;
      expect(expansion.atAreaRatio(place.areaRatio, side).mach!).toBeCloseTo(mach, away);
    }
    expect(expansion.atMach(1)).toEqual(expansion.throat);
    expect(expansion.atAreaRatio(1, 'supersonic')).toBe(expansion.throat);
    expect(expansion.throat.mach!).toBeCloseTo(1, 10);
    expect(expansion.throat.areaRatio).toBe(1);
    const rest = expansion.atMach(0);
    expect([rest.velocity, rest.mach, rest.massFlux, rest.areaRatio]).toEqual([0, 0, 0, Infinity]);
  });

  test('c* is chamber pressure over mass flux, and d(ρu) = 0 at the throat', () => {
    const { throat, chamber, characteristicVelocity } = expansion;
    expect(characteristicVelocity).toBeCloseTo(chamber.pressure / (throat.density * throat.velocity), 9);
    const up = expansion.atPressure(throat.pressure * 1.001).massFlux;
    const down = expansion.atPressure(throat.pressure / 1.001).massFlux;
    // The curvature leaves 1e-6 of the flux on either side, the same; a slope would show in their difference.
    expect(Math.abs(up - down) / throat.massFlux).toBeLessThan(2e-9);
  });

  test('reaches as far as it says and not farther', () => {
    const last = expansion.atPressure(expansion.lowestPressure);
    expect(last.temperature).toBeCloseTo(kind === 'shifting' ? 200 : 4, 2);
    expect(problemCode(() => expansion.atPressure(expansion.lowestPressure * 0.99))).toBe(
      'temperature-below-range',
    );
    expect(expansion.atAreaRatio(0.999 * last.areaRatio, 'supersonic').temperature).toBeGreaterThan(
      last.temperature,
    );
    expect(problemCode(() => expansion.atAreaRatio(1.001 * last.areaRatio, 'supersonic'))).toBe(
      'expansion-beyond-data',
    );
  });

  test('next to rest the speed keeps its digits', () => {
    // ρu = (ρu)*/ε and ρ → ρ0: u ε → (ρu)*/ρ0, to M²/2 = 2e-5 at ε = 100.
    const { chamber, throat } = expansion;
    for (const areaRatio of [100, 1000]) {
      const { velocity } = expansion.atAreaRatio(areaRatio, 'subsonic');
      expect(Math.abs((velocity * areaRatio * chamber.density) / throat.massFlux - 1)).toBeLessThan(
        0.3 / areaRatio ** 2,
      );
    }
    expect(problemCode(() => expansion.atAreaRatio(1001, 'subsonic'))).toBe('area-ratio-at-rest');
  });
});

describe('frozen from a place', () => {
  const shifting = along({ kind: 'shifting' });
  const place = shifting.atAreaRatio(4, 'supersonic');
  const byArea = along({ kind: 'frozenFrom', areaRatio: 4 });
  const byPressure = along({ kind: 'frozenFrom', pressure: place.pressure });

  test('is the same named by area or by pressure', () => {
    for (const areaRatio of [1.5, 4, 30, 80]) {
      const one = byArea.atAreaRatio(areaRatio, 'supersonic');
      const other = byPressure.atAreaRatio(areaRatio, 'supersonic');
      expect(one.velocity / other.velocity).toBeCloseTo(1, 9);
      expect(one.temperature / other.temperature).toBeCloseTo(1, 8);
    }
  });

  test('follows before it, holds behind it, and has no step there', () => {
    expect(byArea.throat.massFlux / shifting.throat.massFlux).toBeCloseTo(1, 11);
    const before = byArea.atAreaRatio(3.9, 'supersonic');
    expect(before.cpEquilibrium).not.toBeNull();
    expect(before.velocity / shifting.atAreaRatio(3.9, 'supersonic').velocity).toBeCloseTo(1, 11);
    const [near, behind] = [4.001, 60].map((ratio) => byArea.atAreaRatio(ratio, 'supersonic'));
    expect(near!.cpEquilibrium).toBeNull();
    expect(near!.velocity / place.velocity).toBeCloseTo(1, 3);
    const there = place.composition();
    const held = behind!.composition();
    for (const [name, share] of Object.entries(there)) {
      expect(Math.abs((held[name] ?? 0) - share), name).toBeLessThan(1e-9);
    }
    expect(behind!.entropy / shifting.chamber.entropy).toBeCloseTo(1, 11);
  });
});

describe('Mach numbers where a substance freezes in the flow', () => {
  test('are found on both sides of the stretch where there is none, and refused within', () => {
    const solid = along({ kind: 'shifting' }, mixed({ AP: 0.68, Al: 0.18, HTPB: 0.14 }));
    for (const mach of [0.3, 0.99, 1.5, 2.2, 3, 4]) {
      const place = solid.atMach(mach);
      expect(Math.abs(place.mach! - mach)).toBeLessThan(1e-8);
      expect(place.pressure > solid.throat.pressure).toBe(mach < 1);
    }
    expect(problemCode(() => solid.atMach(2.5))).toBe('no-sound-speed');
  });

  test('also when the throat itself lies within', () => {
    const lean = along({ kind: 'shifting' }, mixed({ AP: 0.736, Al: 0.064, HTPB: 0.2 }));
    expect(lean.throat.mach).toBeNull();
    expect(lean.throat.absent).toMatch(/pin the temperature/);
    for (const mach of [0.05, 0.2, 0.8, 1.2, 2]) expect(lean.atMach(mach).mach!).toBeCloseTo(mach, 8);
    expect(problemCode(() => lean.atMach(0.95))).toBe('no-sound-speed');
    expect(lean.atMach(1)).toEqual(lean.throat);
  });
});

describe('burning in a chamber of finite width, hot helium', () => {
  // A gas of constant γ: p0/p_injector = [1 + (γ−1)/2 M²]^{γ/(γ−1)}/(1 + γM²), M from the area ratio. Heat addition in a
  // duct of constant area (any text on compressible flow; the same as RP-1311, finite-area combustor, from memory).
  const gamma = 5 / 3;
  const cp = (2.5 * 8.31446261815324) / 0.004002602;
  const hot = { ...propellant('GHe'), enthalpy: cp * 2000 };
  const perfect = expandPerfect({ gamma, molarMass: 0.004002602, temperature: 2000, pressure: 1e6 });

  test.each([1.06, 1.2, 2, 3, 8, 100])('contraction ratio %f', (contractionRatio) => {
    const burning = expandBurntFromInjector(hot, species, {
      injectorPressure: 5e6,
      contractionRatio,
      chemistry: { kind: 'shifting' },
    });
    const mach = perfect.atAreaRatio(contractionRatio, 'subsonic').mach!;
    const closed = (1 + ((gamma - 1) / 2) * mach ** 2) ** (gamma / (gamma - 1)) / (1 + gamma * mach ** 2);
    expect(Math.abs(burning.stagnationPressureRatio / closed - 1)).toBeLessThan(1e-11);
    expect(burning.chamberEnd.mach!).toBeCloseTo(mach, 9);
    // Little is lost in a wide chamber: γM²/2.
    if (contractionRatio === 100) {
      expect((1 - burning.stagnationPressureRatio) / ((gamma * mach ** 2) / 2)).toBeCloseTo(1, 3);
    }
  });

  test('the expansion behind it is that of the lower total pressure', () => {
    const burning = expandBurntFromInjector(hydrolox, species, {
      injectorPressure: 1e7,
      contractionRatio: 2,
      chemistry: { kind: 'shifting' },
    });
    const direct = expandBurnt(hydrolox, species, {
      pressure: burning.stagnationPressureRatio * 1e7,
      chemistry: { kind: 'shifting' },
    });
    expect(burning.expansion.characteristicVelocity / direct.characteristicVelocity).toBeCloseTo(1, 11);
    expect(burning.chamberEnd.areaRatio).toBeCloseTo(2, 9);
  });
});

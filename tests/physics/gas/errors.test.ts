/** Every typed error of the gas: provoked once, with words that name the value and say what to do. */
import { describe, expect, test } from 'vitest';
import { ProblemError } from '../../../src/numerics/problem.ts';
import { expandAlong } from '../../../src/physics/gas/expandAlong.ts';
import { heldGas, heldIsentrope, heldState } from '../../../src/physics/gas/heldGas.ts';
import {
  blendReactants,
  burntReactants,
  compileMixture,
  equilibrate,
  expandBurnt,
  expandBurntFromInjector,
  expandHeated,
  expandPerfect,
  massRatioForEquivalence,
  type Reactants,
  workFor,
} from '../../../src/physics/gas/index.ts';
import type { Isentrope } from '../../../src/physics/gas/isentrope.ts';
import { burnt, mixed, propellant, species } from './rows.ts';

const hot = { pressure: 1e7, chemistry: { kind: 'shifting' } } as const;
const held = { pressure: 1e6, chemistry: { kind: 'frozen' } } as const;
const hydrolox = burnt('LOX', 'LH2', 6);
const expansion = expandBurnt(hydrolox, species, hot);
const perfect = (change: object) =>
  expandPerfect({ gamma: 1.2, molarMass: 0.022, temperature: 3000, pressure: 1e7, ...change });
const part = { elements: { H: 2 }, molarMass: 0.002, enthalpy: 0, density: null };
const only = (element: string, enthalpy = 0): Reactants => ({
  elements: { [element]: 40 },
  enthalpy,
  density: null,
});
const steam: Reactants = { elements: { H: 111.02, O: 55.51 }, enthalpy: 0, density: null };
const injected = { injectorPressure: 1e7, chemistry: { kind: 'shifting' } } as const;

/** A perfect helium along one isentrope, to be broken on purpose. */
function heliumRule(): Isentrope {
  const mixture = compileMixture(species, ['He']);
  const moles = new Float64Array(mixture.speciesCount).fill(1 / 0.004002602);
  const gas = heldGas({ mixture, moles });
  return heldIsentrope(gas, heldState(gas, 1000, 1e6), 'frozen');
}
const madeUp = new ProblemError({
  code: 'temperature-below-range',
  what: 'Made up for this test.',
  mend: 'Nothing.',
});

const cases: readonly (readonly [code: string, words: RegExp, provoke: () => unknown])[] = [
  // reactants
  ['shares-do-not-add-up', /70\.0000 %/, () => blendReactants([{ ...part, share: 0.7 }])],
  ['shares-do-not-add-up', /not 0 or more/, () => mixed({ AP: 1.2, Al: -0.2 })],
  ['shares-do-not-add-up', /NaN/, () => mixed({ AP: Number.NaN, Al: 0.2 })],
  ['mixture-ratio-invalid', /-1\./, () => burnt('LOX', 'LH2', -1)],
  ['mixture-ratio-invalid', /Infinity/, () => burntReactants(only('O'), only('H'), Number.POSITIVE_INFINITY)],
  [
    'equivalence-ratio-invalid',
    /is 0\./,
    () => massRatioForEquivalence(propellant('LOX'), propellant('LH2'), 0),
  ],
  [
    'mixture-cannot-burn',
    /oxidiser offers no/,
    () => massRatioForEquivalence(propellant('LH2'), propellant('LH2'), 1),
  ],
  ['mixture-cannot-burn', /fuel has nothing left/, () => massRatioForEquivalence(only('O'), only('N'), 1)],
  ['element-without-valence', /how B burns/, () => massRatioForEquivalence(only('O'), only('B'), 1)],
  [
    'reactants-invalid',
    /-3 mol\/kg of H/,
    () => expandBurnt({ ...only('O'), elements: { O: 9, H: -3 } }, species, hot),
  ],
  ['reactants-invalid', /no atoms/, () => expandBurnt({ ...only('O'), elements: {} }, species, hot)],
  ['reactants-invalid', /enthalpy.*NaN/, () => expandBurnt(only('O', Number.NaN), species, hot)],
  ['element-without-species', /element Xe/, () => expandBurnt(only('Xe'), species, hot)],
  // chamber
  [
    'chamber-pressure-outside',
    /2000\.0 bar.*0\.001 to 1000 bar/,
    () => expandBurnt(hydrolox, species, { ...hot, pressure: 2e8 }),
  ],
  [
    'chamber-pressure-outside',
    /0\.00010000 bar/,
    () => expandBurnt(hydrolox, species, { ...hot, pressure: 10 }),
  ],
  ['chamber-pressure-outside', /NaN/, () => expandBurnt(hydrolox, species, { ...hot, pressure: Number.NaN })],
  ['mixture-cannot-burn', /does not burn to a hot gas/, () => expandBurnt(propellant('LOX'), species, hot)],
  ['mixture-cannot-burn', /below 200 K or condensed/, () => expandBurnt(propellant('water'), species, hot)],
  [
    'temperature-above-range',
    /would be at \d+ K.*end at 6000 K/,
    () => expandBurnt(only('H', 2e8), species, hot),
  ],
  [
    'contraction-ratio-too-small',
    /is 1\.05\./,
    () => expandBurntFromInjector(hydrolox, species, { ...injected, contractionRatio: 1.05 }),
  ],
  [
    'area-ratio-at-rest',
    /more than 1000/,
    () => expandBurntFromInjector(hydrolox, species, { ...injected, contractionRatio: 1e6 }),
  ],
  // heated gas
  [
    'heated-temperature-invalid',
    /to -5 K/,
    () => expandHeated(only('H'), species, { ...hot, temperature: -5 }),
  ],
  [
    'heated-temperature-invalid',
    /to NaN K/,
    () => expandHeated(only('H'), species, { ...held, temperature: Number.NaN, composition: { H2: 1 } }),
  ],
  [
    'temperature-above-range',
    /7000 K.*end at 6000 K/,
    () => expandHeated(only('H'), species, { ...hot, temperature: 7000 }),
  ],
  [
    'temperature-above-range',
    /7000\.0 K, outside 4 to 6000/,
    () => expandHeated(only('H'), species, { ...held, temperature: 7000, composition: { H2: 1 } }),
  ],
  [
    'temperature-below-range',
    /100 K.*begin at 200 K/,
    () => expandHeated(only('H'), species, { ...hot, temperature: 100 }),
  ],
  [
    'temperature-below-range',
    /3\.0 K, outside 4/,
    () => expandHeated(only('N'), species, { ...held, temperature: 3, composition: { N2: 1 } }),
  ],
  [
    'composition-not-given',
    /not said which/,
    () => expandHeated(only('H'), species, { ...held, temperature: 300 }),
  ],
  [
    'composition-invalid',
    /-0\.5 mol of H\./,
    () => expandHeated(only('H'), species, { ...held, temperature: 300, composition: { H2: 1, H: -0.5 } }),
  ],
  [
    'species-not-a-gas',
    /^Xe is not among/,
    () => expandHeated(only('H'), species, { ...held, temperature: 300, composition: { Xe: 1 } }),
  ],
  [
    'no-gas-left',
    /holds no gas/,
    () => expandHeated(only('H'), species, { ...held, temperature: 300, composition: {} }),
  ],
  [
    'no-gas-left',
    /300\.0 K and 10\.00 bar everything condenses/,
    () => expandHeated(steam, species, { ...hot, pressure: 1e6, temperature: 300 }),
  ],
  // Steam of 650 K at 200 bar wants to become water at 611 K, above the end of the water's data.
  [
    'condensed-beyond-data',
    /would condense above the highest temperature/,
    () => expandHeated(steam, species, { ...hot, pressure: 2e7, temperature: 650 }),
  ],
  // places along the flow
  ['station-pressure-outside', /20000000 Pa is not between/, () => expansion.atPressure(2e7)],
  ['station-pressure-outside', /0 Pa is not/, () => expansion.atPressure(0)],
  ['station-pressure-outside', /NaN/, () => perfect({}).atPressure(Number.NaN)],
  ['area-ratio-below-one', /0\.9 is below 1/, () => expansion.atAreaRatio(0.9, 'supersonic')],
  ['area-ratio-below-one', /NaN is no number/, () => perfect({}).atAreaRatio(Number.NaN, 'subsonic')],
  ['mach-invalid', /-1 has no meaning/, () => expansion.atMach(-1)],
  ['mach-beyond-data', /reaches Mach \d+\.\d+ .* not 60/, () => expansion.atMach(60)],
  [
    'no-sound-speed',
    /no place of Mach 2\.5/,
    () =>
      expandBurnt(mixed({ AP: 0.68, Al: 0.18, HTPB: 0.14 }), species, { ...hot, pressure: 7e6 }).atMach(2.5),
  ],
  [
    'expansion-beyond-data',
    /to area ratio 1000000000; it can to about \d/,
    () => expansion.atAreaRatio(1e9, 'supersonic'),
  ],
  ['temperature-below-range', /entropy of .* kJ\/\(kg K\)/, () => expansion.atPressure(1e-3)],
  [
    'station-pressure-outside',
    /2000000 Pa/,
    () => expandBurnt(hydrolox, species, { pressure: 1e6, chemistry: { kind: 'frozenFrom', pressure: 2e6 } }),
  ],
  // perfect gas
  ['perfect-gas-invalid', /gamma.*is 1\..*above 1/, () => perfect({ gamma: 1 })],
  ['perfect-gas-invalid', /gamma.*is NaN/, () => perfect({ gamma: Number.NaN })],
  ['perfect-gas-invalid', /molar mass.*is 0/, () => perfect({ molarMass: 0 })],
  ['perfect-gas-invalid', /temperature.*is -1/, () => perfect({ temperature: -1 })],
  ['perfect-gas-invalid', /pressure.*is Infinity/, () => perfect({ pressure: Number.POSITIVE_INFINITY })],
  // What no real mixture is known to do: a rule without any state below rest, one with a gap, a list without species enough.
  [
    'no-throat',
    /no state of the flow/,
    () => {
      const rule = heliumRule();
      // Helium's flux is greatest at 487 kPa; data that end at 550 kPa hold no throat, only a last place.
      const at = (pressure: number) => {
        if (pressure < 5.5e5) throw madeUp;
        return { ...rule.at(pressure), soundSpeed: null };
      };
      return expandAlong({ ...rule, at, chamber: { ...rule.chamber, isentropicExponent: 1.01 } });
    },
  ],
  [
    'station-not-found',
    /area ratio 5 was not found/,
    () => {
      const rule = heliumRule();
      // The gas grows to thrice its volume at 20 kPa, so that no place has the areas between.
      const at = (pressure: number) => {
        const state = rule.at(pressure);
        return pressure < 2e4 ? { ...state, density: state.density / 3 } : state;
      };
      return expandAlong({ ...rule, at }).atAreaRatio(5, 'supersonic');
    },
  ],
  [
    'equilibrium-not-found',
    /was not found in/,
    () => {
      const monoxide = species.filter(({ name }) => name === 'CO');
      const work = workFor({ elements: { C: 20, O: 30 }, enthalpy: 0, density: null }, monoxide);
      equilibrate(work, 1e6, { kind: 'temperature', temperature: 2000 });
    },
  ],
];

describe('what cannot be done is said by name, value and remedy', () => {
  test.each(cases)('%s %s', (code, words, provoke) => {
    let met: unknown = null;
    try {
      provoke();
    } catch (error) {
      met = error;
    }
    expect(met).toBeInstanceOf(ProblemError);
    const { problem } = met as ProblemError;
    expect(problem.code, problem.what).toBe(code);
    expect(`${problem.what} ${problem.mend}`).toMatch(words);
    expect(problem.mend).toMatch(/^[A-Z].{8,}\.$/s);
    expect(problem.what).not.toMatch(/undefined|\[object/);
  });
});

import { describe, expect, it } from 'vitest';
import { engineStates } from '../../../src/answer/asked/engineStates.ts';
import { withPoint } from '../../../src/answer/asked/withPoint.ts';
import { gatherMaterials } from '../../../src/answer/materials.ts';
import type { EngineSolution } from '../../../src/answer/solution.ts';
import type { Outcome } from '../../../src/numerics/problem.ts';
import { shelf, studyOf } from '../solveText.ts';

const study = await studyOf(`
a:
  propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }
  chamber: { pressure: 100 bar, efficiency: 96 % }
  size: { thrust: 800 kN, at: vacuum }
  nozzle: { kind: cone, areaRatio: 10 }
b:
  like: a
  size: { same: thrust, as: a, at: vacuum }
  nozzle: { kind: cone, areaRatio: 20 }
`);
const materials = await gatherMaterials(study.engines, shelf);
const plain = { inputs: [], throttle: null };

function found(outcome: Outcome<EngineSolution>): EngineSolution {
  if (!outcome.ok) throw new Error(outcome.problem.what);
  return outcome.value;
}

describe('engines in asked states', () => {
  it('are solved once for one state, whichever study object holds them', () => {
    const states = engineStates(materials);
    const once = found(states.at(study, 'a', plain));
    expect(found(states.at({ ...study }, 'a', plain))).toBe(once);
    expect(found(states.at(study, 'a', { ...plain, throttle: 1 }))).toBe(once);
  });

  it('share gas and nozzle where only efficiency or size moves', () => {
    const states = engineStates(materials);
    const before = found(states.at(study, 'a', plain));
    const moved = withPoint(study, { 'engines.a.chamber.efficiency': 0.98 });
    const after = found(states.at(moved, 'a', plain));
    expect(after.nozzle).toBe(before.nozzle);
    expect(after.characteristicVelocity / before.characteristicVelocity).toBeCloseTo(0.98 / 0.96, 12);
  });

  it('follow the engine that they take their thrust from', () => {
    const states = engineStates(materials);
    const before = found(states.at(study, 'b', plain));
    const moved = withPoint(study, { 'engines.a.size.thrust': 400e3 });
    const after = found(states.at(moved, 'b', plain));
    // Half the thrust has about half the throat; friction on the smaller wall makes the small rest.
    expect(after.throatArea / before.throatArea).toBeCloseTo(0.5, 2);
  });

  it('keep their throat at part throttle, and the chamber pressure falls with it', () => {
    const states = engineStates(materials);
    const full = found(states.at(study, 'a', plain));
    const half = found(states.at(study, 'a', { inputs: [], throttle: 0.5 }));
    expect(half.throatArea).toBeCloseTo(full.throatArea, 12);
    expect(half.expansion.chamber.pressure).toBeCloseTo(50e5, 3);
    // The characteristic velocity of a perfect gas does not hang on the pressure: half the flow, but for the wall's layer.
    expect(half.massFlow / full.massFlow).toBeCloseTo(0.5, 3);
  });

  it.each([0, -0.5, 2])('refuse a throttle of %f', (throttle) => {
    const outcome = engineStates(materials).at(study, 'a', { inputs: [], throttle });
    expect(outcome).toMatchObject({ ok: false, problem: { code: 'throttle-out-of-range' } });
  });

  it('change one input of one engine alone, and say what cannot be', () => {
    const states = engineStates(materials);
    const wide = found(
      states.at(study, 'a', { inputs: [{ input: 'nozzle.areaRatio', value: 30 }], throttle: null }),
    );
    expect(wide.exitArea / wide.throatArea).toBeCloseTo(30, 10);
    expect(found(states.at(study, 'a', plain)).nozzle.spec.areaRatio).toBe(10);
    expect(states.at(study, 'c', plain)).toMatchObject({ problem: { code: 'engine-not-in-study' } });
    expect(states.at(study, 'a', { inputs: [{ input: 'nozzle.kept', value: 0.3 }], throttle: null }).ok).toBe(
      false,
    );
  });
});

import { describe, expect, it } from 'vitest';
import { withPoint } from '../../../src/answer/asked/withPoint.ts';
import { ProblemError } from '../../../src/numerics/problem.ts';
import { studyOf } from '../solveText.ts';

const study = await studyOf(`
a:
  propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 ± 0.05 }
  chamber: { pressure: 100 bar }
  size: { throat: 200 mm }
  nozzle: { kind: cone, areaRatio: 10 }
b:
  like: a
  chamber: { pressure: 80 bar }
`);
const [a, b] = study.engines;

describe('a study at another point', () => {
  it('moves what is inherited in both engines, and nothing else', () => {
    const moved = withPoint(study, { 'engines.a.propellants.ratio': 3.2 });
    for (const engine of moved.engines) {
      expect(engine.propellants).toMatchObject({ mixture: { ratio: { value: 3.2, plusMinus: 0.05 } } });
    }
    expect(moved.engines[0]!.chamber).toBe(a!.chamber);
    expect(a!.propellants).toMatchObject({ mixture: { ratio: { value: 3.5 } } });
  });

  it('moves what one engine states in that engine alone', () => {
    const moved = withPoint(study, { 'engines.b.chamber.pressure': 9e6 });
    expect(moved.engines[0]).toBe(a);
    expect(moved.engines[1]!.chamber.pressure.value).toBe(9e6);
    expect(b!.chamber.pressure.value).toBe(8e6);
  });

  it('leaves everything as it was where the value is the same', () => {
    expect(withPoint(study, { 'engines.a.chamber.pressure': 1e7 }).engines[0]).toBe(a);
    expect(withPoint(study, {})).toBe(study);
  });

  it.each(['engines.a.chamber.presure', 'engines.c.chamber.pressure', '__proto__', 'constructor'])(
    'refuses %s, which no engine states',
    (path) => {
      expect(() => withPoint(study, { [path]: 1 })).toThrow(ProblemError);
    },
  );
});

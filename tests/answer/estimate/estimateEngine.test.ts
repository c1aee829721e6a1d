/**
 * First estimates beside the full answer at the same inputs. The estimate holds what the full model adds to the mean flow,
 * so that it may differ by what that moves: a small part of what the step itself moves.
 */
import { describe, expect, test } from 'vitest';
import { altitudeCurve } from '../../../src/answer/conditions.ts';
import {
  type AnsweredEngine,
  basisOf,
  type EngineBasis,
  type EstimatedEngine,
  estimateEngine,
  recutOf,
} from '../../../src/answer/estimate/index.ts';
import { gatherMaterials } from '../../../src/answer/materials.ts';
import { solveStudyLive } from '../../../src/answer/solve.ts';
import { workingGas } from '../../../src/answer/workingGas.ts';
import type { EngineInput } from '../../../src/study/model.ts';
import { shelf, studyOf } from '../solveText.ts';

interface Known extends AnsweredEngine {
  readonly basis: EngineBasis;
}

async function known(text: string): Promise<ReadonlyMap<string, Known>> {
  const study = await studyOf(text);
  const { answer, solutions } = await solveStudyLive(study, shelf);
  const materials = await gatherMaterials(study.engines, shelf);
  const basis = (input: EngineInput): EngineBasis => basisOf(input, workingGas(input, materials));
  return new Map(
    study.engines.map((input) => {
      const rows = altitudeCurve(solutions.get(input.id)!, 21);
      return [
        input.id,
        {
          answer: answer.engines[input.id]!,
          rows: rows.slice(0, -1),
          vacuum: rows.at(-1)!,
          basis: basis(input),
        },
      ];
    }),
  );
}

function estimated(
  from: ReadonlyMap<string, Known>,
  to: ReadonlyMap<string, Known>,
  id: string,
): EstimatedEngine {
  const [before, after] = [from.get(id)!, to.get(id)!];
  const outcome = estimateEngine(before, before.basis, after.basis, from);
  if (!outcome.ok) throw new Error(outcome.problem.what);
  return outcome.value;
}

const engine = (
  id: string,
  nozzle: string,
  { pressure = 100, ratio = 3.5, size = '{ throat: 200 mm }' } = {},
): string =>
  `${id}: { propellants: { oxidiser: oxygen, fuel: methane, ratio: ${ratio} }, chamber: { pressure: ${pressure} bar }, size: ${size}, nozzle: ${nozzle} }\n`;

const nozzles = {
  ideal: '{ kind: ideal, areaRatio: 25 }',
  cone: '{ kind: cone, areaRatio: 25, halfAngle: 15 deg }',
  bell: '{ kind: bell, areaRatio: 25, length: 80 % }',
  idealBell: '{ kind: idealBell, areaRatio: 25, length: 90 % }',
  adapting: '{ kind: adapting, areaRatio: 60 }',
  plug: '{ kind: plug, form: annular, areaRatio: 40, kept: 30 % }',
  skirt: '{ kind: extendableSkirt, areaRatio: 60, shortAreaRatio: 20, length: 80 % }',
  expansionDeflection:
    '{ kind: expansionDeflection, areaRatio: 40, pintleAreaRatio: 1.2, length: 70 %, throatAngle: 30 deg, lipAngle: 8 deg }',
};
const all = (options: Parameters<typeof engine>[2]): string =>
  Object.entries(nozzles)
    .map(([id, nozzle]) => engine(id, nozzle, options))
    .join('');

/** Largest departure of the specific impulse from the full answer, and of that before from it, over all rows. */
function off(estimate: AnsweredEngine, before: AnsweredEngine, after: AnsweredEngine) {
  const impulses = ({ rows, vacuum }: AnsweredEngine) => [...rows, vacuum].map((row) => row.specificImpulse);
  const [told, was, is] = [impulses(estimate), impulses(before), impulses(after)];
  let worst = 0;
  let moved = 0;
  is.forEach((right, i) => {
    if (right === null || told[i] === null || was[i] === null) return;
    worst = Math.max(worst, Math.abs((told[i] ?? 0) / right - 1));
    moved = Math.max(moved, Math.abs((was[i] ?? 0) / right - 1));
  });
  return { worst, moved };
}

describe('a first estimate', async () => {
  const before = await known(all({}));

  test('of inputs that have not moved is the full answer', () => {
    for (const id of before.keys()) {
      const estimate = estimated(before, before, id);
      const { answer, vacuum, rows } = before.get(id)!;
      // The mean flow is taken off and put back: no more than rounding lies between.
      expect(estimate.vacuum.specificImpulse! / vacuum.specificImpulse!, id).toBeCloseTo(1, 12);
      rows.forEach((row, i) => {
        if (row.thrust !== null) expect(estimate.rows[i]!.thrust! / row.thrust, id).toBeCloseTo(1, 9);
        expect(estimate.rows[i]!.flow.state, id).toBe(row.flow.state);
      });
      expect(estimate.answer.massFlow / answer.massFlow, id).toBeCloseTo(1, 12);
      expect(estimate.answer.contour.totalLength / answer.contour.totalLength, id).toBeCloseTo(1, 9);
      expect(estimate.isShaped).toBe(true);
    }
  });

  test('has every row when asked, whatever number of them it holds', () => {
    const plug = before.get('plug')!;
    const whole = estimated(before, before, 'plug');
    const outcome = estimateEngine(plug, plug.basis, plug.basis, before, 5);
    if (!outcome.ok) throw new Error(outcome.problem.what);
    expect(outcome.value.rows).toEqual(whole.rows.filter((_, i) => i % 5 === 0));
    expect(outcome.value.rowAt(7).row).toEqual(whole.rows[7]);
    expect(outcome.value.rowAt(7).like).toBe(7);
  });

  test('of another chamber pressure comes within a tenth of what the step moves', async () => {
    const after = await known(all({ pressure: 105 }));
    for (const id of before.keys()) {
      const { worst, moved } = off(estimated(before, after, id), before.get(id)!, after.get(id)!);
      expect(moved, id).toBeGreaterThan(2e-3);
      expect(worst, id).toBeLessThan(0.1 * moved);
    }
  });

  test('of another mixture ratio comes within half a hundredth, flow off the wall and on a plug included', async () => {
    const after = await known(all({ ratio: 3.3 }));
    for (const id of before.keys()) {
      // Held: slow chemistry, the angle of a lip, the flow on a plug; they move with the gas by a few thousandths.
      expect(off(estimated(before, after, id), before.get(id)!, after.get(id)!).worst, id).toBeLessThan(5e-3);
    }
  });

  test('of a bell’s area ratio has its shape and its wall', async () => {
    const after = await known(engine('bell', '{ kind: bell, areaRatio: 27, length: 80 % }'));
    const estimate = estimated(before, after, 'bell');
    const right = after.get('bell')!;
    expect(off(estimate, before.get('bell')!, right).worst).toBeLessThan(2e-4);
    expect(estimate.answer.contour.totalLength).toBeCloseTo(right.answer.contour.totalLength, 9);
    expect(estimate.answer.exit.diameter).toBeCloseTo(right.answer.exit.diameter, 9);
    // The pressure at the lip over the mean there is held from the bell before.
    const lip = (of: AnsweredEngine): number => of.answer.wall.at(-1)!.pressure;
    expect(lip(estimate) / lip(right)).toBeCloseTo(1, 2);
  });

  test('of a plug’s area ratio keeps the shape before, and says so', async () => {
    const after = await known(engine('plug', '{ kind: plug, form: annular, areaRatio: 42, kept: 30 % }'));
    const estimate = estimated(before, after, 'plug');
    expect(estimate.isShaped).toBe(false);
    expect(estimate.answer.contour).toBe(before.get('plug')!.answer.contour);
    expect(off(estimate, before.get('plug')!, after.get('plug')!).worst).toBeLessThan(3e-3);
  });

  test('of an engine sized by its thrust has that thrust', async () => {
    const size = '{ thrust: 800 kN, at: sea level }';
    const [from, to] = [
      await known(engine('bell', nozzles.bell, { size })),
      await known(engine('bell', nozzles.bell, { size, pressure: 90 })),
    ];
    const estimate = estimated(from, to, 'bell');
    expect(estimate.answer.seaLevel.thrust! / 800e3).toBeCloseTo(1, 9);
    expect(estimate.answer.throat.diameter / to.get('bell')!.answer.throat.diameter).toBeCloseTo(1, 3);
  });

  /** A plug cut elsewhere, or with another Mach number at its lip. */
  async function recut(nozzle: string) {
    const after = await known(engine('plug', nozzle));
    const [from, to] = [before.get('plug')!, after.get('plug')!];
    const { input } = from.basis;
    const gas = workingGas(input, await gatherMaterials([input], shelf));
    const table = recutOf(input, to.basis.input, gas, from.answer.contour.throatRadius);
    const outcome = estimateEngine(from, from.basis, { ...to.basis, recut: table }, before);
    if (!outcome.ok) throw new Error(outcome.problem.what);
    return { estimate: outcome.value, from, to };
  }

  test.each([
    ['{ kind: plug, form: annular, areaRatio: 40, kept: 40 % }'],
    ['{ kind: plug, form: annular, areaRatio: 40, kept: 20 % }'],
    ['{ kind: plug, form: annular, areaRatio: 40, kept: 30 %, innerMach: 2.6 }'],
  ])('of a plug cut elsewhere is near, and has its shape: %s', async (nozzle) => {
    const { estimate, from, to } = await recut(nozzle);
    const { worst, moved } = off(estimate, from, to);
    expect(moved).toBeGreaterThan(3e-3);
    // Marched at ten pressures, straight between them.
    expect(worst).toBeLessThan(6e-4);
    expect(estimate.isShaped).toBe(true);
    const [shape, right] = [estimate.answer.contour.plug!, to.answer.contour.plug!];
    expect(shape.keptLength / right.keptLength).toBeCloseTo(1, 6);
    expect(shape.baseArea / right.baseArea).toBeCloseTo(1, 6);
    // The base feels what the models of its wake give for the new cut.
    const base = ({ vacuum }: AnsweredEngine): number => vacuum.plug!.base!.pressure;
    expect(base(estimate) / base(to)).toBeCloseTo(1, 3);
  });

  test('is refused where only the full answer can tell', async () => {
    const nozzle = '{ kind: idealBell, areaRatio: 25, length: 80 % }';
    const other = await known(engine('idealBell', nozzle));
    const bell = before.get('idealBell')!;
    const outcome = estimateEngine(bell, bell.basis, other.get('idealBell')!.basis, before);
    expect(outcome.ok ? null : outcome.problem.code).toBe('no-first-estimate');
  });
});

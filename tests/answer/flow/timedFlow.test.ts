/** Start, stop and switch of engines as a study states them: coarse and short, perfect gas. */

import { expect, test, vi } from 'vitest';
import {
  type FlowField,
  flowPlaceAt,
  type TimedChoices,
  timedFields,
} from '../../../src/answer/flow/index.ts';
import type { EngineSolution } from '../../../src/answer/solution.ts';
import { solveStudyLive } from '../../../src/answer/solve.ts';
import { ProblemError } from '../../../src/numerics/problem.ts';
import { shelf, studyOf } from '../solveText.ts';

// A field takes seconds; on a busy machine many.
vi.setConfig({ testTimeout: 300_000 });

const GAS =
  'propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3300 K }, chamber: { pressure: 60 bar }, size: { throat: 60 mm }';

async function solved(nozzle: string): Promise<EngineSolution> {
  const study = await studyOf(`one: { name: One, ${GAS}, nozzle: ${nozzle} }`);
  const { solutions } = await solveStudyLive(study, shelf);
  return solutions.get('one')!;
}

const choices: TimedChoices = {
  event: { is: 'start' },
  ramp: 3e-4,
  until: 1.5e-3,
  frames: 3,
  fineness: 'coarse',
  bits: 32,
};
const run = (
  solution: EngineSolution,
  altitude: number | 'vacuum',
  over: Partial<TimedChoices>,
): readonly FlowField[] => [...timedFields(solution, flowPlaceAt(altitude), { ...choices, ...over })];

function requireWhole(fields: readonly FlowField[]): void {
  for (const { blocks, moment } of fields) {
    expect(moment!.ended).toBeUndefined();
    for (const { pressure, density, temperature } of blocks)
      for (const of of [pressure, density, temperature])
        expect(of.every((value) => value > 0 && Number.isFinite(value))).toBe(true);
  }
}

test('a bell starts at the pad: from nothing, the chamber fills, the thrust grows, and exhaust reaches the lip', async () => {
  const fields = run(await solved('{ kind: bell, areaRatio: 8, length: 80 % }'), 0, {});
  requireWhole(fields);
  const [first, ...rest] = fields.map(({ moment }) => moment!);
  expect(first!.time).toBe(0);
  expect(Math.abs(first!.thrust)).toBeLessThan(1);
  expect(first!.fed).toBeLessThan(1e-3);
  expect(rest.map(({ time }) => time)).toEqual([5e-4, 1e-3, 1.5e-3].map((time) => expect.closeTo(time, 9)));
  for (let k = 1; k < rest.length; k++) expect(rest[k]!.chamber).toBeGreaterThan(rest[k - 1]!.chamber);
  expect(rest.at(-1)!.thrust).toBeGreaterThan(rest[0]!.thrust);
  const { share, ni, nj } = fields.at(-1)!.blocks[0]!;
  expect(share[(nj - 1) * ni - 1]).toBeGreaterThan(0.9);
});

test('a bell stops in vacuum: the chamber empties, and what leaves is as fast as its isentrope makes it', async () => {
  const fields = run(await solved('{ kind: bell, areaRatio: 20, length: 80 % }'), 'vacuum', {
    event: { is: 'stop' },
    ramp: 1e-4,
  });
  requireWhole(fields);
  const moments = fields.map(({ moment }) => moment!);
  expect(moments[0]!.chamber).toBeCloseTo(1, 3);
  expect(moments.at(-1)!.asked).toBe(0);
  for (let k = 1; k < moments.length; k++) expect(moments[k]!.chamber).toBeLessThan(moments[k - 1]!.chamber);
  // What leaves goes as fast as the gas is warm: it came from a chamber between the first and this pressure, by the isentrope.
  const { chamber, massFlow, thrust } = moments.at(-1)!;
  expect(chamber).toBeLessThan(0.7);
  const speed = thrust / massFlow / (moments[0]!.thrust / moments[0]!.massFlow);
  expect(speed).toBeLessThan(1.01);
  expect(speed).toBeGreaterThan(0.98 * Math.sqrt(chamber ** (0.2 / 1.2)));
});

test('a plug stops in thin air, in strips that take steps of their own', async () => {
  const plug = await solved('{ kind: plug, form: annular, areaRatio: 12, kept: 30 % }');
  const fields = run(plug, 30_000, { event: { is: 'stop' }, ramp: 1e-4, until: 2e-4, frames: 1 });
  requireWhole(fields);
  const [first, last] = fields.map(({ moment }) => moment!);
  expect(last!.chamber).toBeLessThan(first!.chamber);
  expect(last!.thrust).toBeLessThan(first!.thrust);
});

test('the gas of an expansion–deflection nozzle begins to come in, with the wake behind its pintle', async () => {
  const fields = run(await solved('{ kind: expansionDeflection, areaRatio: 20 }'), 'vacuum', {
    ramp: 1e-4,
    until: 6e-4,
    frames: 2,
  });
  requireWhole(fields);
  const [, middle, last] = fields.map(({ moment }) => moment!);
  expect(last!.chamber).toBeGreaterThan(middle!.chamber);
  expect(last!.thrust).toBeGreaterThan(middle!.thrust);
});

test('the gas of a dual bell takes the second part of its wall', async () => {
  const dual = await solved('{ kind: dualBell, areaRatio: 40, baseAreaRatio: 15 }');
  const fields = run(dual, 8_000, { event: { is: 'switch' }, until: 6e-4, frames: 2 });
  requireWhole(fields);
  // Beside the lip: still air to begin with, exhaust in the end.
  const atLip = ({ blocks }: FlowField): number => {
    const { share, ni, nj } = blocks[0]!;
    return share[nj * ni - 1]!;
  };
  expect(atLip(fields[0]!)).toBeLessThan(0.5);
  expect(atLip(fields.at(-1)!)).toBeGreaterThan(0.9);
  // So low the gas presses less on the second part than air would: it costs push.
  const last = fields.at(-1)!;
  const [{ pressure, ni, nj }] = last.blocks as [FlowField['blocks'][number]];
  expect(pressure[nj * ni - 1]).toBeLessThan(0.5 * last.ambientPressure);
  expect(last.moment!.thrust).toBeLessThan(fields[0]!.moment!.thrust);
});

test('where a field breaks on its way the last that held is told, and why it ended', async () => {
  const cone = await solved('{ kind: cone, areaRatio: 4, halfAngle: 15 deg }');
  const fields = timedFields(cone, flowPlaceAt(0), choices, function* () {
    yield 5e-4;
    throw new ProblemError({ code: 'field-broke', what: 'No state.', mend: 'None.' });
  });
  expect([...fields].map(({ moment }) => moment!.ended?.what)).toEqual([undefined, undefined, 'No state.']);
});

test('where a thread is lost no moment is told of the field, which may be half stepped', async () => {
  const cone = await solved('{ kind: cone, areaRatio: 4, halfAngle: 15 deg }');
  const fields = timedFields(cone, flowPlaceAt(0), choices, function* () {
    yield 5e-4;
    throw new ProblemError({ code: 'flow-thread-lost', what: 'No answer.', mend: 'None.' });
  });
  expect(() => [...fields]).toThrow('No answer.');
});

import { beforeAll, expect, test } from 'vitest';
import type { Crew } from '../../../src/answer/asked/crew.ts';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { holdMeasured } from '../../../src/answer/measured/holdMeasured.ts';
import { type SolvedStudy, solveStudyLive } from '../../../src/answer/solve.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { readMeasuredTable } from '../../../src/study/measured/readTable.ts';
import type { Study } from '../../../src/study/model.ts';
import { readStudy } from '../../../src/study/read.ts';
import { measuredCsv } from '../../../src/telling/measuredTable.ts';

/** Invented. */
const text = `plumeline: 1
question: Does it fit?
engines:
  bell: { name: Rowan, propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }, chamber: { pressure: 70 bar, efficiency: 98 % }, size: { throat: 200 mm }, nozzle: { kind: cone, areaRatio: 25, halfAngle: 15 deg } }
measured:
  - { id: run, file: run.csv, of: bell, source: report, at: vacuum }
sources:
  report: { title: A run on an invented stand }
`;

let study: Study;
let solved: SolvedStudy;
let crew: Crew;
beforeAll(async () => {
  const outcome = readStudy(text);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  ({ study } = outcome);
  const shelf = openDataShelf();
  solved = await solveStudyLive(study, shelf);
  crew = await localCrew(study, shelf);
});

function held(csv: string) {
  const read = readMeasuredTable(csv, 'run.csv');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return holdMeasured(study, [{ input: study.measured[0]!, table: read.table }], crew);
}

test('each point stands beside the answer’s own number, the residual being measured less computed', async () => {
  const [thrust, impulse] = await held(
    'altitude [km],thrust [kN],± thrust [kN],specificImpulse [s]\n10,400,500,\n20,400,,320\n',
  );
  const row = solved.answer.engines['bell']!.altitudes.find(({ altitude }) => altitude === 10_000)!;
  const [point] = thrust!.points;
  expect(point!.computed! / row.thrust!).toBeCloseTo(1, 9);
  expect(point!.residual).toBeCloseTo(400_000 - row.thrust!, 3);
  expect(point!.agrees).toBe(true);
  expect(impulse!.points).toHaveLength(1);
  const residuals = thrust!.points.map(({ residual }) => residual!);
  expect(thrust!.bias).toBeCloseTo((residuals[0]! + residuals[1]!) / 2, 6);
  expect(thrust!.rms).toBeCloseTo(Math.hypot(...residuals) / Math.SQRT2, 6);
});

test('points stand along an input or the wall as well', async () => {
  const [width] = await held('nozzle.areaRatio,specificImpulse [s]\n25,300\n40,300\n');
  expect(width!.points[0]!.computed).toBeCloseTo(solved.answer.engines['bell']!.vacuum.specificImpulse!, 9);
  expect(width!.points[1]!.computed!).toBeGreaterThan(width!.points[0]!.computed!);
  const [wall] = await held('wall.axial [mm],wall.pressure [bar]\n0,30\n100,8\n');
  expect(wall!.points[1]!.computed!).toBeLessThan(wall!.points[0]!.computed!);
});

test('what is no quantity, or of another kind, is refused with the name of the file', async () => {
  await expect(held('altitude [km],trust [kN]\n1,2\n')).rejects.toThrow(/run\.csv.*trust/);
  await expect(held('altitude [km],thrust [bar]\n1,2\n')).rejects.toThrow(/another kind/);
  await expect(held('altitude [kg],thrust [kN]\n1,2\n')).rejects.toThrow(/another kind/);
  await expect(held('colour,thrust [kN]\n1,2\n')).rejects.toThrow(/no place/);
});

test('the table has a line a point and the caution', async () => {
  const csv = measuredCsv(await held('altitude [km],thrust [kN]\n10,400\n20,410\n'));
  const lines = csv.trim().split('\r\n');
  expect(lines).toHaveLength(4);
  expect(lines[1]).toContain('not for building');
  expect(lines[2]).toMatch(/^run,Rowan,thrust,altitude,10000,400000,/);
});

import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { runMain } from './runMain.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plumeline-measured-'));
  await writeFile(
    join(folder, 'study.yaml'),
    `plumeline: 1
question: Does it fit?
engines:
  cold: { name: Rowan, propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 300 K }, chamber: { pressure: 70 bar, efficiency: 100 % }, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: 10 }, losses: none }
measured:
  - { id: run, title: Stand runs, file: run.csv, of: cold, source: report }
sources:
  report: { title: A run on an invented stand }
`,
  );
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const points = (text: string): Promise<void> => writeFile(join(folder, 'run.csv'), text);

test('a missing file, and a slip in one, are told with their place', async () => {
  const missing = await runMain(['measured', folder]);
  expect(missing.status).toBe(2);
  expect(missing.err).toContain('run.csv');
  await points('altitude [km],thrust [kN]\n10,many\n');
  const slip = await runMain(['measured', folder]);
  expect(slip.status).toBe(2);
  expect(slip.err).toContain('run.csv:2:4');
});

test('points are printed with residuals, as JSON and as CSV, and drawn over their curve', async () => {
  await points('altitude [km],thrust [kN],± thrust [kN]\n0,80,2\n10,90,2\n60,95,2\n');
  const plain = await runMain(['measured', folder]);
  expect(plain.status).toBe(0);
  expect(plain.out).toContain('80.00 kN ± 2.0 kN');
  const told = JSON.parse((await runMain(['measured', folder, '--json'])).out) as {
    series: { points: { value: number; computed: number; residual: number }[] }[];
  };
  for (const { value, computed, residual } of told.series[0]!.points)
    expect(residual).toBeCloseTo(value - computed, 6);
  expect((await runMain(['measured', folder, '--csv'])).out).toContain(
    'run,Rowan,thrust,altitude,10000,90000,2000',
  );
  const file = join(folder, 'thrust.svg');
  await runMain(['draw', folder, '--figure', 'thrust', '--out', file]);
  const svg = await readFile(file, 'utf8');
  expect(svg).toContain('class="measured"');
  expect(svg).toContain('Hollow squares: measured, Stand runs (report)');
  // The axis ends at 40 km.
  expect(svg.replace(/<[^>]*>/g, ' ')).toMatch(/1 measured point lies\s+outside the axis\./);
  // A curve of another quantity has none.
  await runMain(['draw', folder, '--figure', 'specific-impulse', '--out', file]);
  expect(await readFile(file, 'utf8')).not.toContain('class="measured"');
});

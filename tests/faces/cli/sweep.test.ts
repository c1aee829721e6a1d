import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { CAUTION } from '../../../src/answer/caution.ts';
import type { Sweep, SweepMap } from '../../../src/answer/sweeps/index.ts';
import { visibleLength } from '../../../src/faces/cli/text/wrap.ts';
import { runMain } from './runMain.ts';

const place = mkdtempSync(join(tmpdir(), 'plumeline-sweep-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

/** Perfect gas through an ideal nozzle. */
function studyFolder(name: string, rest = ''): string {
  const folder = join(place, name);
  mkdirSync(folder);
  writeFileSync(
    join(folder, 'study.yaml'),
    `plumeline: 1
question: Which?
engines:
  cold: { propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 300 K }, chamber: { pressure: 70 bar, efficiency: 100 % }, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: 10 }, losses: none }
${rest}`,
  );
  return folder;
}

const own = `sweeps:
  - { id: wide, title: What width gives, of: cold.specificImpulse(vacuum), over: nozzle.areaRatio, from: 2, to: 40 }
maps:
  - { id: both, of: cold.specificImpulse(vacuum), across: { over: nozzle.areaRatio, from: 2, to: 40 }, up: { over: propellants.gamma, from: 1.2, to: 1.6 }, points: 5 }
`;
const plain = (text: string): string => text.replace(/\s+/g, ' ');

describe('plumeline sweep', () => {
  test('the larger end first: the ends are turned, and a line says so', async () => {
    const asked = ['--of', 'cold.massFlow', '--over', 'nozzle.areaRatio', '--from', '40', '--to', '4'];
    const ran = await runMain(['sweep', studyFolder('turned'), ...asked, '--json']);
    expect(ran.status).toBe(0);
    expect(ran.err).toContain('--from 40 lies above --to 4; taken from 4 to 40.');
    const { sweeps } = JSON.parse(ran.out) as { sweeps: readonly Sweep[] };
    const xs = sweeps[0]!.curves[0]!.points.map(({ x }) => x);
    expect([xs[0], xs.at(-1)]).toEqual([4, 40]);
  });

  test('a table, what is found, what is held, the caution last, words within the width', async () => {
    const ran = await runMain([
      'sweep',
      studyFolder('plain'),
      '--of',
      'cold.specificImpulse',
      '--over',
      'altitude',
      '--to',
      '20 km',
    ]);
    expect(ran.status).toBe(0);
    expect(plain(ran.out)).toContain('Specific impulse of cold rises from');
    expect(plain(ran.out)).toContain('Held. The engines stay as they are; only their surroundings change.');
    expect(plain(ran.out).endsWith(plain(CAUTION))).toBe(true);
    for (const line of ran.out.split('\n')) expect(visibleLength(line)).toBeLessThanOrEqual(100);
  });

  test('the sweeps of the study, by default all of them, or by id', async () => {
    const folder = studyFolder('own', own);
    const all = await runMain(['sweep', folder, '--json']);
    const { sweeps, caution } = JSON.parse(all.out) as { sweeps: readonly Sweep[]; caution: string };
    expect(caution).toBe(CAUTION);
    expect(sweeps).toHaveLength(1);
    const [curve] = sweeps[0]!.curves;
    expect(curve!.course).toBe('rises');
    const text = await runMain(['sweep', folder, '--id', 'wide']);
    expect(text.out.startsWith('What width gives')).toBe(true);
    const wrong = await runMain(['sweep', folder, '--id', 'wid']);
    expect(wrong.status).toBe(2);
    expect(plain(wrong.err)).toContain('Those of this study: wide.');
  });

  test('comma-separated values with caution and reasons', async () => {
    const { out, status } = await runMain(['sweep', studyFolder('csv', own), '--csv']);
    const [head, caution, held] = out.split(/\r?\n/);
    expect(status).toBe(0);
    expect(head).toMatch(/^what,of,over,input \(SI\)/);
    expect(caution).toContain('For explanation and comparison only');
    expect(held).toContain('Throat held at 100 mm');
  });

  test.each([
    [['--of', 'cold.massFlow'], '--over is missing'],
    [['--of', 'cold.massFlow', '--over', 'areaRato'], 'Did you mean nozzle.areaRatio?'],
    [['--of', 'cold.massFlow', '--over', 'chamber.pressure', '--from', '5'], '--from:'],
    [['--of', 'cold.masFlow', '--over', 'chamber.pressure'], 'massFlow'],
    [['--of', 'cold.massFlow', '--over', 'chamber.pressure', '--engine', 'hot'], 'cold'],
    [['--of', 'cold.massFlow', '--over', 'chamber.pressure', '--points', '1'], 'from 5 to 201'],
    [['--over', 'chamber.pressure'], 'follows nothing'],
    [[], 'The study has no sweeps'],
  ])('bad input: exit 2 and how to mend it: %j', async (flags, words) => {
    const ran = await runMain(['sweep', studyFolder(`bad-${words.replace(/\W/g, '')}`), ...flags]);
    expect(ran.status).toBe(2);
    expect(plain(ran.err)).toContain(words);
    expect(ran.out).toBe('');
  });

  test('nothing has a value anywhere: exit 1, with the reason', async () => {
    const of = 'cold.massFlow / (cold.massFlow - cold.massFlow)';
    const ran = await runMain(['sweep', studyFolder('none'), '--of', of, '--over', 'chamber.pressure']);
    expect(ran.status).toBe(1);
    expect(plain(ran.out)).toContain('has no value from chamber pressure 10.0 bar to 300 bar');
  });
});

describe('plumeline map', () => {
  test('a grid of numbers, its best place, what is held', async () => {
    const ran = await runMain(['map', studyFolder('map', own)]);
    expect(ran.status).toBe(0);
    expect(plain(ran.out)).toContain('Specific impulse of cold in vacuum is highest at area ratio 40');
    expect(plain(ran.out)).toContain('on the edge of the map');
    expect(plain(ran.out).endsWith(plain(CAUTION))).toBe(true);
  });

  test('by options, as JSON', async () => {
    const { out } = await runMain([
      'map',
      studyFolder('mapjson'),
      '--of',
      'cold.massFlow',
      '--across',
      'chamber.pressure',
      '--across-from',
      '10 bar',
      '--across-to',
      '100 bar',
      '--up',
      'propellants.temperature',
      '--up-from',
      '200 K',
      '--up-to',
      '800 K',
      '--points',
      '5',
      '--json',
    ]);
    const { maps } = JSON.parse(out) as { maps: readonly SweepMap[] };
    const [map] = maps;
    // ṁ = p₀ A_t/c*, c* ∝ √T: four times the temperature halves it.
    const at = (column: number, row: number): number => map!.values[row * 5 + column]!;
    expect(at(0, 0) / at(0, 4)).toBeCloseTo(2, 9);
    expect(at(4, 2) / at(0, 2)).toBeCloseTo(10, 9);
  });

  test('without what to follow: exit 2', async () => {
    const ran = await runMain(['map', studyFolder('mapbad'), '--across', 'chamber.pressure']);
    expect(ran.status).toBe(2);
    expect(ran.err).toContain('--of is missing');
  });
});

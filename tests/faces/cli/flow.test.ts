import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { CAUTION } from '../../../src/answer/caution.ts';
import type { FlowField } from '../../../src/answer/flow/index.ts';
import { EXIT } from '../../../src/faces/cli/exitStatus.ts';
import { flowChoices } from '../../../src/faces/cli/flowFlags.ts';
import { flowFolder, flowOfText, keepFlow, readFlow } from '../../../src/faces/disk/flowShelf.ts';
import { type Ran, runMain } from './runMain.ts';

const place = mkdtempSync(join(tmpdir(), 'plumeline-flow-'));
const cache = join(place, 'cache');
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(place, { recursive: true, force: true });
});

/** Perfect gas through a cone, at 20 bar: matched at about a tenth of an atmosphere. */
const folder = join(place, 'cold');
mkdirSync(folder);
writeFileSync(
  join(folder, 'study.yaml'),
  `plumeline: 1
question: Where does its shock stand?
engines:
  cold: { name: Cold, propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 600 K }, chamber: { pressure: 20 bar, efficiency: 100 % }, size: { throat: 100 mm }, nozzle: { kind: cone, areaRatio: 4, halfAngle: 15 deg } }
  none: { like: cold, name: Bound, nozzle: { kind: adapting, areaRatio: 10 } }
`,
);

const MARKED = 987_654;

describe('plumeline flow', () => {
  const asked = ['flow', folder, '--fineness', 'coarse', '--ambient', '0.2 bar'];
  let json: {
    readonly caution: string;
    readonly about: string;
    readonly fields: readonly FlowField[];
  };
  let again: Ran;
  beforeAll(async () => {
    vi.stubEnv('XDG_CACHE_HOME', cache);
    json = JSON.parse((await runMain([...asked, '--json'])).out) as typeof json;
    // Told the second time as it was kept, with a value that no computing gives.
    const folderOfFlows = flowFolder({ XDG_CACHE_HOME: cache });
    const key = readdirSync(folderOfFlows)[0]!.replace('.json', '');
    const kept = await readFlow(folderOfFlows, key);
    await keepFlow(folderOfFlows, key, { ...kept!, steps: MARKED });
    again = await runMain([...asked, '--out', join(place, 'jet.svg')]);
    // A field takes seconds; on a busy machine many.
  }, 300_000);

  test('the disk of an under-expanded jet, near the law, and the thrust that the nozzle’s own model gives', () => {
    const [field] = json.fields;
    expect(json.caution).toBe(CAUTION);
    expect(json.about).toMatch(/^Inviscid, computed\. No turbulence/);
    expect(field!.mainShock).not.toBeNull();
    // Lewis & Carlson 1964 by the mean state at the exit; a cone’s flow is uneven there.
    expect(field!.mainShock!.behind / field!.byLaw.machDisk!).toBeGreaterThan(0.75);
    expect(field!.mainShock!.behind / field!.byLaw.machDisk!).toBeLessThan(1.25);
    const { mean, byModel } = field!.thrustCoefficient;
    expect(Math.abs(mean / byModel! - 1)).toBeLessThan(5e-3);
  });

  test('what is computed is kept: the second time nothing is computed, and the picture says what it is', async () => {
    const folderOfFlows = flowFolder({ XDG_CACHE_HOME: cache });
    const files = readdirSync(folderOfFlows);
    expect(files).toHaveLength(1);
    const kept = await readFlow(folderOfFlows, files[0]!.replace('.json', ''));
    expect(kept!.blocks[0]!.pressure).toBeInstanceOf(Float32Array);
    expect(kept!.thrustCoefficient).toEqual(json.fields[0]!.thrustCoefficient);
    expect(await readFlow(folderOfFlows, 'nothing')).toBeNull();
    expect(() => flowOfText('{"format":"other"}')).toThrow();
    const svg = readFileSync(join(place, 'jet.svg'), 'utf8');
    for (const words of ['inviscid, computed', 'No turbulence', 'not for building'])
      expect(svg).toContain(words);
    expect(again.out).toContain(String(MARKED));
    expect(again.out).toContain('no turbulence');
    expect(again.out.replaceAll(/\s+/g, ' ')).toContain('The air outside is at rest');
    expect(again.out.replaceAll(/\s+/g, ' ')).toContain(CAUTION);
    expect(existsSync(join(place, 'jet.svg'))).toBe(true);
  });

  test('flown through: the air comes from ahead, is kept apart from that at rest, and thrust is hardly another', async () => {
    const flying = [...asked, '--flight-speed', '450 m/s'];
    const [field] = (JSON.parse((await runMain([...flying, '--json'])).out) as typeof json).fields;
    expect(field!.flightSpeed).toBe(450);
    expect(json.fields[0]!.flightSpeed).toBe(0);
    // The gas on the walls is faster than sound: nothing of the wind outside is felt there.
    expect(field!.thrustCoefficient.mean / json.fields[0]!.thrustCoefficient.mean).toBeCloseTo(1, 2);
    const told = await runMain([...flying, '--out', join(place, 'flying.svg')]);
    expect(told.out.replaceAll(/\s+/g, ' ')).toContain('The air comes from ahead at 450 m/s');
    expect(told.out).not.toContain('at rest');
    const svg = readFileSync(join(place, 'flying.svg'), 'utf8');
    expect(svg.replaceAll(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' ')).toContain('comes from ahead at 450 m/s');
    for (const wrong of ['fast', '-3 m/s', '3 km/s', '20 bar'])
      expect((await runMain([...asked, '--flight-speed', wrong])).err).toContain('--flight-speed');
  });

  test('what cannot be: an engine without a wall, a word that is none, several places in one picture', async () => {
    const bound = await runMain(['flow', folder, '--engine', 'none', '--ambient', '1 bar']);
    expect(bound.status).toBe(2);
    expect(bound.err).toContain('no mesh follows its walls');
    expect((await runMain([...asked, '--show', 'colour'])).err).toContain(
      'Give pressure, mach, temperature, density, speed or density gradient',
    );
    expect((await runMain([...asked, '--engine', 'other'])).err).toContain('Name one of cold, none');
    const two = await runMain([
      'flow',
      folder,
      '--fineness',
      'coarse',
      '--ambient',
      '0.2 bar, 0.2 bar',
      '--out',
      join(place, 'x.svg'),
    ]);
    expect(two.err).toContain('one picture for several places');
    expect(existsSync(join(place, 'x.svg'))).toBe(false);
  });

  test('where one of several places has no field the others are told, and which is not', async () => {
    const coarse = ['flow', folder, '--fineness', 'coarse', '--ambient'];
    const two = await runMain([...coarse, '19.9 bar, 0.2 bar', '--json']);
    expect(two.status).toBe(EXIT.incomplete);
    expect(two.err.replaceAll(/\s+/g, ' ')).toContain(
      'In air of 19.9 bar there is no field: The whole flow is not computed where the throat does not choke.',
    );
    const { fields } = JSON.parse(two.out) as typeof json;
    expect(fields.map(({ ambientPressure }) => ambientPressure)).toEqual([20_000]);
    const none = await runMain([...coarse, '19.9 bar']);
    expect(none.status).toBe(2);
    expect(none.err).toContain('does not choke');
  }, 300_000);

  test.each([
    [['--out', 'x.gif'], 'does not end in'],
    [['--out', 'x.png', '--png', 'wide'], 'is no width'],
    [['--out', 'x.png', '--png', '1e9'], 'is no width'],
    [['--out', 'x.svg', '--png', '800'], 'beside a file that is no PNG'],
    [['--png', '800'], 'beside a file that is no PNG'],
    [['--threads', '0'], 'is no number of threads'],
    [['--threads', 'all'], 'is no number of threads'],
    [['--threads', '2', '--floats', 'reference'], 'in one thread'],
  ])('before anything is computed %j is refused', async (flags, why) => {
    // No study is read either: there is none.
    const { status, err } = await runMain(['flow', join(place, 'nowhere'), '--ambient', '1 bar', ...flags]);
    expect(status).toBe(2);
    expect(err).toContain(why);
  });

  test('through time: a throttle step told moment by moment, drawn into a folder', async () => {
    const to = join(place, 'moments');
    const time = ['--event', 'throttle 60 %', '--ramp', '0.2 ms', '--until', '0.6 ms', '--frames', '2'];
    const { out } = await runMain([...asked, ...time, '--out', to]);
    expect(out).toMatch(/0\.00 ms\s+100 %\s+100 %/);
    // The chamber is full enough to take what is put in.
    expect(out).toMatch(/0\.60 ms\s+60 %\s+(59|60|61) %\s+\d\d\.\d %/);
    expect(out).toContain('computed through time');
    expect(readdirSync(to)).toHaveLength(3);
    const svg = readFileSync(join(to, 'flow-cold-03.svg'), 'utf8');
    expect(svg).toContain('Cold throttles: after 0.60');
    // The laws are those of the full engine: told of it at rest, not of a moment.
    expect(readFileSync(join(place, 'jet.svg'), 'utf8')).toMatch(/by law|published law/);
    expect(svg).not.toMatch(/by law|published law/);
  }, 300_000);

  test.each([
    [['--event', 'explode'], 'there is no “explode”'],
    [['--event', 'start', '--altitude', '0 km, 5 km'], 'goes with one place'],
    [['--event', 'throttle 2 %'], 'outside 5 % to 100 %'],
    [['--event', 'start', '--until', '3 s'], 'outside 0 s to'],
    [['--event', 'start', '--frames', '0'], 'no number of frames'],
    [['--ramp', '1 ms'], 'go with --event'],
    [['--event', 'switch'], 'has no second part of a bell'],
  ])('what no event can be: %j', async (flags, why) => {
    const { status, err } = await runMain([...asked, ...flags]);
    expect(status).toBe(2);
    expect(err.replaceAll(/\s+/g, ' ')).toContain(why);
  });

  test('an event is shown at the pad unless another place is asked for', () => {
    expect(flowChoices({ event: 'start' }).places).toMatchObject([{ altitude: 0 }]);
    expect(flowChoices({ event: 'start', ambient: '0.2 bar' }).places).toMatchObject([
      { ambientPressure: 20_000 },
    ]);
    expect(flowChoices({}).places).toHaveLength(6);
  });

  test('a picture carries its fonts where it is asked to', async () => {
    const path = join(place, 'fonts.svg');
    await runMain([...asked, '--out', path, '--fonts']);
    expect(readFileSync(path, 'utf8')).toContain('@font-face');
    expect(readFileSync(join(place, 'jet.svg'), 'utf8')).not.toContain('@font-face');
  });

  test('a name in capital letters that ends as a PNG is one', async () => {
    const path = join(place, 'JET.PNG');
    await runMain([...asked, '--out', path, '--png', '640']);
    const bytes = readFileSync(path);
    expect(bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
    expect(bytes.readUInt32BE(16)).toBe(640);
  });
});

import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { CLIMB } from '../../../src/answer/flow/index.ts';
import { flowFolder } from '../../../src/faces/disk/flowShelf.ts';
import { enginesMark, type FlowList, type ListedFlow, takeIn } from '../../../src/faces/flows/flowList.ts';
import { flowOfText } from '../../../src/faces/flows/flowText.ts';
import { type RunningServer, serveStudy } from '../../../src/faces/server/serveStudy.ts';

/** Perfect gas through a short cone: a field takes about a second. */
const ENGINES =
  'cold: { name: Cold, propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 600 K }, chamber: { pressure: 20 bar, efficiency: 100 % }, size: { throat: 100 mm }, nozzle: { kind: cone, areaRatio: 4, halfAngle: 15 deg } }\n  none: { like: cold, name: Bound, nozzle: { kind: adapting, areaRatio: 10 } }';

const place = mkdtempSync(join(tmpdir(), 'plumeline-flows-'));
const folder = join(place, 'study');
let server: RunningServer;
let token: string;
beforeAll(async () => {
  vi.stubEnv('XDG_CACHE_HOME', join(place, 'cache'));
  mkdirSync(folder);
  writeFileSync(
    join(folder, 'study.yaml'),
    `plumeline: 1\nquestion: Where does its shock stand?\nengines:\n  ${ENGINES}\n`,
  );
  server = await serveStudy({ folder, port: 0 });
  const page = await (await fetch(server.url)).text();
  token = /name="plumeline-token" content="([0-9a-f]{64})"/.exec(page)?.[1] ?? '';
});
afterAll(async () => {
  await server.close();
  vi.unstubAllEnvs();
  rmSync(place, { recursive: true, force: true });
});

const list = async (): Promise<FlowList> =>
  (await (await fetch(`${server.url}api/flows`)).json()) as FlowList;
const order = (what: unknown, headers: Record<string, string> = {}): Promise<Response> =>
  fetch(`${server.url}api/flows`, {
    method: 'PUT',
    headers: { 'Content-Type': 'application/json', 'X-Plumeline-Token': token, ...headers },
    body: JSON.stringify({ text: JSON.stringify(what), baseHash: '' }),
  });

describe('whole flows over the local server', () => {
  test('reading starts nothing', async () => {
    const { mark, fields, work } = await list();
    expect(fields).toEqual([]);
    expect(work).toEqual({ is: 'none' });
    expect(mark).toMatch(/^[0-9a-f]{16}$/);
    expect(existsSync(flowFolder())).toBe(false);
  });

  test('computing asks for the token, and for what can be asked', async () => {
    const wanted = { engines: ['cold'], altitude: 0 };
    expect((await order(wanted, { 'X-Plumeline-Token': 'other' })).status).toBe(403);
    expect((await order(wanted, { Origin: 'http://evil.example' })).status).toBe(403);
    for (const bad of [
      null,
      'go',
      {},
      { engines: 'cold', altitude: 0 },
      { ...wanted, altitude: -1 },
      { ...wanted, only: 'there' },
      { look: 'up' },
    ])
      expect((await order(bad)).status).toBe(400);
    expect((await list()).work).toEqual({ is: 'none' });
  });

  test.each(['', 'nothing', '../../etc/passwd', '0'.repeat(32), `${'0'.repeat(31)}/`])(
    'there are no cells under the name %j',
    async (key) => {
      const reply = await fetch(`${server.url}api/flows/cells?key=${encodeURIComponent(key)}`);
      expect(reply.status).toBe(404);
    },
  );

  test('what is asked for is computed, the place looked at made finer first, and its cells are told', async () => {
    expect((await order({ engines: ['cold', 'none'], altitude: 0 })).status).toBe(200);
    await expect
      .poll(async () => (await list()).fields.length, { timeout: 200_000, interval: 300 })
      .toBeGreaterThan(1);
    await order('stop');
    const now = await list();
    expect(now.work).toEqual({ is: 'none' });
    expect(now.without['none']!.code).toBe('flow-no-mesh');
    const pad = now.fields.find(({ altitude }) => altitude === 0)!;
    expect(pad.fineness).toBe('normal');
    expect(pad.ambientPressure).toBe(CLIMB[0]!.ambientPressure);
    const reply = await fetch(`${server.url}api/flows/cells?key=${pad.key}`);
    const field = flowOfText(await reply.text());
    expect(field.engine).toBe('cold');
    expect(field.mainShock).toEqual(pad.mainShock);
    expect(field.blocks[0]!.temperature).toBeInstanceOf(Float32Array);
    expect(readdirSync(flowFolder()).some((name) => name.endsWith('.list.json'))).toBe(true);
  }, 300_000);

  test('what is kept is listed before anything is computed again; other inputs have none of it', async () => {
    const before = await list();
    await server.close();
    server = await serveStudy({ folder, port: 0 });
    const after = await list();
    expect(after.fields.map(({ key }) => key)).toEqual(before.fields.map(({ key }) => key));
    expect(after.mark).toBe(before.mark);
    writeFileSync(
      join(folder, 'study.yaml'),
      `plumeline: 1\nquestion: And so?\nengines:\n  ${ENGINES.replace('20 bar', '21 bar')}\n`,
    );
    const other = await list();
    expect(other.mark).not.toBe(before.mark);
    expect(other.fields).toEqual([]);
    writeFileSync(join(folder, 'study.yaml'), 'no study: [');
    expect(await list()).toEqual({ mark: '', fields: [], work: { is: 'none' }, without: {} });
  });
});

test('a coarse field takes no finer one away', () => {
  const fields = new Map<string, ListedFlow>();
  const at = (fineness: 'coarse' | 'normal', engine = 'cold') =>
    ({ engine, ambientPressure: 1e5, fineness }) as ListedFlow;
  for (const field of [at('coarse'), at('normal'), at('coarse'), at('coarse', 'other')])
    takeIn(fields, field);
  expect([...fields.values()].map(({ fineness }) => fineness)).toEqual(['normal', 'coarse']);
});

test('a mark tells inputs apart', () => {
  const marks = [[], [{ id: 'a' }], [{ id: 'b' }], [{ id: 'a' }, { id: 'b' }]].map((engines) =>
    enginesMark(engines as never),
  );
  expect(new Set(marks).size).toBe(4);
});

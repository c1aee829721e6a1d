/** What the server tells of the folder above the study: studies there, and nothing else. */

import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, serveStudy } from '../../../src/faces/server/serveStudy.ts';

const study = (question: string, say = 'A bell is a bell.') => `plumeline: 1
question: ${question}
engines:
  bell:
    name: Oak B
    propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.5 }
    chamber: { pressure: 100 bar }
    size: { throat: 200 mm }
    nozzle: { kind: bell, areaRatio: 20 }
sentences:
  - id: one
    say: ${say}
`;

let shelf: string;
let outside: string;
let server: RunningServer;

const put = async (folder: string, text: string) => {
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, 'study.yaml'), text);
};

beforeAll(async () => {
  shelf = await mkdtemp(join(tmpdir(), 'plumeline-near-'));
  outside = await mkdtemp(join(tmpdir(), 'plumeline-far-'));
  await put(join(shelf, 'own'), study('Which one?'));
  await put(join(shelf, 'beside'), study('What is beside?', 'It stands <b>beside</b>.'));
  await put(join(shelf, 'broken'), 'plumeline: 1\nquestion: [');
  await put(join(shelf, 'huge'), `${study('Too long?')}# ${'x'.repeat(1_000_000)}\n`);
  await put(join(shelf, '.hidden'), study('Hidden?'));
  await put(join(shelf, 'deep', 'deeper'), study('Too deep?'));
  await put(outside, study('Outside?'));
  await symlink(outside, join(shelf, 'linked-folder'));
  await mkdir(join(shelf, 'linked-file'));
  await symlink(join(outside, 'study.yaml'), join(shelf, 'linked-file', 'study.yaml'));
  await mkdir(join(shelf, 'no-file', 'study.yaml'), { recursive: true });
  await writeFile(join(shelf, 'study.yaml'), study('Loose?'));
  server = await serveStudy({ folder: join(shelf, 'own'), port: 0 });
});
afterAll(async () => {
  await server.close();
  await rm(shelf, { recursive: true });
  await rm(outside, { recursive: true });
});

const near = (init: RequestInit = {}) => fetch(`${server.url}api/near`, init);

describe('the studies beside the one that is open', () => {
  it('are told in few words; links, hidden, broken, large and deeper ones are passed over', async () => {
    const reply = await near();
    expect(reply.status).toBe(200);
    expect(reply.headers.get('cache-control')).toBe('no-store');
    const { studies, starters } = (await reply.json()) as Record<string, { name: string }[]>;
    expect(studies).toEqual([
      {
        name: 'beside',
        question: 'What is beside?',
        engines: [{ id: 'bell', name: 'Oak B' }],
        sentences: ['It stands <b>beside</b>.'],
      },
    ]);
    expect(starters?.map(({ name }) => name)).toContain('bell-against-plug');
  });

  it('names no place of this machine', async () => {
    const text = await (await near()).text();
    expect(text).not.toContain(shelf);
    expect(text).not.toContain(tmpdir());
  });

  it('are told to no other site, and cannot be written', async () => {
    expect((await near({ headers: { Origin: 'http://evil.example' } })).status).toBe(403);
    expect((await near({ headers: { 'Sec-Fetch-Site': 'cross-site' } })).status).toBe(403);
    for (const method of ['PUT', 'POST', 'DELETE']) expect((await near({ method })).status).toBe(405);
    expect((await fetch(`${server.url}api/near/..%2f..%2fpackage.json`)).status).toBe(404);
  });

  it('give the text of one of them, by the same rules', async () => {
    const text = (name: string, init: RequestInit = {}) =>
      fetch(`${server.url}api/near/study?name=${encodeURIComponent(name)}`, init);
    const reply = await text('beside');
    expect(reply.status).toBe(200);
    expect(reply.headers.get('content-type')).toBe('text/plain; charset=utf-8');
    expect(await reply.text()).toContain('What is beside?');
    const none = ['', 'broken', 'huge', '.hidden', 'deep', 'deep/deeper', '..', '../own', 'linked-folder'];
    for (const name of [...none, 'linked-file', 'no-file', 'nowhere', 'beside\\..', 'beside\0', outside])
      expect((await text(name)).status, name).toBe(404);
    expect((await text('beside', { headers: { Origin: 'http://evil.example' } })).status).toBe(403);
    for (const method of ['PUT', 'POST']) expect((await text('beside', { method })).status).toBe(405);
  });

  it('are looked for anew each time, the folder may vanish meanwhile', async () => {
    await rm(join(shelf, 'beside'), { recursive: true });
    const { studies } = (await (await near()).json()) as { studies: unknown[] };
    expect(studies).toEqual([]);
    await put(join(shelf, 'beside'), study('What is beside?'));
  });
});

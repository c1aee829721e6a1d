/** Attacks on the local server. The rules it keeps are common practice for programs that listen on loopback. */

import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, serveStudy } from '../../../src/faces/server/serveStudy.ts';

const original = '# a comment\nplumeline: 1\nquestion: Which one?\n';

let folder: string;
let server: RunningServer;
let token: string;

interface Reply {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly body: string;
}

interface Ask {
  readonly method?: string;
  readonly path: string;
  readonly headers?: Record<string, string>;
  readonly body?: string | Buffer;
}

/** A request as written: no client of ours tidies its path or its Host header. */
function ask({ method = 'GET', path, headers = {}, body }: Ask): Promise<Reply> {
  const { hostname, port, host } = new URL(server.url);
  return new Promise((resolve, reject) => {
    const outgoing = request(
      { hostname, port, method, path, headers: { Host: host, ...headers }, setHost: false, agent: false },
      (incoming) => {
        let text = '';
        incoming.setEncoding('utf8');
        incoming.on('data', (chunk: string) => {
          text += chunk;
        });
        incoming.on('end', () =>
          resolve({ status: incoming.statusCode ?? 0, headers: incoming.headers, body: text }),
        );
      },
    );
    outgoing.on('error', reject);
    outgoing.end(body);
  });
}

const studyNow = async () =>
  JSON.parse((await ask({ path: '/api/study' })).body) as { text: string; hash: string };
const put = async (text: string, headers: Record<string, string> = {}, baseHash?: string) =>
  ask({
    method: 'PUT',
    path: '/api/study',
    headers: { 'Content-Type': 'application/json', 'X-Plumeline-Token': token, ...headers },
    body: JSON.stringify({ text, baseHash: baseHash ?? (await studyNow()).hash }),
  });
const onDisk = () => readFile(join(folder, 'study.yaml'), 'utf8');

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plumeline-server-'));
  await writeFile(join(folder, 'study.yaml'), original);
  await writeFile(join(folder, 'private.json'), '"private"');
  server = await serveStudy({ folder, port: 0 });
  const page = await ask({ path: '/' });
  token = /name="plumeline-token" content="([0-9a-f]{64})"/.exec(page.body)?.[1] ?? '';
  expect(token).toHaveLength(64);
});
afterEach(async () => {
  await writeFile(join(folder, 'study.yaml'), original);
});
afterAll(async () => {
  await server.close();
  await rm(folder, { recursive: true });
});

describe('reading and writing the study', () => {
  it('gives text, hash and name', async () => {
    const reply = await ask({ path: '/api/study' });
    expect(reply.status).toBe(200);
    expect(reply.headers['cache-control']).toBe('no-store');
    const study = JSON.parse(reply.body);
    expect(study.text).toBe(original);
    expect(folder.endsWith(study.name)).toBe(true);
    // FIPS 180-4, checked with coreutils sha256sum
    expect(study.hash).toMatch(/^[0-9a-f]{64}$/);
  });

  it('has no first answer to another text, and none for another site', async () => {
    expect((await ask({ path: '/api/answer?hash=0' })).status).toBe(204);
    expect((await ask({ path: '/api/answer' })).status).toBe(204);
    expect((await ask({ path: '/api/answer', headers: { Origin: 'http://elsewhere.example' } })).status).toBe(
      403,
    );
  });

  it('writes with the token and gives the new hash', async () => {
    const reply = await put('# new\n');
    expect(reply.status).toBe(200);
    expect(await onDisk()).toBe('# new\n');
    expect(JSON.parse(reply.body).hash).toBe((await studyNow()).hash);
  });

  it('refuses a write on a stale base with the current text', async () => {
    const { hash } = await studyNow();
    await writeFile(join(folder, 'study.yaml'), '# edited elsewhere\n');
    const reply = await put('# mine\n', {}, hash);
    expect(reply.status).toBe(409);
    expect(JSON.parse(reply.body).text).toBe('# edited elsewhere\n');
    expect(await onDisk()).toBe('# edited elsewhere\n');
  });

  it('lets only one of two writes on the same base through', async () => {
    const { hash } = await studyNow();
    const statuses = (await Promise.all([put('# one\n', {}, hash), put('# two\n', {}, hash)])).map(
      (r) => r.status,
    );
    expect(statuses.sort((a, b) => a - b)).toEqual([200, 409]);
  });

  it('tells listeners of a change from outside', async () => {
    const { port, hostname } = new URL(server.url);
    const told = await new Promise<string>((resolve, reject) => {
      const stream = request({ port, hostname, path: '/api/changes' }, (incoming) => {
        incoming.setEncoding('utf8');
        incoming.on('data', (chunk: string) => {
          // The page reads the study again at this, so nothing changed before it can be missed.
          if (chunk.includes('data: listening')) void writeFile(join(folder, 'study.yaml'), '# outside\n');
          if (chunk.includes('data: changed')) {
            resolve(String(incoming.headers['content-type']));
            stream.destroy();
          }
        });
      });
      stream.on('error', reject);
      stream.end();
    });
    expect(told).toContain('text/event-stream');
  });
});

describe('requests of other sites', () => {
  it.each([
    ['another name', 'evil.example'],
    ['another name on our port', 'evil.example:80'],
    ['our address on another port', '127.0.0.1:1'],
    ['our name with a tail', 'localhost.evil.example'],
    ['an empty name', ''],
  ])('refuses a Host of %s', async (_, host) => {
    const reply = await ask({ path: '/', headers: { Host: host } });
    expect([400, 403]).toContain(reply.status);
    expect(reply.body).not.toContain(token);
  });

  it('accepts the loopback names', async () => {
    const { port } = new URL(server.url);
    for (const host of [`localhost:${port}`, `127.0.0.1:${port}`]) {
      expect((await ask({ path: '/api/study', headers: { Host: host } })).status).toBe(200);
    }
  });

  it.each(['http://evil.example', 'https://127.0.0.1', 'null', 'http://localhost:1'])(
    'refuses Origin %s for reading and writing',
    async (origin) => {
      expect((await ask({ path: '/api/study', headers: { Origin: origin } })).status).toBe(403);
      expect((await put('# evil\n', { Origin: origin })).status).toBe(403);
      expect(await onDisk()).toBe(original);
    },
  );

  it('refuses what a page of another site fetches, and lets a link to the page through', async () => {
    const fetched = { 'Sec-Fetch-Site': 'cross-site', 'Sec-Fetch-Mode': 'no-cors' };
    const followed = { 'Sec-Fetch-Site': 'cross-site', 'Sec-Fetch-Mode': 'navigate' };
    expect((await ask({ path: '/', headers: fetched })).status).toBe(403);
    expect((await ask({ path: '/api/study', headers: { 'Sec-Fetch-Site': 'same-site' } })).status).toBe(403);
    expect((await ask({ path: '/', headers: followed })).status).toBe(200);
  });

  it('never invites another site', async () => {
    const reply = await ask({ path: '/api/study', headers: { Origin: new URL(server.url).origin } });
    expect(reply.status).toBe(200);
    expect(Object.keys(reply.headers).filter((name) => name.startsWith('access-control-'))).toEqual([]);
  });
});

describe('the token', () => {
  it.each([
    ['no token', ''],
    ['a wrong token', '0'.repeat(64)],
    ['half a token', 'half'],
  ])('refuses a write with %s', async (_, given) => {
    const header = given === 'half' ? token.slice(0, 32) : given;
    expect((await put('# evil\n', { 'X-Plumeline-Token': header })).status).toBe(403);
    expect(await onDisk()).toBe(original);
  });

  it('differs from run to run', async () => {
    const other = await serveStudy({ folder, port: 0 });
    const page = await (await fetch(other.url)).text();
    await other.close();
    expect(page).toContain('plumeline-token');
    expect(page).not.toContain(token);
  });
});

describe('bodies', () => {
  it.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data', ''])(
    'refuses content type "%s"',
    async (type) => {
      expect((await put('# evil\n', { 'Content-Type': type })).status).toBe(415);
      expect(await onDisk()).toBe(original);
    },
  );

  it.each(['', 'not json', '[]', 'null', '{"text": 1, "baseHash": ""}', '{"text": "x"}'])(
    'refuses the body %s',
    async (body) => {
      const headers = { 'Content-Type': 'application/json', 'X-Plumeline-Token': token };
      expect((await ask({ method: 'PUT', path: '/api/study', headers, body })).status).toBe(400);
      expect(await onDisk()).toBe(original);
    },
  );

  it('refuses a study that is too large, told or not told beforehand', async () => {
    expect((await put('x'.repeat(1_000_001))).status).toBe(413);
    const headers = { 'Content-Type': 'application/json', 'X-Plumeline-Token': token };
    const body = Buffer.alloc(7_000_000, 'x');
    const told = await ask({
      method: 'PUT',
      path: '/api/study',
      headers: { ...headers, 'Content-Length': String(body.length) },
      body,
    }).catch(() => null);
    expect(told === null || told.status === 413).toBe(true);
    const untold = await ask({
      method: 'PUT',
      path: '/api/study',
      headers: { ...headers, 'Transfer-Encoding': 'chunked' },
      body,
    }).catch(() => null);
    expect(untold === null || untold.status === 413).toBe(true);
    expect(await onDisk()).toBe(original);
  });
});

describe('paths', () => {
  it.each([
    '/assets/../index.html',
    '/assets/..%2findex.html',
    '/assets/%2e%2e/%2e%2e/%2e%2e/%2e%2e/package.json',
    '/assets/..%5c..%5c..%5cpackage.json',
    '/data/../package.json',
    '/data/..%2fpackage.json',
    '/data/%2e%2e%2fpackage.json',
    '/data/..%252fpackage.json',
    '/data/%2fetc%2fpasswd',
    '/data//etc/passwd',
    '/data/species/..%2f..%2fpackage.json',
    '/data/propellants.json%00.js',
    '/data/%',
    '/data/',
    '/data/species',
    '/data/.hidden.json',
    '/private.json',
    '/study.yaml',
    '/fonts/../../package.json',
  ])('gives nothing for %s', async (path) => {
    const reply = await ask({ path });
    expect(reply.status).toBe(404);
    expect(reply.body).not.toContain('devDependencies');
  });

  it('gives the data and the built page', async () => {
    const propellants = await ask({ path: '/data/propellants.json' });
    expect(propellants.status).toBe(200);
    expect(propellants.headers['content-type']).toContain('application/json');
    expect(() => JSON.parse(propellants.body)).not.toThrow();
    expect((await ask({ path: '/' })).body).toContain('<title>');
  });

  it('does not follow a study file that is a link out of the folder', async () => {
    const outside = await mkdtemp(join(tmpdir(), 'plumeline-outside-'));
    const inside = join(outside, 'study');
    await mkdir(inside);
    await writeFile(join(outside, 'target.yaml'), 'precious');
    await symlink(join(outside, 'target.yaml'), join(inside, 'study.yaml'));
    await expect(serveStudy({ folder: inside, port: 0 })).rejects.toMatchObject({
      problem: { code: 'no-study-file' },
    });

    // and not when it becomes one while the server runs
    await rm(join(inside, 'study.yaml'));
    await writeFile(join(inside, 'study.yaml'), original);
    const running = await serveStudy({ folder: inside, port: 0 });
    try {
      const page = await (await fetch(running.url)).text();
      const { hash } = (await (await fetch(`${running.url}api/study`)).json()) as { hash: string };
      await rm(join(inside, 'study.yaml'));
      await symlink(join(outside, 'target.yaml'), join(inside, 'study.yaml'));
      const write = await fetch(`${running.url}api/study`, {
        method: 'PUT',
        headers: {
          'Content-Type': 'application/json',
          'X-Plumeline-Token': /content="([0-9a-f]{64})"/.exec(page)?.[1] ?? '',
        },
        body: JSON.stringify({ text: 'evil', baseHash: hash }),
      });
      expect(write.status).toBe(422);
      expect((await fetch(`${running.url}api/study`)).status).toBe(422);
      expect(await readFile(join(outside, 'target.yaml'), 'utf8')).toBe('precious');
    } finally {
      await running.close();
      await rm(outside, { recursive: true });
    }
  });
});

describe('methods and headers', () => {
  it.each(['POST', 'DELETE', 'PATCH', 'OPTIONS'])('refuses %s', async (method) => {
    for (const path of ['/', '/api/study', '/data/propellants.json']) {
      const reply = await ask({ method, path, headers: { 'X-Plumeline-Token': token } });
      expect(reply.status).toBe(405);
      expect(reply.headers.allow).toContain('GET');
    }
  });

  it('refuses PUT elsewhere', async () => {
    expect((await ask({ method: 'PUT', path: '/data/propellants.json' })).status).toBe(405);
  });

  it('sends the safety headers with every answer, errors too', async () => {
    for (const path of ['/', '/api/study', '/nothing', '/data/propellants.json', '/data/%']) {
      const { headers } = await ask({ path });
      const policy = String(headers['content-security-policy']);
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain("script-src 'self'");
      expect(policy).not.toContain('unsafe');
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['cross-origin-opener-policy']).toBe('same-origin');
      expect(headers['cross-origin-embedder-policy']).toBe('require-corp');
      expect(headers['cross-origin-resource-policy']).toBe('same-origin');
    }
    expect((await ask({ path: '/' })).headers['cache-control']).toBe('no-store');
  });

  it('puts no script into the page itself', async () => {
    const { body } = await ask({ path: '/' });
    for (const [, attributes, content] of body.matchAll(/<script([^>]*)>([^<]*)/g)) {
      expect(attributes).toContain('src="/assets/');
      expect(content?.trim()).toBe('');
    }
    expect(body).not.toMatch(/\son[a-z]+=|javascript:/i);
  });
});

describe('the address', () => {
  it.each(['0.0.0.0', '192.168.1.2', '::', 'example.org'])('refuses to listen on %s', async (host) => {
    await expect(serveStudy({ folder, port: 0, host })).rejects.toMatchObject({
      problem: { code: 'host-not-loopback' },
    });
  });

  it('takes the next free port when the wanted one is taken', async () => {
    const squatter = createServer();
    await new Promise<void>((resolve) => squatter.listen(0, '127.0.0.1', resolve));
    const { port } = squatter.address() as AddressInfo;
    const next = await serveStudy({ folder, port });
    const given = Number(new URL(next.url).port);
    await next.close();
    await new Promise((resolve) => squatter.close(resolve));
    expect(given).toBeGreaterThan(port);
    expect(given).toBeLessThan(port + 50);
  });

  it('says so when there is no study', async () => {
    const empty = await mkdtemp(join(tmpdir(), 'plumeline-empty-'));
    await expect(serveStudy({ folder: empty, port: 0 })).rejects.toMatchObject({
      problem: { code: 'no-study-file' },
    });
    await rm(empty, { recursive: true });
  });
});

describe('the script beside the study', () => {
  const scriptNow = async () =>
    JSON.parse((await ask({ path: '/api/script' })).body) as { text: string | null; hash: string };
  const putScript = (text: string, baseHash: string, headers: Record<string, string> = {}) =>
    ask({
      method: 'PUT',
      path: '/api/script',
      headers: { 'Content-Type': 'application/json', 'X-Plumeline-Token': token, ...headers },
      body: JSON.stringify({ text, baseHash }),
    });
  const path = () => join(folder, 'script.md');

  it('is made, changed on what it was, and not over a change made elsewhere', async () => {
    expect(await scriptNow()).toMatchObject({ text: null, hash: '', record: null });
    expect((await putScript('One.\n', '')).status).toBe(200);
    const { hash } = await scriptNow();
    expect((await putScript('Two.\n', '')).status).toBe(409);
    expect((await putScript('Two.\n', hash)).status).toBe(200);
    await writeFile(path(), 'Elsewhere.\n');
    const stale = await putScript('Three.\n', hash);
    expect(stale.status).toBe(409);
    expect(JSON.parse(stale.body)).toMatchObject({ text: 'Elsewhere.\n' });
    expect(await readFile(path(), 'utf8')).toBe('Elsewhere.\n');
    await rm(path());
  });

  it('is written with the token alone, and never through a link that leads out', async () => {
    expect((await putScript('x', '', { 'X-Plumeline-Token': '' })).status).toBe(403);
    const outside = await mkdtemp(join(tmpdir(), 'plumeline-outside-'));
    await writeFile(join(outside, 'secret.md'), 'secret');
    await symlink(join(outside, 'secret.md'), path());
    expect((await ask({ path: '/api/script' })).body).not.toContain('"secret"');
    expect((await putScript('x', '')).status).toBe(422);
    expect(await readFile(join(outside, 'secret.md'), 'utf8')).toBe('secret');
    await rm(path());
    await rm(outside, { recursive: true });
  });

  it('takes nothing but a record as the record of its numbers', async () => {
    const put = (text: string) =>
      ask({
        method: 'PUT',
        path: '/api/script-numbers',
        headers: { 'Content-Type': 'application/json', 'X-Plumeline-Token': token },
        body: JSON.stringify({ text, baseHash: '' }),
      });
    expect((await put('{"format":"other"}')).status).toBe(422);
    const record = '{"format":"plumeline script numbers 1","numbers":[]}';
    expect(JSON.parse((await put(record)).body)).toMatchObject({ record });
    await rm(join(folder, 'script.numbers.json'));
  });
});

describe('films of the climb', () => {
  const film = (text: string, headers: Record<string, string> = {}) =>
    ask({
      method: 'PUT',
      path: '/api/film',
      headers: { 'Content-Type': 'application/json', 'X-Plumeline-Token': token, ...headers },
      body: JSON.stringify({ text, baseHash: '' }),
    });
  const wanted = JSON.stringify({
    ...{ clip: 'cut-climb', size: '16:9', alpha: false },
    ...{ seconds: 6, theme: 'light' },
  });

  it('are asked for with the token alone, and only such as there are', async () => {
    expect((await film(wanted, { 'X-Plumeline-Token': 'none' })).status).toBe(403);
    for (const text of [
      '',
      '{}',
      '{"seconds":1e9,"theme":"light"}',
      '{"seconds":6,"theme":"<script>"}',
      wanted.replace('16:9', '5:1'),
    ])
      expect((await film(text)).status).toBe(400);
    expect(JSON.parse((await ask({ path: '/api/film' })).body)).toEqual({ is: 'none' });
    expect((await ask({ path: '/api/film/file' })).status).toBe(404);
  });

  it('tell in words why there is none of a study with mistakes', async () => {
    await film(wanted);
    await expect
      // What makes films is loaded only now, which takes a while on a busy machine.
      .poll(async () => JSON.parse((await ask({ path: '/api/film' })).body), { timeout: 90_000 })
      .toMatchObject({ is: 'failed', problem: { code: 'film-of-faulty-study' } });
  });
});

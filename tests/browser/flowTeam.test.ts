import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import { burst, type CaseFields } from '../physics/euler/kernel/kernelCases.ts';
import { launchChromium } from './chromium.ts';
import { pageScript } from './pageScript.ts';

/** A page that shares memory between its threads. */
async function isolated(files: Readonly<Record<string, string>>): Promise<Server> {
  const server = createServer(({ url = '/' }, answer) => {
    answer.writeHead(200, {
      'content-type': url.endsWith('.js') ? 'text/javascript' : 'text/html',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-embedder-policy': 'require-corp',
    });
    answer.end(files[url] ?? '<!doctype html><title>a field shared</title>');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return server;
}

let browser: Awaited<ReturnType<typeof launchChromium>>;
let server: Server;
beforeAll(async () => {
  browser = await launchChromium();
  server = await isolated({
    '/giver.js': await pageScript('./flowGiver.ts', 'worker'),
    '/hand.js': await pageScript('./flowHand.ts', 'worker'),
  });
}, 120_000);
afterEach(async () => {
  for (const context of browser.contexts()) await context.close();
});
afterAll(async () => {
  await browser?.close();
  server?.close();
});

test('in an isolated page two workers give the numbers of one, bit by bit', async () => {
  const page = await browser.newPage();
  await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
  expect(await page.evaluate('crossOriginIsolated')).toBe(true);
  const told = (await page.evaluate(`new Promise((resolve, reject) => {
    const giver = new Worker('/giver.js');
    giver.onmessage = ({ data }) => resolve(data);
    giver.onerror = ({ message }) => reject(new Error(message));
  })`)) as readonly { bits: 64 | 32; one: CaseFields; two: CaseFields; shared: boolean }[];
  expect(told.map(({ bits }) => bits)).toEqual([64, 32]);
  for (const { bits, one, two, shared } of told) {
    expect(shared).toBe(true);
    expect(two).toEqual(one);
    // And it is the flow that Node has.
    expect(one.mass).toBeCloseTo(burst(bits, 40, true).mass, bits === 64 ? 10 : 5);
  }
});

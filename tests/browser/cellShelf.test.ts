/** The cells of whole flows in a browser that keeps them: each asked of the server once. */

import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchChromium } from './chromium.ts';
import { pageScript } from './pageScript.ts';

let browser: Awaited<ReturnType<typeof launchChromium>>;
let server: Server;
const asked: string[] = [];
beforeAll(async () => {
  browser = await launchChromium();
  const script = await pageScript('../../src/faces/workbench/flow/cellShelf.ts', 'cellShelf');
  server = createServer(({ url = '/' }, answer) => {
    const key = /^\/api\/flows\/cells\?key=(\w+)$/.exec(url)?.[1];
    if (key !== undefined) asked.push(key);
    answer.writeHead(key === 'none' ? 404 : 200, { 'content-type': 'text/html' });
    answer.end(
      key === undefined ? `<!doctype html><title>cells</title><script>${script}</script>` : `cells of ${key}`,
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
}, 120_000);
afterAll(async () => {
  await browser?.close();
  server?.close();
});

test('what was fetched is kept by its name, also for the page that is opened next; the oldest go first', async () => {
  const context = await browser.newContext();
  const opened = async () => {
    const page = await context.newPage();
    await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
    return { page, text: (key: string) => page.evaluate(`cellShelf.cellText('${key}')`) };
  };
  asked.length = 0;
  const first = await opened();
  expect(await first.text('abc')).toBe('cells of abc');
  expect(await first.text('abc')).toBe('cells of abc');
  expect(await first.text('none')).toBeNull();
  expect(asked).toEqual(['abc', 'none']);
  await first.page.close();
  const second = await opened();
  expect(await second.text('abc')).toBe('cells of abc');
  // Of another engine, or of another program, the name is another.
  expect(await second.text('abd')).toBe('cells of abd');
  expect(asked).toEqual(['abc', 'none', 'abd']);
  // There is room for 400.
  await second.page.evaluate(`(async () => {
    for (let k = 0; k < 399; k++) await cellShelf.keepCells('later' + k, 'later');
  })()`);
  expect(await second.page.evaluate(`cellShelf.keptCells('abc')`)).toBeNull();
  expect(await second.page.evaluate(`cellShelf.keptCells('abd')`)).toBe('cells of abd');
  await context.close();
});

import { afterEach, expect, test, vi } from 'vitest';
import { askFlows } from '../../../src/faces/workbench/flow/flowLink.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});
const answering = (reply: () => Response): void => {
  vi.stubGlobal('fetch', async () => reply());
};

test.each([
  [403, JSON.stringify({ error: 'The page is of an earlier run.' }), 'The page is of an earlier run.'],
  [500, 'not JSON', 'it answered 500.'],
])('a server that answers %i refuses, and that is told', async (status, body, why) => {
  answering(() => new Response(body, { status }));
  expect(await askFlows(null)).toHaveProperty(
    'refused.what',
    `The server does not compute the whole flow: ${why}`,
  );
});

test('a server that is not there refuses nothing', async () => {
  answering(() => {
    throw new TypeError('no connection');
  });
  expect(await askFlows(null)).toBeNull();
});

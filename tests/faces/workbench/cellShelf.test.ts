import { afterEach, expect, test, vi } from 'vitest';
import { cellText } from '../../../src/faces/workbench/flow/cellShelf.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

test('where the browser forbids storage the cells come from the server all the same', async () => {
  vi.stubGlobal('indexedDB', {
    open() {
      throw new DOMException('The operation is insecure.', 'SecurityError');
    },
  });
  vi.stubGlobal('fetch', async (address: string) => new Response(`cells of ${address}`));
  expect(await cellText('abc')).toBe('cells of /api/flows/cells?key=abc');
});

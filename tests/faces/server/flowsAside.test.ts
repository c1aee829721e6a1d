import { expect, test } from 'vitest';
import { keptAside } from '../../../src/faces/server/flowsAside.ts';

test('what was stopped before it began is not begun', async () => {
  await expect(keptAside('', [], AbortSignal.abort(new Error('stopped')))).rejects.toThrow('stopped');
  await expect(keptAside('', [], new AbortController().signal)).resolves.toBeUndefined();
});

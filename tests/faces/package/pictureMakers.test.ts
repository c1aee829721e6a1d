import { Worker } from 'node:worker_threads';
import { afterEach, expect, test } from 'vitest';
import { makersOn, type PictureMakers } from '../../../src/faces/package/pictureMakers.ts';

/** A thread that answers with the bytes of what it is given, and dies of two words. */
const HAND = `
const { parentPort } = require('node:worker_threads');
parentPort.on('message', ({ order, svg }) => {
  if (svg === 'throw') throw new Error('broke');
  if (svg === 'leave') process.exit(3);
  if (svg === 'fault') return parentPort.postMessage({ order, fault: 'no picture' });
  parentPort.postMessage({ order, png: new TextEncoder().encode(svg) });
});`;
const thread = (): Worker => new Worker(HAND, { eval: true });

let makers: PictureMakers;
afterEach(() => makers.dismiss());

/** What each picture became: its bytes as text, or why there is none. */
async function outcomes(svgs: readonly string[]): Promise<readonly string[]> {
  const all = await Promise.allSettled(svgs.map((svg) => makers.make(svg, 1, {})));
  return all.map((one) => (one.status === 'fulfilled' ? one.value.toString() : `no: ${one.reason.message}`));
}

test.each([1, 2])(
  'a thread that dies takes one picture with it, the rest are made; %i at a time',
  async (size) => {
    makers = makersOn(thread, size);
    const found = await outcomes(['a', 'throw', 'b', 'leave', 'c', 'fault', 'd']);
    expect(found).toEqual([
      'a',
      'no: broke',
      'b',
      'no: a maker of pictures ended with 3',
      'c',
      'no: no picture',
      'd',
    ]);
    // Threads that had died are no longer counted.
    expect(await outcomes(['e', 'f', 'g'])).toEqual(['e', 'f', 'g']);
  },
);

test('where no thread can be started again, what waits is refused', async () => {
  let left = 1;
  makers = makersOn(() => {
    if (left-- === 0) throw new Error('no thread to be had');
    return thread();
  }, 1);
  expect(await outcomes(['leave', 'a', 'b'])).toEqual([
    'no: a maker of pictures ended with 3',
    'no: no thread to be had',
    'no: no thread to be had',
  ]);
});

test('dismissed, what waits is refused, and nothing is started for it', async () => {
  let started = 0;
  makers = makersOn(() => {
    started += 1;
    return thread();
  }, 1);
  const all = outcomes(['a', 'b', 'c']);
  await makers.dismiss();
  for (const outcome of await all) expect(outcome).toBe('no: the makers of pictures were dismissed');
  expect(started).toBe(1);
});

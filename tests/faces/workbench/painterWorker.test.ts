/** The painter goes on where one picture cannot be painted. */

import { expect, test, vi } from 'vitest';
import type { FlowPainted, FlowPaintOrder } from '../../../src/faces/workbench/flow/messages.ts';

vi.mock('../../../src/faces/workbench/flow/cellShelf.ts', () => ({ cellText: async (key: string) => key }));
vi.mock('../../../src/faces/flows/flowText.ts', () => ({ flowOfText: (text: string) => text }));
vi.mock('../../../src/telling/figures/flowUnderlay.ts', () => ({
  flowUnderlay(field: string) {
    if (field === 'bad') throw new Error('no such cell');
    return { gas: [], over: [] };
  },
}));
vi.mock('../../../src/faces/canvas/drawNodes.ts', () => ({ drawNodes: () => undefined }));

const gradient = { addColorStop: () => undefined };
const pen = {
  setTransform: () => undefined,
  resetTransform: () => undefined,
  createLinearGradient: () => gradient,
  fillRect: () => undefined,
};

test('a bad picture is told, and those after it are painted', async () => {
  const reports: FlowPainted[] = [];
  let hear: (message: { data: FlowPaintOrder }) => void = () => undefined;
  vi.stubGlobal('addEventListener', (_kind: string, listener: typeof hear) => {
    hear = listener;
  });
  vi.stubGlobal('postMessage', (report: FlowPainted) => reports.push(report));
  vi.stubGlobal(
    'OffscreenCanvas',
    class {
      getContext = () => pen;
      transferToImageBitmap = () => 'picture';
    },
  );
  try {
    await import('../../../src/faces/workbench/flow/painterWorker.ts');
    const order = (...keys: string[]): FlowPaintOrder =>
      ({
        wanted: keys.map((key) => ({
          id: `${key} 1`,
          key,
          ratio: 1,
          placing: { box: { x: 0, y: 0, width: 10, height: 10 } },
        })),
      }) as unknown as FlowPaintOrder;
    hear({ data: order('bad', 'good') });
    await expect.poll(() => reports.length).toBe(2);
    hear({ data: order('later') });
    await expect.poll(() => reports.length).toBe(3);
    expect(reports).toEqual([
      { id: 'bad 1', picture: null, fault: 'no such cell' },
      { id: 'good 1', picture: 'picture' },
      { id: 'later 1', picture: 'picture' },
    ]);
  } finally {
    vi.unstubAllGlobals();
  }
});

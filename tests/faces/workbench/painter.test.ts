/** What the page asks of the painter again, and what not. */

import { beforeEach, expect, test, vi } from 'vitest';
import type { FlowPaint, FlowPainted, FlowPaintOrder } from '../../../src/faces/workbench/flow/messages.ts';
import { forgetMissing, paint } from '../../../src/faces/workbench/flow/painter.ts';

const posted: string[][] = [];
const faults: string[] = [];
let tell: (report: FlowPainted) => void = () => undefined;
let fail: () => void = () => undefined;
vi.stubGlobal(
  'Worker',
  class {
    addEventListener(
      kind: string,
      listener: (event: { data?: FlowPainted; message?: string }) => void,
    ): void {
      if (kind === 'message') tell = (data) => listener({ data });
      else fail = () => listener({ message: 'broken' });
    }
    postMessage({ wanted }: FlowPaintOrder): void {
      posted.push(wanted.map(({ id }) => id));
    }
    terminate(): void {
      // Nothing runs.
    }
  },
);
vi.stubGlobal('reportError', ({ message }: Error) => faults.push(message));

const wanted = (...ids: string[]): readonly FlowPaint[] => ids.map((id) => ({ id }) as FlowPaint);
beforeEach(() => {
  posted.length = 0;
  faults.length = 0;
});

test('cells that were not there are asked for once their field is listed again, faulty ones are not', () => {
  const both = wanted('gone 1', 'faulty 1');
  paint(both);
  tell({ id: 'gone 1', picture: null });
  tell({ id: 'faulty 1', picture: null, fault: 'no such cell' });
  expect(faults).toEqual(['A whole flow could not be painted: no such cell']);
  forgetMissing(['other']);
  paint(both);
  forgetMissing(['gone', 'faulty']);
  paint(both);
  expect(posted).toEqual([['gone 1', 'faulty 1'], [], ['gone 1']]);
});

test('what is listed again before anything is drawn is asked for too', () => {
  paint(wanted('quick 1'));
  tell({ id: 'quick 1', picture: null });
  forgetMissing(['quick']);
  paint(wanted('quick 1'));
  expect(posted).toEqual([['quick 1'], ['quick 1']]);
});

test('a painter that broke is followed by another that is asked for the same', () => {
  paint(wanted('same 1'));
  fail();
  paint(wanted('same 1'));
  expect(posted).toEqual([['same 1'], ['same 1']]);
  expect(faults).toEqual(['broken']);
});

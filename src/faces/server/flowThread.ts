/** What the thread of the whole flows runs: one order to compute, then where one looks; fields as they come. */

import { parentPort } from 'node:worker_threads';
import { computeFlows } from '../flows/computeFlows.ts';
import type { FlowsWanted } from '../flows/flowList.ts';

export type FlowOrder =
  | { readonly is: 'compute'; readonly text: string; readonly wanted: FlowsWanted }
  | { readonly is: 'look'; readonly altitude: number | null };

if (parentPort !== null) {
  const port = parentPort;
  let looked: number | null = 0;
  port.on('message', (order: FlowOrder) => {
    if (order.is === 'look') {
      looked = order.altitude;
      return;
    }
    looked = order.wanted.altitude;
    void computeFlows(order.text, order.wanted, {
      report: (report) => port.postMessage(report),
      looksAt: () => looked,
      // It is ended as a whole.
      isStopped: () => false,
    });
  });
}

/** What the thread of the whole flows runs: one order to compute, then where one looks; fields as they come. */

import { parentPort } from 'node:worker_threads';
import { solveStudyLive } from '../../answer/solve.ts';
import { knownNames } from '../../study/names.ts';
import { readStudy } from '../../study/read.ts';
import type { FlowWanted } from '../../telling/figures/flowsWanted.ts';
import { openDataShelf } from '../disk/data.ts';
import { wantedFlows } from '../disk/wantedFlows.ts';
import { computeFlows } from '../flows/computeFlows.ts';
import type { FlowsWanted } from '../flows/flowList.ts';

export type FlowOrder =
  | { readonly is: 'compute'; readonly text: string; readonly wanted: FlowsWanted }
  | { readonly is: 'look'; readonly altitude: number | null }
  /** Put into the cache what a film needs. */
  | { readonly is: 'keep'; readonly text: string; readonly flows: readonly FlowWanted[] };

/** Whatever is wrong, who asked comes upon it as well and says it there. */
async function keep(text: string, flows: readonly FlowWanted[]): Promise<void> {
  const shelf = openDataShelf();
  const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok) return;
  const solved = await solveStudyLive({ ...outcome.study, vehicles: [] }, shelf);
  await wantedFlows(solved, flows);
}

if (parentPort !== null) {
  const port = parentPort;
  let looked: number | null = 0;
  port.on('message', (order: FlowOrder) => {
    switch (order.is) {
      case 'look':
        looked = order.altitude;
        return;
      case 'keep':
        void keep(order.text, order.flows)
          .catch(() => undefined)
          .then(() => port.postMessage('kept'));
        return;
      case 'compute':
        looked = order.wanted.altitude;
        void computeFlows(order.text, order.wanted, {
          report: (report) => port.postMessage(report),
          looksAt: () => looked,
          // It is ended as a whole.
          isStopped: () => false,
        });
    }
  });
}

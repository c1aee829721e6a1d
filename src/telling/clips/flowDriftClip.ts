/** Specks that drift with the gas of a computed field, which itself stands still. */

import type { FlowField } from '../../answer/flow/index.ts';
import { figureFlow } from '../figures/figureFlow.ts';
import { throughTime } from '../figures/flowDrift.ts';
import { flowFinding } from '../figures/flowWords.ts';
import { formatNumber } from '../numbers/formatNumber.ts';
import type { Movement } from './clip.ts';
import type { ClipOptions } from './options.ts';

/** How often in the whole movement a speck comes to where the next one was. */
const ROUNDS = 16;

export function flowDriftClip(field: FlowField, options: ClipOptions): Movement {
  const title = options.title ?? flowFinding(field);
  const took = throughTime(field);
  return {
    name: `flow-${field.engine}-drift`,
    title,
    description: `${figureFlow(field, 'pressure', { ...options, title }).description} Specks drift with the gas.`,
    notes: [
      `The field ${field.ended !== undefined ? 'drawn is the last that held' : field.steady ? 'is steady' : 'drawn is a mean over time'}: specks go along its streamlines, seeded evenly by the flow of mass, the same in every run.`,
      ...(took === null
        ? []
        : [
            `In truth the gas beside the axis goes from the throat to the end of the lines in ${formatNumber(1000 * took, 2)}\u00a0ms; the clip is that much slower.`,
          ]),
    ],
    at: (share) => figureFlow(field, 'pressure', { ...options, title, drift: (ROUNDS * share) % 1 }),
  };
}

/** The whole flow of an engine while it climbs: true fields, the nearest one shown, never one through the other. */

import type { FlowField } from '../../answer/flow/index.ts';
import { ambientAt } from '../figures/conditions.ts';
import { drawnBetween, flowMorph } from '../figures/flowMorph.ts';
import { flowPanel } from '../figures/flowPanel.ts';
import { flowFinding, WITHOUT_FRICTION } from '../figures/flowWords.ts';
import { frame } from '../figures/frame.ts';
import { layoutOf } from '../look/formats.ts';
import { textWidth } from '../look/measureText.ts';
import { formatAltitude, formatPressure } from '../numbers/formatNumber.ts';
import type { Scene } from '../scene/scene.ts';
import { wayWords } from './climbCut.ts';
import { altitudeBetween } from './climbPath.ts';
import type { Movement } from './clip.ts';
import type { ClimbOptions } from './options.ts';
import { altitudeReadout, readoutLine } from './readout.ts';

/** Lip radii shown behind the lip: as far as the shocks go, between these. */
const REACH = { least: 8, most: 15 };
/** Shown behind the farthest shock, over its distance. */
const BEHIND_SHOCK = 1.3;

/** @param given of one engine, one at least */
export function flowClimb(given: readonly FlowField[], options: ClimbOptions): Movement {
  const { from, to } = options;
  const flows = [...given].sort((a, b) => b.ambientPressure - a.ambientPressure);
  const [first] = flows as [FlowField];
  const layout = layoutOf(options.size);
  const title = options.title ?? `${first.name}: the whole flow ${wayWords(from, to)}.`;
  const separates = flows.some(({ leaves }) => leaves !== null);
  const isMean = flows.some(({ steady }) => !steady);
  const foot = [
    WITHOUT_FRICTION,
    `${flows.length} fields computed; between them the nearest is shown, the jet’s edge and its shock moved evenly from one to the next.`,
    separates
      ? 'Where gas would leave the wall it is made to, at the estimate of the criteria; dashed, the wall behind it.'
      : '',
    flows.some(({ insideBell }) => insideBell)
      ? 'While the gas fills the shorter nozzle alone, the bell round the jet is not in the picture.'
      : '',
    isMean ? 'Jets that do not come to rest are drawn as the mean over the last steps.' : '',
    'Model: flow-field.',
  ].filter((words) => words !== '');
  const around = frame(layout, { title, subtitle: 'Pressure; inviscid, computed.', foot }, options);
  const { content } = around;
  const size = 1.1 * layout.type.label;
  const top = 1.6 * size;
  const box = { ...content, y: content.y + top, height: content.height - top };
  const reach = reachOf(flows);
  const fieldTexts = flows.map(fieldText);
  const widest = fieldTexts.reduce((a, b) => (textWidth(a, size, 400) > textWidth(b, size, 400) ? a : b));
  return {
    name: `flow-${first.engine}-climb`,
    title,
    description: `${title} ${flows.map(flowFinding).join(' ')} ${foot.join(' ')}`,
    notes: [
      `Computed in air of ${flows.map(({ ambientPressure }) => formatPressure(ambientPressure)).join(', ')}; each picture is one of these fields, moved behind the engine where the shock of the next is the same one.`,
      'Steady flow at each altitude: what changes while it goes from one to the next, and the speed of the vehicle, are not modelled.',
    ],
    at(share): Scene {
      const altitude = altitudeBetween(from, to, share);
      const morph = flowMorph(flows, ambientAt(altitude));
      return {
        width: layout.width,
        height: layout.height,
        title,
        description: `${title} ${flowFinding(morph.field)}`,
        theme: options.theme,
        transparent: options.transparent ?? false,
        children: [
          ...around.nodes,
          ...flowPanel(drawnBetween(morph), 'pressure', box, layout, { reach, marks: false }),
          ...readoutLine(
            [
              ...altitudeReadout(altitude),
              { text: fieldText(morph.field), widest, isWords: true, weight: 400, fill: 'ink-2', gap: 0.8 },
            ],
            content.x,
            content.y + 0.85 * size,
            size,
          ),
        ],
      };
    },
  };
}

/** [m] behind the lip */
function reachOf(flows: readonly FlowField[]): number {
  const { radius } = flows[0]!.lip;
  const farthest = Math.max(0, ...flows.map(({ mainShock }) => mainShock?.behind ?? 0));
  return Math.min(REACH.most * radius, Math.max(REACH.least * radius, BEHIND_SHOCK * farthest));
}

function fieldText({ altitude, ambientPressure, thinnest }: FlowField): string {
  if (thinnest) return 'field of the thinnest air';
  return `field of ${altitude === null ? formatPressure(ambientPressure) : altitude === 0 ? 'the pad' : formatAltitude(altitude)}`;
}

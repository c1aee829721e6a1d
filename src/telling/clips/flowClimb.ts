/** The whole flow of an engine while it climbs: true fields, the nearest one shown, never one through the other. */

import { CAUTION } from '../../answer/caution.ts';
import type { FlowField } from '../../answer/flow/index.ts';
import { ambientAt } from '../figures/conditions.ts';
import { drawnBetween, flowMorph } from '../figures/flowMorph.ts';
import { flowPanel, scaleIn } from '../figures/flowPanel.ts';
import { isMachDisk } from '../figures/flowShocks.ts';
import { brokeWords, endedWords, flowFinding, INVISCID, WITHOUT_FRICTION } from '../figures/flowWords.ts';
import { frame } from '../figures/frame.ts';
import type { Altitude } from '../figures/options.ts';
import { layoutOf } from '../look/formats.ts';
import { textWidth } from '../look/measureText.ts';
import { formatAltitude, formatPressure } from '../numbers/formatNumber.ts';
import type { Scene } from '../scene/scene.ts';
import { wayWords } from './climbCut.ts';
import { altitudeBetween } from './climbPath.ts';
import type { Movement } from './clip.ts';
import type { ClimbOptions } from './options.ts';
import { altitudeReadout, READOUT_LEADING, readoutLine, readoutLines } from './readout.ts';

/** Lip radii shown behind the lip: as far as the shocks go, between these. */
const REACH = { least: 8, most: 15 };
/** Shown behind the farthest shock, over its distance. */
const BEHIND_SHOCK = 1.3;

/** @param given of one engine, one at least */
export function flowClimb(given: readonly FlowField[], options: ClimbOptions): Movement {
  const { from, to } = options;
  const whole = given.filter(({ ended }) => ended === undefined);
  // One that broke is shown only where there is no other.
  const flows = [...(whole.length > 0 ? whole : given)].sort((a, b) => b.ambientPressure - a.ambientPressure);
  const [first] = flows as [FlowField];
  const layout = layoutOf(options.size);
  const title = options.title ?? `${first.name}: the whole flow ${wayWords(from, to)}.`;
  const separates = flows.some(({ leaves }) => leaves !== null);
  const isMean = flows.some(({ steady }) => !steady);
  const foot = [
    WITHOUT_FRICTION,
    `${flows.length} fields computed, the nearest is shown; the jet’s edge and shock move evenly between them.`,
    separates ? 'Dashed: walls that the gas is made to leave, at the estimate of the criteria.' : '',
    flows.some(({ insideBell }) => insideBell)
      ? 'The bell round a shorter nozzle’s jet is not in the picture.'
      : '',
    whole.length > 0 ? '' : endedWords(first),
    isMean && whole.length > 0 ? 'Jets that do not come to rest: the mean over the last steps.' : '',
    'Model: flow-field.',
  ].filter((words) => words !== '');
  const broke = whole.length > 0 ? '' : brokeWords(first);
  const subtitle = `Pressure; inviscid, computed.${broke}`;
  const always = `${INVISCID}${broke}`;
  const around = frame(layout, { title, subtitle, foot, moreLines: 1, always }, options);
  const { content } = around;
  const size = 1.1 * layout.type.label;
  const fieldTexts = flows.map(fieldText);
  const widest = fieldTexts.reduce((a, b) => (textWidth(a, size, 400) > textWidth(b, size, 400) ? a : b));
  const readout = (altitude: Altitude, field: FlowField) =>
    readoutLines(
      [
        altitudeReadout(altitude),
        [{ text: fieldText(field), widest, isWords: true, weight: 400, fill: 'ink-2' }],
      ],
      content.width,
      size,
    );
  const leading = READOUT_LEADING * size;
  const top = readout(from, first).length * leading + 0.2 * size;
  const box = { ...content, y: content.y + top, height: content.height - top };
  const reach = reachOf(flows);
  // One scale for all, also where a shorter nozzle works before a longer one.
  const scale = Math.min(...flows.map((field) => scaleIn(box, field, layout, reach)));
  return {
    name: `flow-${first.engine}-climb`,
    title,
    description: [title, subtitle, ...turnsOf(flows).map(flowFinding), ...foot, CAUTION].join(' '),
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
        description: `${title} ${subtitle} ${flowFinding(morph.field)} ${CAUTION}`,
        theme: options.theme,
        transparent: options.transparent ?? false,
        children: [
          ...around.nodes,
          ...flowPanel(drawnBetween(morph), 'pressure', box, layout, { reach, scale, marks: false }),
          ...readout(altitude, morph.field).flatMap((line, i) =>
            readoutLine(line, content.x, content.y + 0.85 * size + i * leading, size),
          ),
        ],
      };
    },
  };
}

/** The first field, the last, and those before and behind which it is another kind of flow. */
function turnsOf(flows: readonly FlowField[]): readonly FlowField[] {
  const kind = (field: FlowField | undefined): string =>
    field === undefined
      ? ''
      : [field.mode, field.leaves === null, field.mainShock === null, isMachDisk(field)].join();
  return flows.filter((field, k) => kind(field) !== kind(flows[k - 1]) || kind(field) !== kind(flows[k + 1]));
}

/** [m] behind the lip */
function reachOf(flows: readonly FlowField[]): number {
  const { radius } = flows[0]!.lip;
  const farthest = Math.max(0, ...flows.map(({ mainShock }) => mainShock?.behind ?? 0));
  return Math.min(REACH.most * radius, Math.max(REACH.least * radius, BEHIND_SHOCK * farthest));
}

/** Which field is shown, and the pressure of its air, which the key marks. */
function fieldText({ altitude, ambientPressure, thinnest }: FlowField): string {
  const air = formatPressure(ambientPressure);
  if (thinnest) return `field of the thinnest air, ${air}`;
  if (altitude === null) return `field of ${air}`;
  return `field of ${altitude === 0 ? 'the pad' : formatAltitude(altitude)}, ${air}`;
}

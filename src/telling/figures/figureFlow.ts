/** The whole flow of one engine at one place, without friction, as a figure with head and foot. */

import { CAUTION } from '../../answer/caution.ts';
import type { FlowField, Shown } from '../../answer/flow/index.ts';
import { capital } from '../../study/capital.ts';
import { layoutOf } from '../look/formats.ts';
import { formatPressure } from '../numbers/formatNumber.ts';
import type { Scene } from '../scene/scene.ts';
import { nearWords } from './flowNear.ts';
import { flowPanel, type OverFlow } from './flowPanel.ts';
import { separationWords } from './flowSeparation.ts';
import {
  brokeWords,
  endedWords,
  flightWords,
  flowFinding,
  INVISCID,
  insideBellWords,
  lawWords,
  troubleWords,
  WITHOUT_FRICTION,
} from './flowWords.ts';
import { frame } from './frame.ts';
import type { FigureOptions } from './options.ts';

const WORDS: Readonly<Record<Shown, string>> = {
  pressure: 'Pressure',
  mach: 'Mach number',
  temperature: 'Temperature',
  density: 'Density',
  speed: 'Speed',
  'density gradient': 'Change of density over a lip radius, the stronger the steeper',
};

export interface FlowFigureOptions extends FigureOptions, OverFlow {}

export function figureFlow(field: FlowField, shown: Shown, options: FlowFigureOptions): Scene {
  const layout = layoutOf(options.size);
  const title = options.title ?? flowFinding(field);
  const near = options.altitude === undefined ? '' : nearWords(field, options.altitude);
  const air =
    near === ''
      ? `${field.flightSpeed === 0 ? 'Still air' : 'Air'} of ${formatPressure(field.ambientPressure)}${field.thinnest ? ', the thinnest computed' : ''}`
      : capital(near);
  const flight = field.flightSpeed === 0 ? '' : ` ${flightWords(field)}`;
  const subtitle = `${WORDS[shown]}; inviscid, computed.${brokeWords(field)} ${air}.${flight}${linesWords(options)}`;
  const always = `${INVISCID}${brokeWords(field)}`;
  const around = frame(layout, { title, subtitle, foot: footOf(field), always }, options);
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: [title, subtitle, ...footOf(field), CAUTION].join(' '),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...flowPanel(field, shown, around.content, layout, options), ...around.nodes],
  };
}

function linesWords({ streamlines, drift }: OverFlow): string {
  if (drift !== undefined) return ' Specks drift with the gas; the longer, the faster.';
  return streamlines === undefined
    ? ''
    : ` Lines run with the gas, a ${ordinal(streamlines)} of it between each two.`;
}

const ORDINALS = [
  'whole',
  'half',
  'third',
  'quarter',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
];
const ordinal = (count: number): string => ORDINALS[count - 1] ?? `${count}th`;

function footOf(field: FlowField): readonly string[] {
  const { leaves, moment, ended, steady, steps, cells } = field;
  return [
    WITHOUT_FRICTION,
    lawWords(field),
    separationWords(field),
    leaves === null
      ? ''
      : `The gas is made to leave the wall at the estimate of ${leaves.by}${moment === undefined ? '' : ' for the full engine'}; dashed, the wall behind it.`,
    insideBellWords(field),
    steady || ended !== undefined
      ? ''
      : 'The jet does not come to rest: the mean over the last steps is drawn.',
    troubleWords(field),
    endedWords(field),
    `${field.fineness === 'coarse' ? 'Coarse mesh, ' : ''}${cells} cells, ${steps} steps${field.kernel === 'graphics processor' ? ' by a graphics processor' : ''}. Outside of the wall and its thickness notional. Model: flow-field.`,
  ].filter((words) => words !== '');
}

/** Pressure of a computed field along its axis and along the wall, with its shocks and where the published laws put them. */

import { CAUTION } from '../../answer/caution.ts';
import { type AlongLine, type FlowField, fieldAlong } from '../../answer/flow/index.ts';
import type { EngineAnswer } from '../../answer/model.ts';
import type { EngineStyle } from '../look/engineStyles.ts';
import { layoutOf } from '../look/formats.ts';
import { formatPressure } from '../numbers/formatNumber.ts';
import type { Scene } from '../scene/scene.ts';
import { type Course, coursePanel, isOnCourses } from './coursePanel.ts';
import { besideFlow } from './flowAlongMarks.ts';
import { measuredOnWall } from './flowMeasured.ts';
import { nearWords } from './flowNear.ts';
import { separationWords } from './flowSeparation.ts';
import {
  brokeWords,
  endedWords,
  flowFinding,
  INVISCID,
  insideBellWords,
  lawWords,
  WITHOUT_FRICTION,
} from './flowWords.ts';
import { frame } from './frame.ts';
import { measuredWords } from './measuredMarks.ts';
import type { FigureOptions } from './options.ts';

/** @param engine the same as its own models have it: the wall by characteristics, where it flows full */
export function figureFlowAlong(
  field: FlowField,
  engine: EngineAnswer | null,
  style: EngineStyle,
  options: FigureOptions,
): Scene {
  const layout = layoutOf(options.size);
  const title = options.title ?? flowFinding(field);
  const near = nearWords(field, options.altitude ?? field.altitude ?? 'vacuum');
  const mean = field.steady || field.ended !== undefined ? '' : ', a mean of a jet that flaps';
  const subtitle = `Pressure along the axis and the wall${mean}; inviscid, computed.${brokeWords(field)} Still air of ${formatPressure(field.ambientPressure)}${near === '' ? '' : `; ${near}`}.`;
  const byModel = isCompared(field) ? characteristicsOf(engine) : [];
  const courses = [...fieldAlong(field).flatMap((line) => courseOf(line, field, style)), ...byModel];
  const measured = measuredOnWall(field, options.measured ?? [], style);
  const foot = [
    WITHOUT_FRICTION,
    lawWords(field),
    insideBellWords(field),
    byModel.length > 0 ? 'Thin: the same wall by characteristics.' : '',
    separationWords(field),
    endedWords(field),
    field.fineness === 'coarse' ? 'Coarse mesh.' : '',
    ...measuredWords(measured, isOnCourses(courses)),
    measured.length > 0 ? 'The air in which it was measured may be another than this field’s.' : '',
    `Full marks: found in the field${field.moment === undefined ? '; hollow: by the published law' : ''}. Model: flow-field.`,
  ].filter((words) => words !== '');
  const always = `${INVISCID}${brokeWords(field)}`;
  const around = frame(layout, { title, subtitle, foot, always }, options);
  const lowest = Math.min(
    field.ambientPressure,
    ...courses.flatMap(({ points }) => points.map(({ y }) => y)),
  );
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: [title, subtitle, ...foot, CAUTION].join(' '),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [
      ...coursePanel(
        courses,
        {
          across: { quantity: 'wholeFlow.axial' },
          up: { quantity: 'wholeFlow.pressure', inRatios: true, from: ROOM_BELOW * lowest },
        },
        around.content,
        layout,
        measured,
        (plot) => besideFlow(field, plot, layout),
      ),
      ...around.nodes,
    ],
  };
}

/** The plot begins at this share of the lowest pressure. */
const ROOM_BELOW = 0.7;

/** As far as the picture of the field goes. */
function courseOf(
  { line, points }: AlongLine,
  { lip, seen }: FlowField,
  style: EngineStyle,
): readonly Course[] {
  const shown = points.filter(({ axial }) => axial <= lip.axial + seen);
  if (shown.length < 2) return [];
  const onAxis = line === 'axis';
  return [
    {
      words: onAxis ? 'on the axis' : `on the ${line}`,
      style: onAxis ? { ...style, colour: 'ink', dash: [] } : style,
      points: shown.map(({ axial, pressure }) => ({ x: axial, y: pressure })),
      width: onAxis ? 0.7 : 1,
    },
  ];
}

/** The answer holds the wall of a round nozzle flowing full, at rest. */
const isCompared = ({ form, leaves, mode, moment }: FlowField): boolean =>
  form === 'round' && leaves === null && mode === null && moment === undefined;

function characteristicsOf(engine: EngineAnswer | null): readonly Course[] {
  if (engine === null) return [];
  const behind = engine.wall.filter(({ axial }) => axial > 0);
  return behind.length < 2
    ? []
    : [
        {
          words: 'by characteristics',
          style: { order: 1, colour: 'ink-2', dash: [], marker: 'disc', band: 'tint', hatchAngle: 45 },
          points: behind.map(({ axial, pressure }) => ({ x: axial, y: pressure })),
          width: 0.35,
        },
      ];
}

/** Specific impulse, or thrust, from the pad to vacuum, as a figure with head and foot. */

import type { StudyAnswer } from '../../answer/model.ts';
import { layoutOf } from '../look/formats.ts';
import type { Box } from '../scene/box.ts';
import type { Scene, SceneNode } from '../scene/scene.ts';
import { rowsOf } from './conditions.ts';
import { overAltitudeDescription } from './describe.ts';
import { type DrawnEngine, drawnEngines } from './drawnEngines.ts';
import { footOf, heldEqualWords, impulseFinding, thrustFinding } from './findings.ts';
import { frame } from './frame.ts';
import { measuredWords, seriesFor } from './measuredMarks.ts';
import type { FigureOptions } from './options.ts';
import { altitudeOnAxis, OVER_ALTITUDE, type OverAltitudePanel, overAltitudePanel } from './overAltitude.ts';
import { differsFromFull, type OverAltitudeQuantity } from './overAltitudeCurves.ts';
import { criteriaSpan } from './separationSpan.ts';

export function impulseOverAltitude(answer: StudyAnswer, options: FigureOptions): Scene {
  return figure(answer, 'specificImpulse', options);
}

export function thrustOverAltitude(answer: StudyAnswer, options: FigureOptions): Scene {
  return figure(answer, 'thrust', options);
}

function figure(answer: StudyAnswer, quantity: OverAltitudeQuantity, options: FigureOptions): Scene {
  const { scene, head, panel } = overAltitudeFigure(answer, quantity, options);
  return {
    ...scene,
    children: [
      ...head,
      ...panel.nodes,
      ...(options.altitude === undefined
        ? []
        : [{ kind: 'group' as const, name: 'cursor', children: panel.cursor(options.altitude) }]),
      ...panel.labels,
    ],
  };
}

/** The figure in its parts, for those who move one of them. */
export interface OverAltitudeFigure {
  /** All but what is drawn. */ readonly scene: Omit<Scene, 'children'>;
  readonly head: readonly SceneNode[];
  readonly panel: OverAltitudePanel;
  /** Room left free above the panel. */ readonly above: Box;
}

/** @param leftFree [px] above the panel, for what the caller puts there */
export function overAltitudeFigure(
  answer: StudyAnswer,
  quantity: OverAltitudeQuantity,
  options: FigureOptions,
  leftFree = 0,
): OverAltitudeFigure {
  const layout = layoutOf(options.size);
  const { engines, leftOut } = drawnEngines(answer, 4);
  const what = quantity === 'thrust' ? 'Thrust' : 'Specific impulse';
  const title = options.title ?? (quantity === 'thrust' ? thrustFinding(answer) : impulseFinding(answer));
  const around = frame(
    layout,
    {
      title,
      subtitle: `${what} from the pad to vacuum`,
      foot: footOf(
        answer,
        engines,
        leftOut,
        [
          ...measuredWords(
            seriesFor(options.measured, engines, quantity, OVER_ALTITUDE),
            (at, place) => altitudeOnAxis(at, place) !== null,
          ),
          ...dashWords(engines, options),
          heldEqualWords(answer),
        ],
        ['nozzle-contour'],
      ),
    },
    options,
  );
  const { content } = around;
  const box = { ...content, y: content.y + leftFree, height: content.height - leftFree };
  return {
    scene: {
      width: layout.width,
      height: layout.height,
      title,
      description: overAltitudeDescription(answer, quantity, options),
      theme: options.theme,
      transparent: options.transparent ?? false,
    },
    head: around.nodes,
    panel: overAltitudePanel(answer, quantity, box, layout, options, layout.axisRight),
    above: { ...content, height: leftFree },
  };
}

/** What the thin dashes and the faint bands mean, where there are any. */
function dashWords(engines: readonly DrawnEngine[], options: FigureOptions): string[] {
  const rows = engines.flatMap(({ engine }) => rowsOf(engine, options));
  return [
    ...(rows.some(differsFromFull) ? ['Thin dashes: if the gas filled the nozzle.'] : []),
    ...(rows.some((row) => criteriaSpan('thrust', row) !== null)
      ? ['Faint band: between the criteria of separation.']
      : []),
  ];
}

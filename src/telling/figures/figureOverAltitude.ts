/** Specific impulse, or thrust, from the pad to vacuum, as a figure with head and foot. */

import type { StudyAnswer } from '../../answer/model.ts';
import { layoutOf } from '../look/formats.ts';
import type { Scene } from '../scene/scene.ts';
import { rowsOf } from './conditions.ts';
import { overAltitudeDescription } from './describe.ts';
import { type DrawnEngine, drawnEngines } from './drawnEngines.ts';
import { footOf, heldEqualWords, impulseFinding, thrustFinding } from './findings.ts';
import { frame } from './frame.ts';
import type { FigureOptions } from './options.ts';
import { overAltitudePanel } from './overAltitude.ts';
import { differsFromFull, type OverAltitudeQuantity } from './overAltitudeCurves.ts';
import { criteriaSpan } from './separationSpan.ts';

export function impulseOverAltitude(answer: StudyAnswer, options: FigureOptions): Scene {
  return figure(answer, 'specificImpulse', options.title ?? impulseFinding(answer), options);
}

export function thrustOverAltitude(answer: StudyAnswer, options: FigureOptions): Scene {
  return figure(answer, 'thrust', options.title ?? thrustFinding(answer), options);
}

function figure(
  answer: StudyAnswer,
  quantity: OverAltitudeQuantity,
  title: string,
  options: FigureOptions,
): Scene {
  const layout = layoutOf(options.size);
  const { engines, leftOut } = drawnEngines(answer, 4);
  const what = quantity === 'thrust' ? 'Thrust' : 'Specific impulse';
  const around = frame(
    layout,
    {
      title,
      subtitle: `${what} from the pad to vacuum`,
      foot: footOf(
        answer,
        engines,
        leftOut,
        [...dashWords(engines, options), heldEqualWords(answer)],
        ['nozzle-contour'],
      ),
    },
    options,
  );
  const panel = overAltitudePanel(answer, quantity, around.content, layout, options, layout.axisRight);
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: overAltitudeDescription(answer, quantity, options),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [
      ...around.nodes,
      ...panel.nodes,
      ...(options.altitude === undefined
        ? []
        : [{ kind: 'group' as const, name: 'cursor', children: panel.cursor(options.altitude) }]),
      ...panel.labels,
    ],
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

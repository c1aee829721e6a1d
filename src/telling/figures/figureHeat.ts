/** Heat flux along the walls by both models, from the injector face to the lip. */

import type { HeatAnswer } from '../../answer/heat/model.ts';
import type { StudyAnswer } from '../../answer/model.ts';
import { capital } from '../../study/capital.ts';
import { layoutOf } from '../look/formats.ts';
import { formatValue } from '../numbers/formatNumber.ts';
import type { Scene } from '../scene/scene.ts';
import { type Course, coursePanel, isOnCourses } from './coursePanel.ts';
import { type DrawnEngine, drawnEngines } from './drawnEngines.ts';
import type { FigureRow } from './figureTable.ts';
import { frame } from './frame.ts';
import { measuredWords, seriesFor } from './measuredMarks.ts';
import type { FigureOptions } from './options.ts';

type Heated = DrawnEngine & { readonly heat: HeatAnswer };

function heated(answer: StudyAnswer, options: Pick<FigureOptions, 'styles'>): readonly Heated[] {
  if (Object.keys(answer.engines).length === 0) return [];
  return drawnEngines(answer, 4, options.styles).engines.flatMap((drawn) => {
    const { heat } = drawn.engine;
    return heat === null ? [] : [{ ...drawn, heat }];
  });
}

/** The wall with the greatest flux. */
const hottest = ({ walls, peakOn }: HeatAnswer) => walls.find(({ name }) => name === peakOn) ?? walls[0]!;

function finding(engines: readonly Heated[]): string {
  const parts = engines.map(
    ({ engine, heat }) =>
      `up to ${formatValue('heat.peakFlux', heat.peakFlux)} into the ${heat.peakOn} of ${engine.name}`,
  );
  return capital(`${parts.join(', ')}.`);
}

/** Null where no engine of the study has walls that heat. */
export function figureHeat(answer: StudyAnswer, options: FigureOptions): Scene | null {
  const engines = heated(answer, options).slice(0, 2);
  if (engines.length === 0) return null;
  const layout = layoutOf(options.size);
  const title = options.title ?? finding(engines);
  const walls = [
    ...new Set(engines.map(({ heat }) => formatValue('heat.wallTemperature', heat.wallTemperature))),
  ];
  const courses = engines.flatMap(({ engine, style, heat }): readonly Course[] => {
    const { points } = hottest(heat);
    return [
      {
        words: `${engine.name}, by Bartz`,
        style,
        points: points.map(({ axial, flux }) => ({ x: axial, y: flux })),
        width: 1,
      },
      {
        words: `${engine.name}, by the layer`,
        style,
        points: points.map(({ axial, layerFlux }) => ({ x: axial, y: layerFlux })),
        width: 0.45,
      },
    ];
  });
  const measured = ['heat.flux', 'heat.layerFlux'].flatMap((quantity) =>
    seriesFor(options.measured, engines, quantity, ['wall.axial']),
  );
  const around = frame(
    layout,
    {
      title,
      subtitle: `Heat flux to the hottest wall, full pressure, the wall supposed at ${walls.join(' and ')}; two models side by side`,
      foot: [
        'Published scatter of Bartz’s equation, −45 to +20 %, not drawn. Models: heat-gas-side, boundary-layer.',
        ...measuredWords(measured, isOnCourses(courses)),
      ],
    },
    options,
  );
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: [...engines.map(wordsOf), answer.caution].join(' '),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [
      ...around.nodes,
      ...coursePanel(
        courses,
        { across: { quantity: 'wall.axial' }, up: { quantity: 'heat.flux', from: 0 } },
        around.content,
        layout,
        measured,
      ),
    ],
  };
}

function wordsOf({ engine, heat }: Heated): string {
  return `${engine.name}: ${formatValue('heat.total', heat.total)} to the walls by Bartz’s equation, ${formatValue('heat.layerTotal', heat.layerTotal)} by the integral layer; greatest flux ${formatValue('heat.peakFlux', heat.peakFlux)} and ${formatValue('heat.layerPeakFlux', heat.layerPeakFlux)}, on the ${heat.peakOn}.`;
}

export function heatRows(answer: StudyAnswer): readonly FigureRow[] {
  return heated(answer, {}).flatMap(({ engine: { name: of }, heat }) =>
    heat.walls.flatMap(({ name: which, points }) =>
      points.flatMap(({ axial, flux, layerFlux, radiationFlux }): readonly FigureRow[] => {
        const at = { quantity: 'wall.axial', value: axial };
        return [
          { of, quantity: 'heat.flux', which, at, value: flux },
          { of, quantity: 'heat.layerFlux', which, at, value: layerFlux },
          { of, quantity: 'heat.radiationFlux', which, at, value: radiationFlux },
        ];
      }),
    ),
  );
}

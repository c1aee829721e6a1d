/** One quantity over two inputs, as a figure with head and foot. */

import { CAUTION } from '../../answer/caution.ts';
import { mapFindings, mapHeadline, nameOf } from '../../answer/sweeps/index.ts';
import type { SweepMap } from '../../answer/sweeps/model.ts';
import { showValue } from '../../answer/sweeps/shown.ts';
import { layoutOf } from '../look/formats.ts';
import type { Scene } from '../scene/scene.ts';
import { frame } from './frame.ts';
import { mapPanel } from './mapPanel.ts';
import type { FigureOptions } from './options.ts';
import { joined, nowWords } from './sweepWords.ts';

export function figureMap(map: SweepMap, options: FigureOptions): Scene {
  const layout = layoutOf(options.size);
  const title = options.title ?? map.request.title ?? joined(findingOf(map), [map], ranges(map));
  const around = frame(
    layout,
    {
      title,
      subtitle: joined(subtitleOf(map, title), [map], ranges(map)),
      foot: [
        ...(map.provisional ? ['Still being worked out.'] : []),
        ...map.holes.map(({ problem }) => `Hatched: ${problem.what}`),
        ...nowWords(ranges(map)),
        ...map.held.lines,
        'Spread not drawn.',
        ...(map.origin.models.length > 0 ? [`Models: ${map.origin.models.join(', ')}.`] : []),
      ],
    },
    options,
  );
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: mapDescription(map),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...around.nodes, ...mapPanel(map, around.content, layout, options.styles)],
  };
}

/** The best place inside the map, else how far the values reach: a best place on the edge is one of the edge. */
function findingOf(map: SweepMap): string {
  const { highest, lowest } = map;
  if (highest === null || lowest === null || [highest, lowest].some(({ at }) => at === 'inside')) {
    return mapHeadline(map);
  }
  const [low, high] = [lowest, highest].map(({ value }) => showValue(map, value).text);
  return `${nameOf(map)} lies between ${low} and ${high} here.`;
}

const ranges = (map: SweepMap) => [map.rangeAcross, map.rangeUp];

function subtitleOf(map: SweepMap, title: string): string {
  const what = title.startsWith(nameOf(map)) ? 'Lines of equal value. ' : `Lines of equal ${map.words}. `;
  return `${what}${map.held.short}`;
}

export function mapDescription(map: SweepMap): string {
  return [
    `Lines of equal ${map.words} over ${map.rangeAcross.label} and ${map.rangeUp.label}.`,
    ...mapFindings(map),
    map.held.short,
    ...map.held.lines,
    CAUTION,
  ].join(' ');
}

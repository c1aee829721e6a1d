/** From the ideal to the delivered specific impulse in vacuum: a bar an item, with what its published scatter leaves open. */

import type { StudyAnswer } from '../../answer/model.ts';
import { layoutOf } from '../look/formats.ts';
import { formatShare, formatValue } from '../numbers/formatNumber.ts';
import type { Scene } from '../scene/scene.ts';
import { barRows } from './barRows.ts';
import { type DrawnEngine, drawnEngines } from './drawnEngines.ts';
import type { FigureRow } from './figureTable.ts';
import { frame } from './frame.ts';
import type { FigureOptions } from './options.ts';
import { styleNames } from './styleNames.ts';

/** Items in the order in which the engines tell them. */
function itemNames(engines: readonly DrawnEngine[]): readonly string[] {
  return [...new Set(engines.flatMap(({ engine }) => engine.losses.items.map(({ name }) => name)))];
}

function finding([first, second]: readonly DrawnEngine[]): string {
  const words = ({ engine: { name, losses } }: DrawnEngine): string =>
    `${name} delivers ${formatValue('losses.delivered', losses.delivered)} of ideal ${formatValue('losses.ideal', losses.ideal)}`;
  return `${[first, second].flatMap((one) => (one === undefined ? [] : [words(one)])).join('; ')}.`;
}

/** Null where no engine has a loss budget worth drawing. */
export function figureLosses(answer: StudyAnswer, options: FigureOptions): Scene | null {
  if (Object.keys(answer.engines).length === 0) return null;
  const layout = layoutOf(options.size);
  const engines = drawnEngines(answer, 2, options.styles).engines;
  const title = options.title ?? finding(engines);
  const around = frame(
    layout,
    {
      title,
      subtitle: 'What is lost of the specific impulse in vacuum, item by item, flowing full',
      foot: [
        'Thin stroke: 95 % of the published scatter of an item. Below nothing: it brings something back.',
        'Models: losses, delivered.',
      ],
    },
    options,
  );
  const names = styleNames(
    engines.map(({ engine, style }) => ({
      style,
      name: engine.name,
      more: `${formatValue('losses.ideal', engine.losses.ideal)} ideal, ${formatValue('losses.delivered', engine.losses.delivered)} delivered`,
    })),
    around.content,
    layout,
  );
  const rows = itemNames(engines).map((label) => ({
    label,
    bars: engines.flatMap(({ engine, style }) => {
      const item = engine.losses.items.find(({ name }) => name === label);
      if (item === undefined) return [];
      const { share, low, high, specificImpulse } = item;
      const text = `${formatValue('losses.items.specificImpulse', specificImpulse)}, ${formatShare(share)}`;
      return [{ style, value: share, low, high, text }];
    }),
  }));
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: [...engines.map(lossDescription), answer.caution].join(' '),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...around.nodes, ...names.nodes, ...barRows(rows, names.rest, layout)],
  };
}

function lossDescription({ engine: { name, losses } }: DrawnEngine): string {
  const items = losses.items.map(
    (item) => `${item.name} ${formatValue('losses.items.specificImpulse', item.specificImpulse)}`,
  );
  return `${name}: ideal ${formatValue('losses.ideal', losses.ideal)}; less ${items.join(', ')}; delivered ${formatValue('losses.delivered', losses.delivered)}.`;
}

export function lossRows(answer: StudyAnswer): readonly FigureRow[] {
  return Object.values(answer.engines).flatMap(({ name: of, losses }): readonly FigureRow[] => [
    { of, quantity: 'losses.ideal', value: losses.ideal },
    ...losses.items.flatMap(({ name, specificImpulse, share, low, high }): readonly FigureRow[] => [
      { of, quantity: 'losses.items.specificImpulse', which: name, value: specificImpulse },
      { of, quantity: 'losses.items.share', which: name, value: share, low, high },
    ]),
    { of, quantity: 'losses.delivered', value: losses.delivered },
  ]);
}

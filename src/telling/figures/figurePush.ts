/** Where the push acts: an arrow a surface, from the injector face to the lip, each beginning where the sum so far ends. */

import type { StudyAnswer, ThrustPartAnswer } from '../../answer/model.ts';
import { type Layout, layoutOf } from '../look/formats.ts';
import { formatSpoken, formatValue } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import type { Scene, SceneNode } from '../scene/scene.ts';
import { ambientAt, conditionAt, rowsOf } from './conditions.ts';
import { airWords } from './cutPanel.ts';
import { drawnEngines } from './drawnEngines.ts';
import type { FigureRow } from './figureTable.ts';
import { whereWords } from './findings.ts';
import { frame } from './frame.ts';
import type { Altitude, FigureOptions } from './options.ts';
import { columnFor, type PushedEngine, pushPanel, rowsBelow, spanOfSums } from './pushPanel.ts';

/** What is left of the sum of all surfaces behind losses [N]; null: none. */
interface Pushed extends PushedEngine {
  readonly thrust: number | null;
}

/** Engines whose thrust has parts here, the forces as they are at an altitude. */
function pushed(answer: StudyAnswer, altitude: Altitude, options: FigureOptions): readonly Pushed[] {
  const ambient = ambientAt(altitude);
  return drawnEngines(answer, 4, options.styles).engines.flatMap((drawn) => {
    const { thrustParts, thrust } = conditionAt(rowsOf(drawn.engine, options), ambient);
    return thrustParts.length === 0 ? [] : [{ ...drawn, parts: thrustParts, thrust }];
  });
}

const sumOf = (parts: readonly ThrustPartAnswer[]): number =>
  parts.reduce((sum, { force }) => sum + force, 0);

function finding(engines: readonly PushedEngine[], altitude: Altitude): string {
  const force = (value: number): string => formatSpoken('thrustParts.force', value);
  const parts = engines.map(({ engine, parts: all }, i) => {
    const pull = all.filter((part) => part.force < 0).reduce((sum, part) => sum + part.force, 0);
    const push = force(sumOf(all) - pull);
    return i === 0
      ? `the gas pushes ${engine.name} with ${push} and pulls it back with ${force(-pull)}`
      : `${engine.name} with ${push} and ${force(-pull)}`;
  });
  return `${whereWords(altitude)} ${parts.join('; ')}.`;
}

/** Null where no engine of the study has its thrust by surfaces there. */
export function figurePush(answer: StudyAnswer, options: FigureOptions): Scene | null {
  if (Object.keys(answer.engines).length === 0) return null;
  const layout = layoutOf(options.size);
  const altitude = options.altitude ?? 0;
  const engines = pushed(answer, altitude, options).slice(0, 2);
  if (engines.length === 0) return null;
  const title = options.title ?? finding(engines, altitude);
  const around = frame(
    layout,
    {
      title,
      subtitle: `${airWords(altitude)}. Each arrow begins where the sum of those before it ends; filled pushes, hollow pulls back`,
      foot: [
        'Gas inside less air outside on each surface. One scale for all.',
        lossWords(engines),
        'Models: nozzle-thrust. Spread not drawn.',
      ].filter((words) => words !== ''),
    },
    options,
  );
  const { boxes, numbered } = placesFor(engines, around.content, layout);
  const span = spanOfSums(engines);
  const rows = Math.max(
    ...engines.map((one, i) => rowsBelow(one, boxes[i]!.width, layout.type.foot, numbered)),
  );
  const ruler = Math.min(...boxes.map(({ height }) => height));
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: [
      `Push of the gas surface by surface, ${whereWords(altitude).toLowerCase()}.`,
      ...engines.map(wordsOf),
      answer.caution,
    ].join(' '),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [
      ...around.nodes,
      ...engines.flatMap((one, i): readonly SceneNode[] =>
        pushPanel(one, { ...boxes[i]!, height: ruler }, span, { ...layout, numbered, rows }),
      ),
    ],
  };
}

interface Places {
  readonly boxes: readonly Box[];
  readonly numbered: boolean;
}

/**
 * Beside each other where that leaves every surface room for its longest word; below each other where there is
 * height for it; else beside each other, the surfaces by number.
 */
function placesFor(engines: readonly PushedEngine[], box: Box, { type }: Layout): Places {
  const column = Math.max(...engines.map((one) => columnFor(one, type.foot)));
  const counts = engines.map(({ parts }) => parts.length + 1);
  const all = counts.reduce((sum, count) => sum + count, 0);
  const gap = engines.length > 1 ? 1.2 * type.label : 0;
  const each = (box.width - gap) / all;
  if (each < column && engines.length > 1 && box.height > 0.9 * box.width) {
    const height = (box.height - 0.6 * type.label) / 2;
    return {
      boxes: [box, { ...box, y: box.y + height + 0.6 * type.label }].map((place) => ({ ...place, height })),
      numbered: box.width / Math.max(...counts) < column,
    };
  }
  let x = box.x;
  const boxes = counts.map((count) => {
    const place = { ...box, x, width: count * each };
    x += place.width + gap;
    return place;
  });
  return { boxes, numbered: each < column };
}

/** Of the thrust: a smaller difference is none that can be read. */
const READABLE = 5e-4;

/** `with losses 691.3 kN`; null where the model of the nozzle has none, or no thrust. */
function withLosses({ parts, thrust }: Pushed): string | null {
  if (thrust === null || Math.abs(sumOf(parts) - thrust) < READABLE * thrust) return null;
  return formatValue('thrust', thrust);
}

function lossWords(engines: readonly Pushed[]): string {
  const told = engines.flatMap((one) => {
    const thrust = withLosses(one);
    return thrust === null ? [] : [`${one.engine.name} has ${thrust}`];
  });
  return told.length === 0 ? '' : `Before losses, with which ${told.join(', ')}.`;
}

function wordsOf(one: Pushed): string {
  const { engine, parts } = one;
  const thrust = withLosses(one);
  const all = parts.map(({ surface, force }) => `${surface} ${formatValue('thrustParts.force', force)}`);
  return `${engine.name}: ${all.join(', ')}; sum ${formatValue('thrustParts.sum', sumOf(parts))}${thrust === null ? '' : `, with losses ${thrust}`}.`;
}

export function pushRows(answer: StudyAnswer, options: FigureOptions): readonly FigureRow[] {
  const altitude = options.altitude ?? 0;
  return pushed(answer, altitude, options).flatMap(({ engine: { name: of }, parts }) => {
    const at = { quantity: 'ambientPressure', value: ambientAt(altitude) };
    return [
      ...parts.map(({ surface, force }) => ({
        of,
        quantity: 'thrustParts.force',
        which: surface,
        at,
        value: force,
      })),
      { of, quantity: 'thrustParts.sum', which: 'all surfaces', at, value: sumOf(parts) },
    ];
  });
}

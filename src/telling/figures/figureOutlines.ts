/** The engines' outlines to scale beside a person of 1.75 m. */

import type { StudyAnswer } from '../../answer/model.ts';
import { layoutOf } from '../look/formats.ts';
import { formatLength } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import { polyline, segment } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type Scene, type SceneNode } from '../scene/scene.ts';
import { type DrawnEngine, drawnEngines } from './drawnEngines.ts';
import { footOf, sizeFinding } from './findings.ts';
import { frame } from './frame.ts';
import { type Words, wordsAt, wordsSize } from './marks.ts';
import type { FigureOptions } from './options.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';

/** [m] */
const PERSON = 1.75;

/** Models that change nothing of an outline but its size. */
const NOT_OF_SHAPE: readonly string[] = [
  'air',
  'flow-characteristics',
  'gas-burning-chamber',
  'gas-equilibrium',
  'gas-heated',
  'gas-perfect',
  'losses',
  'nozzle-separation',
  'nozzle-thrust',
];

export function sizeOutlines(answer: StudyAnswer, options: FigureOptions): Scene {
  const layout = layoutOf(options.size);
  const { engines, leftOut } = drawnEngines(answer, 4);
  const title = options.title ?? sizeFinding(engines);
  const notional = engines.some(({ engine }) => engine.contourIs === 'notional');
  const around = frame(
    layout,
    {
      title,
      subtitle: `To one scale, beside a person of 1.75 m${notional ? '; dashed: the model has no wall of its own' : ''}`,
      foot: footOf(answer, engines, leftOut, [], NOT_OF_SHAPE),
    },
    options,
  );
  const sizes = engines.map(
    ({ engine }) =>
      `${engine.name}: ${formatLength(engine.contour.totalLength)} long, ${formatLength(engine.exit.diameter)} wide at the lip.`,
  );
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: `Outlines to one scale beside a person of 1.75 m. ${sizes.join(' ')} ${answer.caution}`,
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...panel(engines, around.content, layout), ...around.nodes],
  };
}

function panel(engines: readonly DrawnEngine[], box: Box, style: PanelStyle): SceneNode[] {
  const { type, line } = style;
  const labels = engines.map(({ engine, style: own }): Words[] => [
    { text: plainText(engine.name), size: type.label, weight: 700, fill: own.colour },
    {
      text: `${formatLength(engine.contour.totalLength)} long`,
      size: 0.9 * type.label,
      weight: 400,
      fill: 'ink',
    },
    { text: `${formatLength(engine.exit.diameter)} wide`, size: 0.9 * type.label, weight: 400, fill: 'ink' },
  ]);
  const labelHeight = Math.max(...labels.map((words) => wordsSize(words).height)) + 0.5 * type.label;
  const tallest = Math.max(PERSON, ...engines.map(({ engine }) => engine.contour.totalLength));
  const widths = engines.map(
    ({ engine }) => 2 * Math.max(engine.contour.exitRadius, engine.contour.chamberRadius),
  );
  const personWords: Words[] = [{ text: '1.75\u00a0m', size: 0.9 * type.label, weight: 400, fill: 'ink-2' }];
  const all = [...widths, 0.32 * PERSON];
  const worded = [...labels, personWords].map((words) => wordsSize(words).width);
  const gap = 0.1 * box.width;
  const scale = scaleFor(all, worded, box.width - gap * engines.length, (box.height - labelHeight) / tallest);
  const slots = slotsOf(all, worded, scale);
  const ground = box.y + box.height - labelHeight;
  let left = box.x + 0.5 * (box.width - sum(slots) - gap * engines.length);
  const nodes: SceneNode[] = [];
  engines.forEach((drawn, i) => {
    const width = slots[i] ?? 0;
    const axis = left + width / 2;
    nodes.push(
      outline(drawn, axis, ground, scale, style),
      ...wordsAt(labels[i] ?? [], axis, ground + 0.5 * type.label, 'middle'),
    );
    left += width + gap;
  });
  nodes.push(
    person(left + (slots.at(-1) ?? 0) / 2, ground, scale * PERSON),
    ...wordsAt(personWords, left + (slots.at(-1) ?? 0) / 2, ground + 0.5 * type.label, 'middle'),
    {
      kind: 'path',
      d: segment(box.x, ground, box.x + box.width, ground),
      stroke: 'rule-2',
      strokeWidth: line.leader,
    },
  );
  return nodes;
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Room for each drawing or the words below it, whichever is wider. */
function slotsOf(widths: readonly number[], words: readonly number[], scale: number): number[] {
  return widths.map((width, i) => Math.max(scale * width, words[i] ?? 0));
}

/** The largest scale [px/m] up to `most` at which the slots fit beside each other. */
function scaleFor(widths: readonly number[], words: readonly number[], room: number, most: number): number {
  if (sum(slotsOf(widths, words, most)) <= room) return most;
  let [fits, over] = [0, most];
  for (let i = 0; i < 30; i++) {
    const middle = (fits + over) / 2;
    if (sum(slotsOf(widths, words, middle)) <= room) fits = middle;
    else over = middle;
  }
  // Words alone may ask for more than there is; the drawing must still be seen.
  return Math.max(fits, 0.25 * most);
}

/** The wall as it is seen from outside: of a plug engine the cowl, then what stands out of it. */
function wallSeen({ contour }: DrawnEngine['engine']): readonly { axial: number; radius: number }[] {
  const lip = contour.wall[contour.wall.length - 1]!;
  const plug = (contour.plug?.wall ?? []).filter(({ part, axial }) => part === 'nozzle' && axial > lip.axial);
  return [...contour.wall, ...plug];
}

/** Standing on its lip, as engines stand in a hall. */
function outline(
  { engine, style: own }: DrawnEngine,
  axis: number,
  ground: number,
  scale: number,
  { line }: PanelStyle,
): SceneNode {
  const lip = engine.contour.nozzleLength;
  const side = (sign: 1 | -1) =>
    wallSeen(engine).map((point) => ({
      x: axis + sign * point.radius * scale,
      y: ground - (lip - point.axial) * scale,
    }));
  const width = engine.contourIs === 'shape' ? line.metal : 0.6 * line.metal;
  return group(`${own.colour} outline`, [
    {
      kind: 'path',
      d: polyline([...side(-1).reverse(), ...side(1)]),
      fill: own.colour,
      fillOpacity: 0.12,
      stroke: own.colour,
      strokeWidth: width,
      join: 'round',
      ...(engine.contourIs === 'shape' ? {} : { dash: [3, 2].map((length) => length * width) }),
    },
  ]);
}

/** A standing person as head and one closed body, `height` px tall. */
function person(x: number, ground: number, height: number): SceneNode {
  const u = height / 8;
  const body = (points: readonly (readonly [number, number])[]): string =>
    polyline(
      [...points, ...[...points].reverse().map(([dx, dy]) => [-dx, dy] as const)].map(([dx, dy]) => ({
        x: x + dx * u,
        y: ground - dy * u,
      })),
      true,
    );
  return group('person', [
    { kind: 'circle', x, y: ground - 7.45 * u, radius: 0.52 * u, fill: 'ink-3' },
    {
      kind: 'path',
      d: body([
        [0.22, 6.85],
        [0.95, 6.55],
        [1.12, 6.2],
        [1.2, 3.7],
        [0.92, 3.65],
        [0.84, 5.5],
        [0.74, 3.9],
        [0.62, 0],
        [0.14, 0],
        [0.05, 3.4],
      ]),
      fill: 'ink-3',
    },
  ]);
}

/** Two engines cut open side by side at an altitude, as a figure with head and foot. */

import type { StudyAnswer } from '../../answer/model.ts';
import type { Tint } from '../look/flowRamps.ts';
import { layoutOf } from '../look/formats.ts';
import { formatSpoken } from '../numbers/formatNumber.ts';
import type { Scene } from '../scene/scene.ts';
import { ambientAt, conditionAt, rowsOf } from './conditions.ts';
import { airWords, cutPanel } from './cutPanel.ts';
import { cutDescription } from './describe.ts';
import { type DrawnEngine, drawnEngines } from './drawnEngines.ts';
import { cutFinding, footOf, heldEqualWords } from './findings.ts';
import { frame } from './frame.ts';
import type { Altitude, FigureOptions } from './options.ts';

export function cutView(answer: StudyAnswer, options: FigureOptions): Scene {
  const layout = layoutOf(options.size);
  const altitude = options.altitude ?? 0;
  const { engines, leftOut } = drawnEngines(answer, 2);
  const atExit = exitFinding(engines, options.tint);
  const title = options.title ?? atExit ?? cutFinding(engines, altitude, options);
  const around = frame(
    layout,
    {
      title,
      subtitle: subtitleOf(engines, altitude, options),
      foot: footOf(
        answer,
        engines,
        leftOut,
        [heldEqualWords(answer), ...notionalWords(engines)],
        ['nozzle-thrust'],
      ),
    },
    options,
  );
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: [
      ...(atExit === null ? [] : [`${colourWords(engines, options.tint)}. ${atExit}`]),
      cutDescription(answer, altitude, options),
    ].join(' '),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...cutPanel(answer, altitude, around.content, layout, options).nodes, ...around.nodes],
  };
}

/** What the gas has reached at the exit, of what it is drawn by; null for pressure, which is told against the air. */
function exitFinding(engines: readonly DrawnEngine[], tint: Tint = 'pressure'): string | null {
  if (tint === 'pressure') return null;
  const key = tint === 'speed' ? 'velocity' : tint;
  const told = engines.flatMap(({ engine }) => {
    const value = engine.exit[key];
    if (value === null) return [];
    const words = formatSpoken(`exit.${key}`, value);
    return [{ name: engine.name, words: tint === 'mach' ? `Mach ${words.trim()}` : words }];
  });
  const [first, ...rest] = told;
  if (first === undefined) return null;
  return `${first.name}’s gas leaves the nozzle at ${first.words}${rest.map(({ name, words }) => `, ${name}’s at ${words}`).join('')}.`;
}

const COLOUR: Readonly<Record<Tint, string>> = {
  pressure: 'pressure',
  mach: 'Mach number',
  temperature: 'temperature',
  speed: 'speed',
};

/** Which outlines are no wall of the model's own. */
export function notionalWords(engines: readonly DrawnEngine[]): string[] {
  const names = engines
    .filter(({ engine }) => engine.contourIs === 'notional')
    .map(({ engine }) => engine.name);
  return names.length === 0 ? [] : [`Dashed outline notional: ${names.join(', ')}.`];
}

/** What the colour means, and what is not computed. */
function subtitleOf(engines: readonly DrawnEngine[], altitude: Altitude, options: FigureOptions): string {
  const ambient = ambientAt(altitude);
  const separated = engines.some(
    ({ engine }) => conditionAt(rowsOf(engine, options), ambient).flow.state === 'separated',
  );
  return [
    // A title of the user's own need not say where it is.
    ...(options.title === undefined ? [] : [airWords(altitude)]),
    colourWords(engines, options.tint),
    separated ? 'plume and hatched part not computed' : 'dashed plume a sketch',
  ].join('; ');
}

export function colourWords(engines: readonly DrawnEngine[], tint: Tint = 'pressure'): string {
  return engines.some(({ engine }) => engine.contour.plug !== undefined)
    ? `Colour: ${COLOUR[tint]}, on the plug that of the field, else the one-dimensional mean`
    : `Colour: one-dimensional mean ${COLOUR[tint]}`;
}

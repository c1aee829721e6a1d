/** Two engines cut open side by side at an altitude, as a figure with head and foot. */

import type { StudyAnswer } from '../../answer/model.ts';
import { layoutOf } from '../look/formats.ts';
import type { Scene } from '../scene/scene.ts';
import { airWords, cutPanel } from './cutPanel.ts';
import { cutDescription } from './describe.ts';
import { drawnEngines } from './drawnEngines.ts';
import { cutFinding, footOf, heldEqualWords } from './findings.ts';
import { frame } from './frame.ts';
import type { FigureOptions } from './options.ts';

export function cutView(answer: StudyAnswer, options: FigureOptions): Scene {
  const layout = layoutOf(options.size);
  const altitude = options.altitude ?? 0;
  const { engines, leftOut } = drawnEngines(answer, 2);
  const title = options.title ?? cutFinding(engines, altitude, options);
  const around = frame(layout, {
    title,
    subtitle: `${airWords(altitude)}. Colour: one-dimensional mean pressure; plume not computed.`,
    foot: footOf(answer, engines, leftOut, [heldEqualWords(answer)]),
  });
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: cutDescription(answer, altitude, options),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...cutPanel(answer, altitude, around.content, layout, options).nodes, ...around.nodes],
  };
}

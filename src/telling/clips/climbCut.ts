/** Engines cut open while they climb: every frame computed for its own altitude, everything else standing still. */

import type { SolvedStudy } from '../../answer/solve.ts';
import { type CutPlace, cutPanel } from '../figures/cutPanel.ts';
import { cutDescription } from '../figures/describe.ts';
import { drawnEngines } from '../figures/drawnEngines.ts';
import { colourWords, notionalWords } from '../figures/figureCutView.ts';
import { footOf, heldEqualWords } from '../figures/findings.ts';
import { frame } from '../figures/frame.ts';
import type { Altitude } from '../figures/options.ts';
import { layoutOf } from '../look/formats.ts';
import type { Scene } from '../scene/scene.ts';
import { altitudeBetween } from './climbPath.ts';
import type { Movement } from './clip.ts';
import { liveEngines } from './liveEngines.ts';
import type { ClimbOptions } from './options.ts';
import { plumbLine, plumbWidth } from './plumbLine.ts';
import { altitudeReadout, readoutLine } from './readout.ts';

/** Places looked at beforehand, so that room is kept for the words of all. */
const LOOKED_AT = 41;

export function climbCut(solved: SolvedStudy, options: ClimbOptions): Movement {
  const { answer } = solved;
  const { from, to } = options;
  const layout = layoutOf(options.size);
  const live = liveEngines(solved);
  const { engines, leftOut } = drawnEngines(answer, 2, options.styles);
  const names = engines.map(({ engine }) => engine.name).join(' and ');
  const title = options.title ?? `${names} ${wayWords(from, to)}.`;
  const alsoAt = Array.from({ length: LOOKED_AT }, (_, i): CutPlace => {
    const altitude = altitudeBetween(from, to, i / (LOOKED_AT - 1));
    return { altitude, rows: live.rowsAt(altitude) };
  });
  const separates = alsoAt.some(({ rows }) =>
    engines.some(({ engine }) => rows[engine.id]?.flow.state === 'separated'),
  );
  const around = frame(
    layout,
    {
      title,
      subtitle: [
        colourWords(engines),
        separates
          ? 'behind the place where gas leaves a wall nothing is computed; dashed plume a sketch'
          : 'dashed plume a sketch',
      ].join('; '),
      foot: footOf(
        answer,
        engines,
        leftOut,
        ['Each frame is computed for its own altitude.', heldEqualWords(answer), ...notionalWords(engines)],
        ['nozzle-thrust'],
      ),
    },
    options,
  );
  const { content } = around;
  const size = 1.1 * layout.type.label;
  const top = 1.5 * size;
  const scaleRight = layout.upright ? layout.axisRight : layout.safe.right;
  const scaleWidth = plumbWidth(layout);
  const scale = plumbLine(
    { x: scaleRight - scaleWidth, y: content.y, width: scaleWidth, height: content.height },
    layout,
  );
  const cutBox = {
    x: content.x,
    y: content.y + top,
    width: scaleRight - scaleWidth - 0.6 * layout.type.label - content.x,
    height: content.height - top,
  };
  return {
    name: 'cut-climb',
    title,
    description: `${wayWords(from, to)}: ${cutDescription(answer, from, options)}`,
    notes: [
      'Every frame is computed for the altitude that it shows: where the gas leaves the wall, the pressure on a plug, and the edge of the jet.',
      'Steady flow at each altitude: what changes while it goes from one to the next, and the speed of the vehicle, are not modelled.',
    ],
    at(share): Scene {
      const altitude = altitudeBetween(from, to, share);
      const panel = cutPanel(live.answerAt(altitude), altitude, cutBox, layout, {
        ...options,
        rows: live.rowsAt(altitude),
        alsoAt,
      });
      return {
        width: layout.width,
        height: layout.height,
        title,
        description: cutDescription(answer, altitude, options),
        theme: options.theme,
        transparent: options.transparent ?? false,
        children: [
          ...around.nodes,
          ...scale.scale,
          ...panel.nodes,
          ...readoutLine(altitudeReadout(altitude), content.x, content.y + 0.85 * size, size),
          scale.bob(altitude),
        ],
      };
    },
  };
}

/** `from the pad to vacuum`, `from 5 km to 20 km` */
export function wayWords(from: Altitude, to: Altitude): string {
  const word = (altitude: Altitude): string =>
    altitude === 'vacuum' ? 'vacuum' : altitude === 0 ? 'the pad' : `${altitude / 1000}\u00a0km`;
  return `from ${word(from)} to ${word(to)}`;
}

/** Pressure along the walls with the altitude moving: the air's line sinks, a plug's wall follows it, gas lets go or holds. */

import type { SolvedStudy } from '../../answer/solve.ts';
import { lowestOnWalls, pressureAlongWall } from '../figures/figureAlongWall.ts';
import type { Altitude, FigureOptions } from '../figures/options.ts';
import { layoutOf } from '../look/formats.ts';
import type { Scene } from '../scene/scene.ts';
import { wayWords } from './climbCut.ts';
import { altitudeBetween } from './climbPath.ts';
import type { Movement } from './clip.ts';
import { liveEngines } from './liveEngines.ts';
import type { ClimbOptions } from './options.ts';
import { altitudeReadout, READOUT_LEADING, readoutLine, readoutLines } from './readout.ts';

/** Places looked at beforehand for the lowest pressure. */
const LOOKED_AT = 21;

export function climbWall(solved: SolvedStudy, options: ClimbOptions): Movement {
  const { from, to, ...own } = options;
  const { answer } = solved;
  const layout = layoutOf(options.size);
  const live = liveEngines(solved);
  const size = 1.05 * layout.type.label;
  const optionsAt = (altitude: Altitude): FigureOptions => ({
    ...own,
    altitude,
    // The row of this very altitude, and no other to read between.
    curves: Object.fromEntries(Object.entries(live.rowsAt(altitude)).map(([id, row]) => [id, [row]])),
  });
  const places = Array.from({ length: LOOKED_AT }, (_, i) => altitudeBetween(from, to, i / (LOOKED_AT - 1)));
  const low = Math.min(...places.map((altitude) => lowestOnWalls(answer, optionsAt(altitude))));
  const width = layout.safe.right - layout.safe.left;
  const leading = READOUT_LEADING * size;
  const linesAt = (altitude: Altitude) => readoutLines([altitudeReadout(altitude)], width, size);
  const height = linesAt(from).length * leading + 0.3 * size;
  const way = wayWords(from, to);
  const sceneAt = (altitude: Altitude): Scene =>
    pressureAlongWall(answer, optionsAt(altitude), {
      title: `Pressure on the walls, ${way}.`,
      subtitle: 'From the injector face to the lip; thin line: the air outside',
      hatched: 'Hatched: where the gas may let go of the wall, by one criterion or another.',
      low,
      above: {
        height,
        nodesAt: (x, y) =>
          linesAt(altitude).flatMap((line, i) => readoutLine(line, x, y + 0.85 * size + i * leading, size)),
      },
    });
  const first = sceneAt(from);
  return {
    name: 'pressure-along-wall-climb',
    title: first.title,
    description: `The altitude moves ${way}. ${first.description}`,
    notes: ['The pressures are computed for the altitude of each frame, in steady flow.'],
    at: (share) => sceneAt(altitudeBetween(from, to, share)),
  };
}

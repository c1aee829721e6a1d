/** The walls of an engine that the gas heats, as the heat models read them. */

import type { HotWall } from '../../physics/heat/index.ts';
import type { LayerGas } from '../../physics/nozzle/losses/index.ts';
import type { Contour, NozzleModel } from '../../physics/nozzle/model.ts';
import { wallSides } from '../wallLayer.ts';

/** Arcs of a bell's throat, 1.5 radii ahead and 0.382 behind: their mean over the radius [–] (physics/nozzle). */
const ROUND_ARC = (1.5 + 0.382) / 2;
/** The throat round a pintle has the arc ahead alone, 2.5 half gaps, where there is room. */
const PINTLE_ARC = 2.5 / 2;

/** Outer walls first, a plug last. */
export function hotWalls(contour: Contour, nozzle: NozzleModel, layer: LayerGas): readonly HotWall[] {
  const sides = wallSides(contour, nozzle, layer);
  const { plug } = contour;
  if (plug === undefined) {
    const ring = contour.bodies?.some(({ name }) => name === 'pintle') ?? false;
    const [side] = sides;
    return [
      {
        ...side!,
        name: 'wall',
        form: ring ? 'outside' : 'full',
        curvature: ring ? 2 / PINTLE_ARC : 2 / ROUND_ARC,
      },
    ];
  }
  // A plug's throat has the arcs ahead alone.
  const curvature = (2 * plug.throatGap) / plug.throatArc;
  const plane = plug.form === 'linear';
  return sides.map((side, i) => ({
    ...side,
    name: i === 0 ? 'outer wall' : 'plug',
    form: plane ? 'plane' : i === 0 ? 'outside' : 'inside',
    curvature,
  }));
}

/** The walls of an engine that the gas heats, as the heat models read them. */

import type { HotWall } from '../../physics/heat/index.ts';
import type { LayerGas } from '../../physics/nozzle/losses/index.ts';
import type { Contour, NozzleModel, PintleContour } from '../../physics/nozzle/model.ts';
import { wallSides } from '../wallLayer.ts';

/** Arcs of a bell's throat, 1.5 radii ahead and 0.382 behind: their mean over the radius [–] (physics/nozzle). */
const ROUND_ARC = (1.5 + 0.382) / 2;

/** Outer walls first, a plug last. */
export function hotWalls(contour: Contour, nozzle: NozzleModel, layer: LayerGas): readonly HotWall[] {
  const sides = wallSides(contour, nozzle, layer);
  const { plug, pintle } = contour;
  if (plug === undefined) {
    const [side] = sides;
    return [
      {
        ...side!,
        name: 'wall',
        form: pintle === undefined ? 'full' : 'outside',
        curvature: pintle === undefined ? 2 / ROUND_ARC : curvatureOf(pintle),
      },
    ];
  }
  const curvature = curvatureOf(plug);
  const plane = plug.form === 'linear';
  return sides.map((side, i) => ({
    ...side,
    name: i === 0 ? 'outer wall' : 'plug',
    form: plane ? 'plane' : i === 0 ? 'outside' : 'inside',
    curvature,
  }));
}

/** A throat between two walls has the arcs ahead alone, as drawn. */
function curvatureOf({ throatGap, throatArc }: PintleContour): number {
  return (2 * throatGap) / throatArc;
}

/** Where wake and jet of an expansion–deflection nozzle are to be expected, so that the mesh has its cells there. */

import { attempt } from '../../numerics/problem.ts';
import type { DeflectedLayout } from './deflectedLayout.ts';
import type { PreparedDeflected } from './deflectedShape.ts';
import { jetRoom } from './jetRoom.ts';

/** A closed wake narrows to this share of the base’s radius, within so many of it. */
const NARROWS = 0.4;
const WITHIN = 1.5;
/** The gas takes so much of the area that it would at the pressure of the air: it has not come to it everywhere. */
const SPREAD = 1.5;
/** The wake takes no more than this share of the wall’s radius. */
const WIDEST = 0.93;

/** @param ambient [Pa] above 0 @param through [m] where a line across must meet the outer wall; null: nowhere */
export function deflectedRoom(
  { engine, shape, lip }: PreparedDeflected,
  ambient: number,
  through: number | null,
): DeflectedLayout {
  const { expansion, throatRadius } = engine;
  const { base, wall } = shape;
  const full = attempt(() => expansion.atPressure(Math.max(ambient, expansion.lowestPressure)));
  const area = full.ok ? Math.min(full.value.areaRatio, lip.areaRatio) : lip.areaRatio;
  const unit = throatRadius * throatRadius;
  const inner = (x: number): number => {
    const away = x - base[0];
    const narrow = base[1] * (NARROWS + (1 - NARROWS) * Math.exp(-away / (WITHIN * base[1])));
    // Open, the wake is what the gas leaves free of the nozzle: soft between the two.
    const free = (wall(x) ** 2 - SPREAD * area * unit - narrow * narrow) / (2 * unit);
    const more = 2 * unit * (free > 30 ? free : Math.log1p(Math.exp(free)));
    const opening = 1 - Math.exp(-away / base[1]);
    return Math.min(WIDEST * wall(x), Math.sqrt(narrow * narrow + opening * more));
  };
  const last = inner(shape.lip);
  return {
    room: jetRoom(expansion, lip, ambient),
    inner,
    innerBehind: (behind) => last * (NARROWS + (1 - NARROWS) * Math.exp(-behind / (3 * lip.radius))),
    through,
  };
}

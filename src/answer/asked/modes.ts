/** The two ways in which some nozzles work, by their names. */

import type { NozzleMode } from '../../physics/nozzle/index.ts';
import type { Contour } from '../../physics/nozzle/model.ts';
import type { WallPoint } from '../model.ts';
import { namedOne } from './named.ts';
import type { Asked } from './reader.ts';

/** The mode that is asked for by name, in use or not; null where none is named. */
export function namedMode(asked: Asked): NozzleMode | null {
  if (asked.part === null) return null;
  const { change } = asked.solution.nozzle;
  const modes = change === undefined ? [] : [change.thick, change.thin];
  return namedOne(asked, 'mode', modes, ({ name }) => [name]);
}

/** Wall and gas of a named mode; of a nozzle of two modes that in thin air where none is named. */
export function shapeOf(asked: Asked): { readonly contour: Contour; readonly wall: readonly WallPoint[] } {
  const { solution, part } = asked;
  return part === null ? solution : namedOne(asked, 'mode', solution.positions, ({ mode }) => [mode]);
}

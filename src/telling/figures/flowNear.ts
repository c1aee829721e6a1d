/** Which of the computed fields of an engine is shown at an altitude, and how that is said. */

import type { FlowField } from '../../answer/flow/index.ts';
import { formatAltitude, formatPressure } from '../numbers/formatNumber.ts';
import { ambientAt } from './conditions.ts';
import type { Altitude } from './options.ts';

/** Air whose pressure differs by less than this is the same. */
const SAME = 0.005;

/** The one in the air nearest in ln p; null: the engine has none. */
export function flowNear(flows: readonly FlowField[], engine: string, altitude: Altitude): FlowField | null {
  const own = flows.filter((field) => field.engine === engine);
  if (own.length === 0) return null;
  const ambient = ambientAt(altitude);
  const apart = (field: FlowField): number =>
    Math.abs(Math.log(field.ambientPressure / Math.max(ambient, thinnest(own))));
  return own.reduce((best, field) => (apart(field) < apart(best) ? field : best));
}

const thinnest = (own: readonly FlowField[]): number =>
  Math.min(...own.map(({ ambientPressure }) => ambientPressure));

/** `nearest to 11 km of those computed`; empty where it is of that air. */
export function nearWords(field: FlowField, altitude: Altitude): string {
  const ambient = ambientAt(altitude);
  if (field.thinnest && ambient <= field.ambientPressure) return '';
  if (ambient > 0 && Math.abs(field.ambientPressure / ambient - 1) < SAME) return '';
  const wanted = altitude === 'vacuum' ? 'vacuum' : formatAltitude(altitude);
  return `computed in still air of ${formatPressure(field.ambientPressure)}, the nearest to ${wanted}`;
}

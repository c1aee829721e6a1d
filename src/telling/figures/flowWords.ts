/** What a computed flow shows, in words. */

import type { FlowField } from '../../answer/flow/index.ts';
import { formatAltitude, formatLength, formatPressure } from '../numbers/formatNumber.ts';

function placeWords({ altitude, ambientPressure, thinnest }: FlowField): string {
  if (thinnest) return 'In all but vacuum';
  if (altitude === 0) return 'At sea level';
  return altitude === null
    ? `In air of ${formatPressure(ambientPressure)}`
    : `At ${formatAltitude(altitude)}`;
}

/** One sentence. */
export function flowFinding(field: FlowField): string {
  const { name, mainShock, seen } = field;
  const where = placeWords(field);
  if (mainShock === null)
    return `${where} no strong shock meets the axis of ${name}’s jet within ${formatLength(seen)} of the lip.`;
  const place = formatLength(mainShock.behind, 2);
  if (field.form === 'plug')
    return `${where} the gas from round ${name}’s plug is pressed together on the axis ${place} behind the lip.`;
  return mainShock.disk
    ? `${where} the Mach disk of ${name}’s jet stands ${place} behind the lip.`
    : `${where} a shock of ${name}’s jet meets the axis ${place} behind the lip.`;
}

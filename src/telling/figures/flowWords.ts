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

/** Where the field did not go smoothly to what is shown: one sentence; empty where it did. */
export function troubleWords({ broke, rescued, steps }: FlowField): string {
  const times = broke === 1 ? 'once' : `${broke} times`;
  const parts = [
    ...(broke > 0 ? [`broke ${times} and went on with shorter steps, at first order for a while`] : []),
    ...(rescued > 0 ? [`took some of its cells at first order in ${rescued} of ${steps} steps`] : []),
  ];
  return parts.length === 0 ? '' : `On its way the field ${parts.join('; it ')}.`;
}

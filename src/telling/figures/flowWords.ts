/** What a computed flow shows, in words. */

import { type FlowField, type FlowMoment, fieldAlong } from '../../answer/flow/index.ts';
import { NECK_SHARE } from '../../physics/nozzle/index.ts';
import { WAKE_OF_PINTLE } from '../../physics/wholeFlow/index.ts';
import { formatAltitude, formatLength, formatNumber, formatPressure } from '../numbers/formatNumber.ts';
import { isMachDisk } from './flowShocks.ts';

function placeWords({ altitude, ambientPressure, thinnest }: FlowField): string {
  if (thinnest) return 'Nearly in vacuum';
  if (altitude === 0) return 'At sea level';
  return altitude === null
    ? `In air of ${formatPressure(ambientPressure)}`
    : `At ${formatAltitude(altitude)}`;
}

/** Whether a vehicle flies through the air: one sentence. */
export function flightWords({ flightSpeed }: Pick<FlowField, 'flightSpeed'>): string {
  return flightSpeed === 0
    ? 'The air outside is at rest, as on a test stand.'
    : `The air comes from ahead at ${formatNumber(flightSpeed, 4, true)}\u00a0m/s, along a cylinder as wide as the engine: the vehicle is not in the flow.`;
}

/** One sentence. */
export function flowFinding(field: FlowField): string {
  if (field.moment !== undefined) return momentFinding(field, field.moment);
  const { name, mainShock, seen, end, lip } = field;
  const where = placeWords(field);
  if (field.ended !== undefined)
    return `${where} the whole flow of ${name} broke on its way to rest: the last field that held.`;
  if (field.form === 'pintle') return wakeWords(where, field);
  if (field.leaves !== null) return leavingWords(where, field, field.leaves.axial);
  if (mainShock === null)
    return `${where} no strong shock meets the axis of ${name}’s jet within ${formatLength(seen)} of the lip.`;
  if (field.form === 'plug') {
    const behind = formatLength(lip.axial + mainShock.behind - end, 2);
    return `${where} the gas that leaves ${name}’s plug is pressed together on the axis ${behind} behind it.`;
  }
  const place = formatLength(mainShock.behind, 2);
  return mainShock.disk
    ? `${where} the Mach disk of ${name}’s jet stands ${place} behind the lip.`
    : `${where} a shock of ${name}’s jet meets the axis ${place} behind the lip.`;
}

/** Least radius from base to lip within which all is slower than sound, over that of the base: a wake down to the model’s neck is closed. */
function neckOf({ ni, nj, radius, mach }: FlowField['blocks'][number]): number {
  const widths = Array.from({ length: ni }, (_, i) => {
    let j = 0;
    while (j < nj && mach[j * ni + i]! < 1) j++;
    return radius[j * (ni + 1) + i]!;
  });
  return Math.min(...widths) / radius[nj * (ni + 1)]!;
}

function wakeWords(where: string, { name, blocks, leaves }: FlowField): string {
  const closed =
    leaves === null ? 'is closed: the gas fills the nozzle' : 'is closed: the gas meets behind it';
  const what =
    neckOf(blocks[WAKE_OF_PINTLE]!) > NECK_SHARE
      ? 'is open: the gas runs along the wall round gas slower than sound'
      : closed;
  const left =
    leaves === null
      ? ''
      : `, and is made to leave the wall ${formatLength(leaves.axial, 2)} behind the throat`;
  return `${where} the wake behind ${name}’s pintle ${what}${left}.`;
}

/** Of a bell that the gas does not fill, the shock that stands in it is what there is to see. */
function leavingWords(where: string, field: FlowField, axial: number): string {
  const leaves = `${where} gas that is made to leave ${field.name}’s wall ${formatLength(axial, 2)} behind the throat`;
  const shock = shockInside(field);
  return shock === null
    ? `${leaves} goes on without a strong shock on the axis of the bell.`
    : `${leaves} is stopped by a shock on the axis ${formatLength(shock, 2)} behind it.`;
}

/** A rise of the pressure on the axis by this factor between throat and lip is that of a shock across the flow. */
const INSIDE_RISE = 2.5;

/** [m] from the throat plane, where the pressure on the axis rises most from cell to cell ahead of the lip; null: nowhere by enough. */
function shockInside(field: FlowField): number | null {
  const axis = fieldAlong(field).find(({ line }) => line === 'axis')?.points ?? [];
  const inside = axis.filter((point) => point.axial > 0 && point.axial < field.lip.axial);
  let [place, most] = [null as number | null, 0];
  for (const [k, { pressure, axial }] of inside.entries()) {
    const next = inside[k + 1];
    if (next === undefined || next.pressure <= pressure) continue;
    const further = inside[k + 2]?.pressure ?? next.pressure;
    const rise = Math.max(next.pressure, further) / pressure;
    if (rise >= INSIDE_RISE && next.pressure / pressure > most)
      [place, most] = [(axial + next.axial) / 2, next.pressure / pressure];
  }
  return place;
}

const EVENTS: Readonly<Record<FlowMoment['event'], string>> = {
  start: 'starts',
  stop: 'stops',
  throttle: 'throttles',
  switch: 'takes the second part of its bell',
};

function momentFinding({ name }: FlowField, { event, time, chamber }: FlowMoment): string {
  const after = `${(time * 1e3).toFixed(2)}\u00a0ms`;
  const level = event === 'switch' ? '' : `, its chamber at ${Math.round(100 * chamber)}\u00a0%`;
  return `${name} ${EVENTS[event]}: after ${after}${level}.`;
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

/** Of a field that broke, at a moment or on its way to rest; empty of all others. */
export function endedWords({ moment, ended }: Pick<FlowField, 'moment' | 'ended'>): string {
  if (ended !== undefined)
    return `This is not how the gas comes to rest: on its way there the field broke, at first order and in shorter steps too, and the last that held is shown. ${ended.what}`;
  return moment?.ended === undefined
    ? ''
    : `Behind this moment the field broke, at first order and in shorter steps too: ${moment.ended.what}`;
}

/** That it broke on its way to rest, behind what says that it is computed; empty of all others. */
export const brokeWords = ({ ended }: Pick<FlowField, 'ended'>): string =>
  ended === undefined ? '' : ' Broke on its way to rest.';

/** What stands on the axis against the published laws: one sentence; empty where there is nothing to hold against one. */
export function lawWords(field: FlowField): string {
  const { mainShock, firstCell, byLaw, form } = field;
  const { machDisk, cellLength } = byLaw;
  if (form === 'plug') return '';
  const parts = [
    ...(mainShock === null || machDisk === null
      ? []
      : [
          `the ${isMachDisk(field) ? 'Mach disk' : 'shock'} stands at ${formatLength(mainShock.behind, 2)}, by the published law at ${formatLength(machDisk, 2)} (${moreWords(mainShock.behind / machDisk)})`,
        ]),
    ...(firstCell === null || cellLength === null
      ? []
      : [
          `the first shock cell ends at ${formatLength(firstCell, 2)}, by the law at ${formatLength(cellLength, 2)} (${moreWords(firstCell / cellLength)})`,
        ]),
  ];
  return parts.length === 0 ? '' : `Behind the lip ${parts.join('; ')}.`;
}

/** Of a shorter nozzle inside a bell; empty of all others. */
export function insideBellWords({ insideBell }: Pick<FlowField, 'insideBell'>): string {
  return insideBell ? 'The bell round the jet is not in the picture.' : '';
}

function moreWords(ratio: number): string {
  const percent = Math.round(100 * (ratio - 1));
  return percent === 0 ? 'the same' : `${percent > 0 ? '+' : '−'}${Math.abs(percent)}\u00a0%`;
}

/** What no picture of a field goes without. */
export const INVISCID = 'Inviscid, computed: no turbulence.';

/** What a field without friction leaves out. */
export const WITHOUT_FRICTION =
  'No turbulence: the jet does not mix with the air, nothing rubs on the walls, and where gas lets go of a wall is not found.';

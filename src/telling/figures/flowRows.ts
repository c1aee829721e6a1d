/** The tables of the figures of a whole flow: what was found in it beside the laws, and the gas along axis and walls. */

import { type FlowField, fieldAlong } from '../../answer/flow/index.ts';
import type { FigureRow } from './figureTable.ts';
import { isMachDisk } from './flowShocks.ts';

/** Shock, cell and thrust, by the field and by the models that have them too; none has them of a moment. */
export function flowRows(field: FlowField): readonly FigureRow[] {
  const rows = rowsAtRest(field);
  return field.moment === undefined
    ? rows
    : rows.filter(({ quantity }) => quantity?.startsWith('wholeFlow.') === true);
}

function rowsAtRest(field: FlowField): readonly FigureRow[] {
  const { name: of, form, ambientPressure, mainShock, firstCell, byLaw, thrustCoefficient, seen } = field;
  const at = { quantity: 'ambientPressure', value: ambientPressure };
  const notSeen = `not seen within ${seen.toFixed(2)} m of the lip`;
  const { mean, swing, byModel } = thrustCoefficient;
  return [
    {
      of,
      quantity: 'wholeFlow.shock',
      at,
      value: mainShock?.behind ?? null,
      ...(mainShock === null
        ? { note: notSeen }
        : form === 'round' && { note: isMachDisk(field) ? 'Mach disk' : 'no disk' }),
    },
    { of, quantity: 'plume.machDisk', at, value: byLaw.machDisk, note: 'by the published law' },
    {
      of,
      quantity: 'wholeFlow.cell',
      at,
      value: firstCell,
      ...(firstCell === null && { note: noCellWords(field) }),
    },
    { of, quantity: 'plume.cellLength', at, value: byLaw.cellLength, note: 'by the published law' },
    {
      of,
      quantity: 'wholeFlow.thrustCoefficient',
      at,
      value: mean,
      // Of one that broke no mean is known, nor how far it swings.
      ...(field.ended === undefined && { low: mean * (1 - swing), high: mean * (1 + swing) }),
    },
    { of, quantity: 'thrustCoefficient', at, value: byModel, note: 'by the model of the nozzle' },
    ...againstRows(field),
  ];
}

function noCellWords({ byLaw, mainShock, seen }: FlowField): string {
  if (byLaw.machDisk !== null) return 'not told where a law puts a Mach disk';
  if (byLaw.cellLength === null) return 'not told where no law has cells to hold it against';
  const from = mainShock === null ? 'the lip' : 'the shock';
  return `not seen between ${from} and ${seen.toFixed(2)} m behind the lip`;
}

/** From what the two thrusts differ. */
function againstRows({ name: of, ambientPressure, against }: FlowField): readonly FigureRow[] {
  if (against === null) return [];
  const at = { quantity: 'ambientPressure', value: ambientPressure };
  const { passes, passesByModel, perMass, base, baseByModel, basePressure, suction, wake } = against;
  return [
    { of, quantity: 'wholeFlow.dischargeCoefficient', at, value: passes },
    { of, quantity: 'dischargeCoefficient', at, value: passesByModel, note: 'by the model of the nozzle' },
    { of, quantity: 'wholeFlow.perMass', at, value: perMass },
    { of, quantity: 'wholeFlow.base', at, value: base },
    { of, quantity: 'wholeFlow.base', at, value: baseByModel, note: 'by the model of the nozzle' },
    ...(basePressure === null ? [] : [{ of, quantity: 'wholeFlow.basePressure', at, value: basePressure }]),
    { of, quantity: 'wholeFlow.suction', at, value: suction, note: 'by the model of the nozzle' },
    { of, quantity: 'wholeFlow.wake', at, value: wake, note: 'by the model of the nozzle' },
  ];
}

/** Every cell beside the axis and beside the walls. */
export function flowAlongRows(field: FlowField): readonly FigureRow[] {
  const { name: of } = field;
  return [
    ...flowRows(field),
    ...fieldAlong(field).flatMap(({ line: which, points }) =>
      points.flatMap(({ axial, pressure, mach, temperature, speed }): readonly FigureRow[] => {
        const at = { quantity: 'wholeFlow.axial', value: axial };
        return [
          { of, quantity: 'wholeFlow.pressure', which, at, value: pressure },
          { of, quantity: 'wholeFlow.mach', which, at, value: mach },
          { of, quantity: 'wholeFlow.temperature', which, at, value: temperature },
          { of, quantity: 'wholeFlow.speed', which, at, value: speed },
        ];
      }),
    ),
  ];
}

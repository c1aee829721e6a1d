/** What a figure shows, for readers who cannot see it; the caution is part of it. */

import type { ConditionRow, EngineAnswer, StudyAnswer } from '../../answer/model.ts';
import { formatAltitude, formatPressure, formatSpoken } from '../numbers/formatNumber.ts';
import { ambientAt, conditionAt, rowsOf } from './conditions.ts';
import { drawnEngines, inMode } from './drawnEngines.ts';
import { whereWords } from './findings.ts';
import type { Altitude, FigureOptions } from './options.ts';

export function overAltitudeDescription(
  answer: StudyAnswer,
  quantity: 'specificImpulse' | 'thrust',
  options: FigureOptions,
): string {
  const places: readonly Altitude[] = [0, 10_000, 20_000, 'vacuum'];
  const engines = drawnEngines(answer, 4).engines.map(({ engine }) => {
    const rows = rowsOf(engine, options);
    const values = places.map((altitude) => {
      const value = conditionAt(rows, ambientAt(altitude))[quantity];
      const where =
        altitude === 0
          ? 'at sea level'
          : altitude === 'vacuum'
            ? 'in vacuum'
            : `at ${formatAltitude(altitude)}`;
      return value === null ? `no value ${where}` : `${formatSpoken(quantity, value)} ${where}`;
    });
    const match = engine.matched.altitude;
    const matched = match === null ? '' : ` Its exit pressure matches the air at ${formatAltitude(match)}.`;
    return `${engine.name}, ${engine.description}: ${values.join(', ')}.${matched}`;
  });
  const what = quantity === 'thrust' ? 'Thrust' : 'Specific impulse';
  return `${what} along the horizontal axis, altitude upward from 0 to 40 kilometres and vacuum. ${engines.join(' ')} ${answer.caution}`;
}

export function cutDescription(answer: StudyAnswer, altitude: Altitude, options: FigureOptions): string {
  const ambient = ambientAt(altitude);
  const engines = drawnEngines(answer, 2).engines.map(({ engine }) => {
    const row = conditionAt(rowsOf(engine, options), ambient);
    return (
      `${engine.name}, ${engine.description}: chamber ${formatPressure(engine.chamber.pressure)}, ` +
      `exit ${formatPressure(row.exitPressure)}, lip ${formatSpoken('exit.diameter', lipDiameter(engine, row))} across, ${flowWords(row)}` +
      `${engine.contourIs === 'notional' ? ', outline notional' : ''}.`
    );
  });
  const air = ambient === 0 ? 'no air outside' : `the air outside has ${formatPressure(ambient)}`;
  return `Engines cut open, hanging from one line, at one scale. ${whereWords(altitude)}, ${air}. ${engines.join(' ')} ${answer.caution}`;
}

/** Across the lip in the form that is in use there [m]. */
function lipDiameter(engine: EngineAnswer, { mode }: ConditionRow): number {
  const { contour } = inMode(engine, mode);
  return contour === engine.contour ? engine.exit.diameter : 2 * contour.exitRadius;
}

/** A flow state in words that stand after an engine's name. */
function flowWords({ flow, plug }: ConditionRow): string {
  switch (flow.state) {
    case 'full':
      return plug === undefined ? 'the gas fills the nozzle' : 'the gas stays on the plug';
    case 'near the limit':
      return 'the gas is about to leave the wall';
    case 'separated':
      return 'the gas leaves the wall';
    default:
      return 'the flow does not choke';
  }
}

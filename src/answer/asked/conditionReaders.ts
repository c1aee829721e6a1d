/** Numbers of one place besides the thrust: surroundings, lip, parts of the thrust. */

import { inTwo } from '../absences.ts';
import { flightMachAt } from '../plugRow.ts';
import { ERROR_NAMES } from '../scatter/model.ts';
import { plugErrors } from '../scatter/plugErrors.ts';
import { wallInUse } from '../separation/wallInUse.ts';
import { partsAt, thrustPartsAt } from '../thrustParts.ts';
import { SEPARATION_CRITERION } from './figureAlternatives.ts';
import type { Scatter } from './model.ts';
import { namedMode } from './modes.ts';
import { namedOne } from './named.ts';
import { type Asked, absent, type Reader, type Readers } from './reader.ts';
import { altitudeOf } from './surroundings.ts';

/** The nozzle in the named mode, else as it is there. */
function nozzleAt(asked: Asked) {
  const { around } = asked;
  return namedMode(asked)?.at(around.pressure) ?? asItIs(asked);
}

function asItIs({ solution, around }: Asked) {
  return solution.nozzle.at(around.pressure, flightMachAt(solution, around.altitude));
}

function partReader(key: 'force' | 'coefficient'): Reader {
  return (asked) => {
    const at = asItIs(asked);
    const parts = partsAt(asked.solution, at);
    if (parts.length === 0) {
      const why = at.partsAbsent ?? at.absent ?? 'The model does not tell where its thrust acts.';
      return absent(asked, inTwo(why));
    }
    const part = namedOne(asked, 'surface', parts, ({ surface }) => [surface]);
    return { value: part[key], scatter: part.surface === 'base' ? baseScatter(asked, key, part[key]) : [] };
  };
}

/** What the published models of the base pressure leave open of the push on the base. */
function baseScatter(asked: Asked, key: 'force' | 'coefficient', value: number): readonly Scatter[] {
  const { solution, around } = asked;
  const errors = plugErrors(solution, asItIs(asked), around.altitude, 'thrustCoefficient');
  const size = key === 'coefficient' ? 1 : solution.throatArea * solution.expansion.chamber.pressure;
  return errors
    .filter(({ name }) => name === ERROR_NAMES.basePressure)
    .map(({ name, source, low, high }) => ({
      name,
      source,
      low: value + low.coefficient * size,
      high: value + high.coefficient * size,
    }));
}

function wholeReader(key: 'sum' | 'boundary' | 'difference'): Reader {
  return (asked) => {
    const { solution, around } = asked;
    const whole = thrustPartsAt(solution, around.pressure, flightMachAt(solution, around.altitude));
    return whole[key] ?? absent(asked, inTwo(whole.note ?? ''));
  };
}

export const conditionReaders: Readers = {
  altitude: ({ ask }) => altitudeOf(ask.ambient!),
  ambientPressure: ({ around }) => around.pressure,
  exitPressure: (asked) => nozzleAt(asked).exit.pressure,
  'flow.lipPressure': (asked) => nozzleAt(asked).flow.lipPressure,
  'flow.separationPressure': (asked) => {
    const { solution, around } = asked;
    const { flow, ambientPressure } = nozzleAt(asked);
    const mode = namedMode(asked);
    const wall = mode === null ? wallInUse(solution.nozzle, around.pressure) : mode.separation?.();
    const all = wall?.separationPressures(ambientPressure) ?? [];
    return {
      value: flow.separationPressure,
      alternatives:
        all.length < 2
          ? []
          : all.map(({ name, pressure }) => ({ of: SEPARATION_CRITERION, by: name, value: pressure })),
    };
  },
  'thrustParts.force': partReader('force'),
  'thrustParts.coefficient': partReader('coefficient'),
  'thrustParts.sum': wholeReader('sum'),
  'thrustParts.boundary': wholeReader('boundary'),
  'thrustParts.difference': wholeReader('difference'),
};

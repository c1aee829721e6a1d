/** Thrust figures at a place: nothing but them is worked out. */

import { STANDARD_ATMOSPHERE } from '../../physics/constants.ts';
import { inTwo } from '../absences.ts';
import { figuresAt, figuresOf } from '../conditions.ts';
import type { ThrustFigures } from '../model.ts';
import { figureScatter } from '../scatter/figureScatter.ts';
import { figureAlternatives } from './figureAlternatives.ts';
import { namedMode } from './modes.ts';
import { type Asked, absent, type Read, type Readers } from './reader.ts';
import type { Surroundings } from './surroundings.ts';

const keys = ['thrust', 'thrustIfFull', 'thrustCoefficient', 'specificImpulse'] as const;

function figure(asked: Asked, key: keyof ThrustFigures, around: Surroundings): Read {
  const { solution, part } = asked;
  if (part !== null) return inMode(asked, key, around);
  const { at, figures, absent: why } = figuresAt(solution, around.pressure, around.altitude);
  const value = figures[key];
  if (value === null) return absent(asked, inTwo(why ?? ''));
  return {
    value,
    scatter: figureScatter(solution, at, around.altitude, key, value),
    alternatives: key === 'thrustIfFull' ? [] : figureAlternatives(solution, at, value),
  };
}

/** In one of two modes, in use there or not. */
function inMode(asked: Asked, key: keyof ThrustFigures, { pressure }: Surroundings): Read {
  const { solution } = asked;
  const at = namedMode(asked)!.at(pressure);
  const value = figuresOf(solution, at)[key];
  if (value === null) return absent(asked, inTwo(at.absent ?? 'The model has no value here.'));
  return { value, scatter: figureScatter(solution, at, null, key, value) };
}

const VACUUM: Surroundings = { pressure: 0, altitude: null };
const SEA_LEVEL: Surroundings = { pressure: STANDARD_ATMOSPHERE, altitude: 0 };

export const thrustReaders: Readers = Object.fromEntries(
  keys.flatMap((key) => [
    [key, (asked: Asked) => figure(asked, key, asked.around)],
    [`vacuum.${key}`, (asked: Asked) => figure(asked, key, VACUUM)],
    [`seaLevel.${key}`, (asked: Asked) => figure(asked, key, SEA_LEVEL)],
  ]),
);

/** A plug: what is true of it everywhere, and what it feels at one place. */

import { feltAmbient, type PlugNozzle, plugOf } from '../../physics/nozzle/index.ts';
import type { PlugContour } from '../../physics/nozzle/model.ts';
import type { PlugAnswer, PlugRow } from '../model.ts';
import { flightMachAt, plugAnswer, plugRowAt } from '../plugRow.ts';
import { sizeScatter } from '../scatter/figureScatter.ts';
import { ERROR_NAMES } from '../scatter/model.ts';
import { BASE_SOURCE, SLIPSTREAM_SOURCE } from '../scatter/plugErrors.ts';
import { type Asked, absent, orAbsent, type Read, type Reader, type Readers } from './reader.ts';

const NO_PLUG = { why: 'This engine has no plug.', mend: 'Ask an engine with nozzle: { kind: plug }.' };
const WHOLE = {
  why: 'Nothing is cut off this plug, so that it has no base.',
  mend: 'Keep less than 100 % of it.',
};
const NO_MODULES = {
  why: 'The throat goes all round: this plug has no modules.',
  mend: 'State nozzle.modules.',
};
const AT_REST = {
  why: 'The vehicle is at rest here, so that the plug feels the air as it is.',
  mend: 'State nozzle.machOne, and ask at an altitude above the pad.',
};
const NO_RISE = {
  why: 'The pressure rises nowhere on the plug here.',
  mend: 'Ask where the air presses harder, at a lower altitude.',
};
const NOT_COMPUTED = {
  why: 'There is no air here, or the flow on the plug is not computed.',
  mend: 'Ask in air, at a higher altitude or a lower pressure.',
};

function plugHere(asked: Asked): PlugNozzle {
  return plugOf(asked.solution.nozzle) ?? absent(asked, NO_PLUG);
}

/** A measure of the plug, and by which power of the throat's area it grows with the engine. */
function shapeReader(key: Exclude<keyof PlugContour, 'form' | 'wall'>, area: number): Reader {
  return (asked): Read => {
    const { solution } = asked;
    const plug = solution.contour.plug ?? absent(asked, NO_PLUG);
    const value = orAbsent(asked, plug[key], () => ({
      why: 'This plug goes all round: it has no width.',
      mend: 'Ask for contour.plug.lipRadius.',
    }));
    return { value, scatter: area === 0 ? [] : sizeScatter(solution, value, { area, efficiency: 0 }) };
  };
}

function designReader(key: Exclude<keyof PlugAnswer, 'modules' | 'wakeClosesAt'>): Reader {
  return (asked) => (plugAnswer(asked.solution).plug ?? absent(asked, NO_PLUG))[key];
}

function modulesReader(key: 'loss' | 'low' | 'high' | 'gap'): Reader {
  return (asked): Read => {
    const { modules, spec } = plugHere(asked);
    if (modules === null) return absent(asked, NO_MODULES);
    const { value, low, high, from, gap } = modules;
    if (key !== 'loss') return { value: key === 'gap' ? gap : modules[key] };
    const name = `${ERROR_NAMES.modules}, ${spec.modules?.shape ?? 'round'}`;
    return { value, scatter: [{ name, low, high, source: from }] };
  };
}

function wakeClosesAt(asked: Asked): Read {
  const plug = plugHere(asked);
  const value = orAbsent(asked, plug.wakeClosesAt, () => WHOLE);
  const closed = plug.base(0)!;
  return {
    value,
    scatter: [{ name: ERROR_NAMES.basePressure, low: closed.low, high: closed.high, source: BASE_SOURCE }],
  };
}

function rowOf(asked: Asked): PlugRow {
  const { solution, around } = asked;
  plugHere(asked);
  return plugRowAt(solution, around.pressure, around.altitude)?.row ?? absent(asked, NOT_COMPUTED);
}

function baseReader(key: 'pressure' | 'low' | 'high'): Reader {
  return (asked): Read => {
    const plug = plugHere(asked);
    const { solution, around } = asked;
    const felt = feltAmbient(around.pressure, flightMachAt(solution, around.altitude));
    const base = plug.base(felt.pressure) ?? absent(asked, WHOLE);
    const { low, high } = base;
    return key === 'pressure'
      ? {
          value: base.pressure,
          scatter: [{ name: ERROR_NAMES.basePressure, low, high, source: BASE_SOURCE }],
        }
      : { value: base[key] };
  };
}

function flightReader(key: 'mach' | 'pressure' | 'low' | 'high'): Reader {
  return (asked): Read => {
    plugHere(asked);
    const { solution, around } = asked;
    const mach = flightMachAt(solution, around.altitude);
    if (mach === 0) return absent(asked, AT_REST);
    if (key === 'mach') return { value: mach };
    const felt = feltAmbient(around.pressure, mach);
    if (key !== 'pressure') return { value: felt[key] };
    const { low, high } = felt;
    const scatter = [{ name: ERROR_NAMES.slipstream, low, high, source: SLIPSTREAM_SOURCE }];
    return { value: felt.pressure, scatter };
  };
}

function riseReader(key: keyof NonNullable<PlugRow['recompression']>): Reader {
  return (asked) => (rowOf(asked).recompression ?? absent(asked, NO_RISE))[key];
}

export const plugReaders: Readers = {
  ...Object.fromEntries(
    (
      ['throatGap', 'throatArc', 'lipRadius', 'wholeLength', 'keptLength', 'baseRadius', 'width'] as const
    ).map((key) => [`contour.plug.${key}`, shapeReader(key, 0.5)]),
  ),
  ...Object.fromEntries(
    (['baseArea', 'plugArea', 'cowlArea'] as const).map((key) => [
      `contour.plug.${key}`,
      shapeReader(key, 1),
    ]),
  ),
  'contour.plug.throatAngle': shapeReader('throatAngle', 0),
  ...Object.fromEntries(
    (['innerMach', 'lipTurn', 'designPressureRatio', 'straightRayDeparture', 'untouchedBelow'] as const).map(
      (key) => [`plug.${key}`, designReader(key)],
    ),
  ),
  'plug.wakeClosesAt': wakeClosesAt,
  'plug.modules.loss': modulesReader('loss'),
  'plug.modules.low': modulesReader('low'),
  'plug.modules.high': modulesReader('high'),
  'plug.modules.gap': modulesReader('gap'),
  'plug.base.pressure': baseReader('pressure'),
  'plug.base.low': baseReader('low'),
  'plug.base.high': baseReader('high'),
  'plug.leastWall': (asked) => orAbsent(asked, rowOf(asked).leastWall, () => NOT_COMPUTED),
  'plug.leastCowl': (asked) => orAbsent(asked, rowOf(asked).leastCowl, () => NOT_COMPUTED),
  'plug.recompression.pressureRatio': riseReader('pressureRatio'),
  'plug.recompression.mach': riseReader('mach'),
  'plug.recompression.shareOfOnset': riseReader('shareOfOnset'),
  'plug.flight.mach': flightReader('mach'),
  'plug.flight.pressure': flightReader('pressure'),
  'plug.flight.low': flightReader('low'),
  'plug.flight.high': flightReader('high'),
};

/** How the propellants are pumped, what that costs, and what engine and tanks weigh. */

import { figuresAt } from '../conditions.ts';
import { type CycleFigure, cycleFigures, engineFiguresAt, tankMassBand } from '../cycle/cycleFigures.ts';
import { gasScatter } from '../cycle/gasScatter.ts';
import { MASS_SOURCE, massFigures, massOf } from '../cycle/massFigures.ts';
import { figureScatter } from '../scatter/figureScatter.ts';
import { ERROR_NAMES } from '../scatter/model.ts';
import type { Scatter } from './model.ts';
import { absent, type Read, type Reader, type Readers } from './reader.ts';

const TANK_SOURCE = 'a sphere at the low end, a long cylinder at the high end: membrane stress';

/** Powers with which a figure goes with the flow of the turbine’s gas. */
const withGasFlow: Readonly<Partial<Record<CycleFigure, true>>> = {
  dumpShare: true,
  dumpFlow: true,
  turbineFlow: true,
  impulseLost: true,
  lostPerHundredBar: true,
};

function cycleReader(key: CycleFigure): Reader {
  return ({ solution }): Read => {
    const value = cycleFigures[key](solution);
    if (key === 'tankMass') {
      const { low, high } = tankMassBand(solution);
      return { value, scatter: [{ name: ERROR_NAMES.tankShape, low, high, source: TANK_SOURCE }] };
    }
    if (withGasFlow[key]) return { value, scatter: gasScatter(solution, value, (flow) => value * flow) };
    return { value };
  };
}

/** Of the whole engine: the chamber’s errors, and that of the dumped gas. */
function engineFigure(key: 'thrust' | 'specificImpulse'): Reader {
  return (asked): Read => {
    const { solution, around } = asked;
    const whole = engineFiguresAt(solution, around.pressure, around.altitude);
    const { at, figures, absent: why } = figuresAt(solution, around.pressure, around.altitude);
    const chamber = figures[key];
    if (chamber === null) return absent(asked, { why: why ?? '', mend: 'Ask at a lower ambient pressure.' });
    const value = whole[key];
    const share = cycleFigures.dumpShare(solution);
    const part = key === 'thrust' ? 1 : 1 - share;
    const ofChamber = figureScatter(solution, at, around.altitude, key, chamber).map(
      (scatter): Scatter => ({
        ...scatter,
        low: value + part * (scatter.low - chamber),
        high: value + part * (scatter.high - chamber),
      }),
    );
    const lost = key === 'thrust' ? -whole.dumpThrust : chamber - value;
    return {
      value,
      scatter: [...ofChamber, ...gasScatter(solution, value, (flow) => value - (flow - 1) * lost)],
    };
  };
}

function massReader(key: keyof typeof massFigures): Reader {
  return ({ solution }): Read => {
    const value = massFigures[key](solution);
    const { value: mass, low, high } = massOf(solution);
    const end = (of: number): number => (key === 'engine' ? of : (value * mass) / of);
    return {
      value,
      scatter: [{ name: ERROR_NAMES.engineMass, low: end(low), high: end(high), source: MASS_SOURCE }],
    };
  };
}

export const cycleReaders: Readers = {
  ...Object.fromEntries(
    (Object.keys(cycleFigures) as CycleFigure[]).map((key) => [`cycle.${key}`, cycleReader(key)]),
  ),
  'cycle.thrust': engineFigure('thrust'),
  'cycle.specificImpulse': engineFigure('specificImpulse'),
  'mass.engine': massReader('engine'),
  'mass.thrustToWeight': massReader('thrustToWeight'),
};

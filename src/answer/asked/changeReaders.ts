/** Where a nozzle of two modes goes over, by the value taken or by one of its models. */

import { attempt } from '../../numerics/problem.ts';
import { geometricAltitudeAtPressure } from '../../physics/air/index.ts';
import type { ModeChange } from '../../physics/nozzle/index.ts';
import { noAltitudeWith } from '../absences.ts';
import { SEPARATION_CRITERION } from './figureAlternatives.ts';
import type { Alternative } from './model.ts';
import { namedOne } from './named.ts';
import { type Asked, absent, type Read, type Reader, type Readers } from './reader.ts';

const ONE_MODE = {
  why: 'This nozzle works in one way at every altitude.',
  mend: 'Ask a nozzle of two modes, such as a dual bell or an extendable skirt.',
};

function changeOf(asked: Asked): ModeChange {
  return asked.solution.nozzle.change ?? absent(asked, ONE_MODE);
}

function changeReader(of: (asked: Asked, ambientPressure: number) => number | null): Reader {
  return (asked): Read => {
    const { ambientPressure, estimates } = changeOf(asked);
    if (asked.part !== null) {
      const named = namedOne(asked, 'model', estimates, ({ by }) => [by]);
      return { value: valueAt(asked, named.ambientPressure, of) };
    }
    const isDualBell = asked.solution.nozzle.spec.kind === 'dualBell';
    const alternatives: readonly Alternative[] =
      estimates.length < 2
        ? []
        : estimates.map(({ by, ambientPressure: at }) => ({
            of: isDualBell ? SEPARATION_CRITERION : 'model of the closed wake',
            by,
            value: of(asked, at),
          }));
    return { value: valueAt(asked, ambientPressure, of), alternatives };
  };
}

function valueAt(
  asked: Asked,
  ambientPressure: number,
  of: (asked: Asked, ambientPressure: number) => number | null,
): number {
  return of(asked, ambientPressure) ?? absent(asked, noAltitudeWith(ambientPressure));
}

export const changeReaders: Readers = {
  'change.ambientPressure': changeReader((_, ambientPressure) => ambientPressure),
  'change.altitude': changeReader((_, ambientPressure) => {
    const altitude = attempt(() => geometricAltitudeAtPressure(ambientPressure));
    return altitude.ok ? altitude.value : null;
  }),
};

/** A crew whose engines are functions in closed form, for tests of what is done with the answers. */

import type { Crew, Point } from '../../../src/answer/asked/crew.ts';
import { crewOf } from '../../../src/answer/asked/crewOf.ts';
import type { Ask, Told } from '../../../src/answer/asked/model.ts';

/** What is told of an ask at a point; a plain number has no scatter. */
export type Fake = (ask: Ask, point: Point) => number | Told;

export function fakeCrew(fake: Fake): Crew {
  return crewOf([
    {
      async work(asks, point) {
        return asks.map((ask) => {
          const told = fake(ask, point);
          return typeof told === 'number' ? { ok: true, value: told, scatter: [], alternatives: [] } : told;
        });
      },
    },
  ]);
}

export function askOf(engine: string, quantity = 'massFlow'): Ask {
  return { engine, quantity, ambient: null, throttle: null, station: null, inputs: [] };
}

/** Two engines that share a mixture ratio; the second has a pressure of its own. */
export const ENGINES = `
a:
  propellants: { oxidiser: oxygen, fuel: methane, ratio: RATIO }
  chamber: { pressure: PRESSURE }
  size: { throat: 200 mm }
  nozzle: { kind: ideal, areaRatio: 10 }
b:
  like: a
  chamber: { pressure: OTHER }
`;

export function enginesWith(ratio: string, pressure: string, other: string): string {
  return ENGINES.replace('RATIO', ratio).replace('PRESSURE', pressure).replace('OTHER', other);
}

export const RATIO = 'engines.a.propellants.ratio';
export const PRESSURE = 'engines.a.chamber.pressure';
export const OTHER = 'engines.b.chamber.pressure';

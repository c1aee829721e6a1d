/** Where and when the gas leaves the wall, by the deciding criterion or by another one. */

import { STANDARD_ATMOSPHERE } from '../../physics/constants.ts';
import type { SeparationAt, WallPlace, WallSeparation } from '../../physics/nozzle/index.ts';
import { noSoundSpeed } from '../absences.ts';
import { figuresAt } from '../conditions.ts';
import { rowSeparation } from '../separation/rowSeparation.ts';
import { wallInUse } from '../separation/wallInUse.ts';
import { SEPARATION_CRITERION } from './figureAlternatives.ts';
import type { Alternative } from './model.ts';
import { namedOne } from './named.ts';
import { type Asked, absent, orAbsent, type Read, type Reader, type Readers } from './reader.ts';

const NO_WALL = {
  why: 'This nozzle has no wall that is judged along its length, so that no place of separation is known.',
  mend: 'Ask a cone, a bell or a nozzle made of bells.',
};

function separationAt(asked: Asked): SeparationAt {
  const { solution, around } = asked;
  return figuresAt(solution, around.pressure, around.altitude).at.separation ?? absent(asked, NO_WALL);
}

function wallAt(asked: Asked, ambientPressure: number): WallSeparation {
  return wallInUse(asked.solution.nozzle, ambientPressure) ?? absent(asked, NO_WALL);
}

type PlaceKey = 'axial' | 'areaRatio' | 'mach' | 'pressure';

function placeValue(asked: Asked, key: PlaceKey, place: WallPlace): number {
  const value = key === 'axial' ? place.axial * asked.solution.contour.throatRadius : place[key];
  return orAbsent(asked, value, () => noSoundSpeed(null));
}

/** Of the place by the deciding criterion, by a named one, or the earliest or latest of all. */
function placeReader(key: PlaceKey): Reader {
  return (asked): Read => {
    const { around, part } = asked;
    const at = separationAt(asked);
    const wall = wallAt(asked, around.pressure);
    if (part === null)
      return { value: placeValue(asked, key, at.place), alternatives: others(asked, key, wall) };
    const ends = [
      { names: ['earliest'], place: at.earliest },
      { names: ['latest'], place: at.latest },
    ];
    const byCriterion = wall
      .criteria(around.pressure)
      .flatMap(({ id, name, place }) => (place === null ? [] : [{ names: [id, name], place }]));
    const named = namedOne(asked, 'criterion', [...ends, ...byCriterion], ({ names }) => names);
    return { value: placeValue(asked, key, named.place) };
  };
}

function others(asked: Asked, key: PlaceKey, wall: WallSeparation): readonly Alternative[] {
  const { around, solution } = asked;
  if (around.pressure > solution.nozzle.expansion.throat.pressure) return [];
  const all = wall.byCriterion(around.pressure);
  const places = new Set(all.map(({ place }) => place.axial));
  if (places.size < 2) return [];
  return all.map(({ name, place }) => ({
    of: SEPARATION_CRITERION,
    by: name,
    value: placeValue(asked, key, place),
  }));
}

/** Ends of a span: its name in the answer, and in plain words. */
function endOf<T extends { readonly low: number; readonly high: number }>(asked: Asked, span: T): number {
  const ends = [
    { names: ['least', 'low'], value: span.low },
    { names: ['greatest', 'high'], value: span.high },
  ];
  return namedOne(asked, 'end', ends, ({ names }) => names).value;
}

function spanReader(key: 'thrust' | 'specificImpulse'): Reader {
  return (asked) => {
    const span = rowSeparation(asked.solution, separationAt(asked))[key];
    if (span !== undefined) return endOf(asked, span);
    return absent(asked, {
      why: 'Nothing flows out here, so that there is no span.',
      mend: 'Ask at a lower ambient pressure.',
    });
  };
}

function criterionReader(key: 'ratio' | 'limitAmbient'): Reader {
  return (asked) => {
    const all = wallAt(asked, STANDARD_ATMOSPHERE).criteria(STANDARD_ATMOSPHERE);
    const one = namedOne(asked, 'criterion', all, ({ id, name }) => [id, name]);
    return orAbsent(asked, one[key], () => ({
      why: one.why ?? 'This criterion has no value here.',
      mend: 'Ask by another criterion.',
    }));
  };
}

function lowestFullThrottle(asked: Asked): Read {
  const found = wallAt(asked, STANDARD_ATMOSPHERE).lowestFullThrottle(STANDARD_ATMOSPHERE);
  const { best, bestRising, low, high, byCriterion } = found;
  if (asked.part === null) {
    return {
      value: best,
      alternatives: byCriterion.map(({ name, share }) => ({
        of: SEPARATION_CRITERION,
        by: name,
        value: share,
      })),
    };
  }
  const named = [
    { names: ['rising', 'bestRising'], value: bestRising },
    { names: ['least', 'low'], value: low },
    { names: ['greatest', 'high'], value: high },
    ...byCriterion.map(({ name, share }) => ({ names: [name], value: share })),
  ];
  return { value: namedOne(asked, 'criterion', named, ({ names }) => names).value };
}

function massFlow(asked: Asked): number {
  const { massFlow: best, massFlows } = rowSeparation(asked.solution, separationAt(asked));
  return asked.part === null ? best : endOf(asked, massFlows ?? { low: best, high: best });
}

export const separationReaders: Readers = {
  'separation.place.axial': placeReader('axial'),
  'separation.place.areaRatio': placeReader('areaRatio'),
  'separation.place.mach': placeReader('mach'),
  'separation.place.pressure': placeReader('pressure'),
  'separation.counted': (asked) => separationAt(asked).counted,
  'separation.lettingGo': (asked) => separationAt(asked).lettingGo,
  'separation.thrust': spanReader('thrust'),
  'separation.specificImpulse': spanReader('specificImpulse'),
  'separation.massFlow': massFlow,
  'separation.criteria.ratio': criterionReader('ratio'),
  'separation.criteria.limitAmbient': criterionReader('limitAmbient'),
  'separation.lowestFullThrottle': lowestFullThrottle,
};

/** Numbers that an engine has once: chamber, throat, lip, size, contour, closure of the field. */

import { geometricAltitudeAtPressure } from '../../physics/air/index.ts';
import { NO_BULK_DENSITY, noField, noSoundSpeed } from '../absences.ts';
import { sizeScatter } from '../scatter/figureScatter.ts';
import { diameterOf, type EngineSolution } from '../solution.ts';
import { thrustPartsAt } from '../thrustParts.ts';
import { shapeOf } from './modes.ts';
import { namedOne } from './named.ts';
import { type Asked, absent, orAbsent, type Reader, type Readers } from './reader.ts';

type Of = (engine: EngineSolution) => number;

/** Numbers that every engine has, by which power of the throat's area they grow where a thrust fixes the size. */
const plain: Readonly<Record<string, readonly [of: Of, area: number]>> = {
  'chamber.pressure': [(e) => e.expansion.chamber.pressure, 0],
  'chamber.temperature': [(e) => e.expansion.chamber.temperature, 0],
  'chamber.molarMass': [(e) => e.expansion.chamber.molarMass, 0],
  'throat.pressure': [(e) => e.expansion.throat.pressure, 0],
  'throat.temperature': [(e) => e.expansion.throat.temperature, 0],
  'throat.diameter': [(e) => diameterOf(e.throatArea), 0.5],
  'throat.area': [(e) => e.throatArea, 1],
  'exit.pressure': [(e) => e.nozzle.exit.pressure, 0],
  'exit.temperature': [(e) => e.nozzle.exit.temperature, 0],
  'exit.velocity': [(e) => e.nozzle.exit.velocity, 0],
  'exit.diameter': [(e) => diameterOf(e.exitArea), 0.5],
  'exit.area': [(e) => e.exitArea, 1],
  areaRatio: [(e) => e.nozzle.spec.areaRatio, 0],
  divergenceFactor: [(e) => e.nozzle.divergenceFactor, 0],
  dischargeCoefficient: [(e) => e.nozzle.dischargeCoefficient, 0],
  'matched.ambientPressure': [(e) => e.nozzle.matchedAmbient, 0],
};

function plainReader([of, area]: readonly [Of, number]): Reader {
  return ({ solution }) => {
    const value = of(solution);
    return area === 0 ? value : { value, scatter: sizeScatter(solution, value, { area, efficiency: 0 }) };
  };
}

/** Measures of the wall, by the same power. */
const contourKeys = {
  nozzleLength: 0.5,
  totalLength: 0.5,
  throatRadius: 0.5,
  exitRadius: 0.5,
  chamberRadius: 0.5,
  chamberLength: 0.5,
  steepestAngle: 0,
  lipAngle: 0,
  nozzleArea: 1,
  chamberArea: 1,
} as const;

function contourReader(key: keyof typeof contourKeys): Reader {
  return (asked) => {
    const value = shapeOf(asked).contour[key];
    const area = contourKeys[key];
    return area === 0
      ? value
      : { value, scatter: sizeScatter(asked.solution, value, { area, efficiency: 0 }) };
  };
}

const fieldKeys = ['mass', 'massPutRight', 'momentum', 'energy', 'nodes'] as const;

function fieldReader(key: (typeof fieldKeys)[number]): Reader {
  return (asked) => {
    const { nozzle } = asked.solution;
    const balance = nozzle.balance();
    if (balance === null) {
      const { sum, note } = thrustPartsAt(asked.solution, 0);
      return absent(asked, noField(sum !== null, note));
    }
    return orAbsent(asked, balance[key], () => ({
      why: 'Nothing had to be put right in this flow field.',
      mend: 'Ask for field.mass, which every field has.',
    }));
  };
}

function composition(asked: Asked): number {
  const species = Object.entries(asked.solution.expansion.chamber.composition());
  if (species.length === 0) {
    return absent(asked, {
      why: 'A perfect gas has no composition.',
      mend: 'State propellants that burn, or a gas by its name.',
    });
  }
  const sorted = species.sort(([, a], [, b]) => b - a);
  return namedOne(asked, 'species', sorted, ([name]) => [name])[1];
}

export const engineReaders: Readers = {
  ...Object.fromEntries(Object.entries(plain).map(([name, one]) => [name, plainReader(one)])),
  ...Object.fromEntries(
    (Object.keys(contourKeys) as (keyof typeof contourKeys)[]).map((key) => [
      `contour.${key}`,
      contourReader(key),
    ]),
  ),
  ...Object.fromEntries(fieldKeys.map((key) => [`field.${key}`, fieldReader(key)])),
  'chamber.isentropicExponent': (asked) => {
    const { chamber } = asked.solution.expansion;
    return orAbsent(asked, chamber.isentropicExponent, () => noSoundSpeed(chamber.absent));
  },
  'chamber.bulkDensity': (asked) => orAbsent(asked, asked.solution.bulkDensity, () => NO_BULK_DENSITY),
  'chamber.composition': composition,
  'exit.mach': (asked) => {
    const { exit } = asked.solution.nozzle;
    return orAbsent(asked, exit.mach, () => noSoundSpeed(exit.absent));
  },
  'matched.altitude': ({ solution }) => geometricAltitudeAtPressure(solution.nozzle.matchedAmbient),
  characteristicVelocity: ({ solution }) => {
    const value = solution.characteristicVelocity;
    return { value, scatter: sizeScatter(solution, value, { area: 0, efficiency: 1 }) };
  },
  massFlow: ({ solution }) => {
    const value = solution.massFlow;
    return { value, scatter: sizeScatter(solution, value, { area: 1, efficiency: -1 }) };
  },
};

/** Numbers that an engine has once: chamber, throat, lip, size, contour, closure of the field. */

import { geometricAltitudeAtPressure } from '../../physics/air/index.ts';
import { NO_BULK_DENSITY, noField, noSoundSpeed } from '../absences.ts';
import { sizeScatter } from '../scatter/figureScatter.ts';
import { diameterOf, type EngineSolution } from '../solution.ts';
import { thrustPartsAt } from '../thrustParts.ts';
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
  'contour.nozzleLength': [(e) => e.contour.nozzleLength, 0.5],
  'contour.totalLength': [(e) => e.contour.totalLength, 0.5],
  'contour.throatRadius': [(e) => e.contour.throatRadius, 0.5],
  'contour.exitRadius': [(e) => e.contour.exitRadius, 0.5],
  'contour.chamberRadius': [(e) => e.contour.chamberRadius, 0.5],
  'contour.chamberLength': [(e) => e.contour.chamberLength, 0.5],
  'contour.steepestAngle': [(e) => e.contour.steepestAngle, 0],
  'contour.lipAngle': [(e) => e.contour.lipAngle, 0],
  'contour.nozzleArea': [(e) => e.contour.nozzleArea, 1],
  'contour.chamberArea': [(e) => e.contour.chamberArea, 1],
};

function plainReader([of, area]: readonly [Of, number]): Reader {
  return ({ solution }) => {
    const value = of(solution);
    return area === 0 ? value : { value, scatter: sizeScatter(solution, value, { area, efficiency: 0 }) };
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

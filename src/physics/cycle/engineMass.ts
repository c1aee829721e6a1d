/** Dry mass of a pump-fed engine by published relations, as a band. */

export interface MassRelation {
  readonly source: string;
  /** [kg] */ readonly mass: number;
}

export interface MassBand {
  readonly relations: readonly MassRelation[];
  /** Geometric mean of the relations [kg] */ readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Public engines lie between these shares of the lowest and of the highest relation; both hold them apart from the newest
 * light kerosene engines, which weigh less. See tests/physics/cycle/masses.test.ts.
 */
const BELOW = 0.7;
const ABOVE = 1.35;

/**
 * Dry mass by thrust, area ratio and fuel [kg]
 *
 *   M = 7.81·10⁻⁴ F + 3.37·10⁻⁵ F √ε + 59                                     (1)
 *   M = 0.00514 F^0.92068  with hydrogen,   1.104·10⁻³ F + 27.702  otherwise  (2)
 *
 * @param thrust F in vacuum [N], 10 kN to 10 MN
 * @param areaRatio ε of the nozzle [–]
 * Sources: (1) D. L. Akin, University of Maryland, lectures on mass estimating relations (from memory); (2) B. T. C. Zandbergen,
 * Simple mass and size estimation relationships of pump fed rocket engines, EUCASS 2015 (from memory).
 * Neither knows the chamber pressure, the cycle or the year: hence the band.
 */
export function engineMass(thrust: number, areaRatio: number, hydrogen: boolean): MassBand {
  const relations: readonly MassRelation[] = [
    {
      source: 'D. L. Akin, University of Maryland, mass estimating relations (from memory)',
      mass: 7.81e-4 * thrust + 3.37e-5 * thrust * Math.sqrt(areaRatio) + 59,
    },
    {
      source: 'B. T. C. Zandbergen, EUCASS 2015 (from memory)',
      mass: hydrogen ? 0.00514 * thrust ** 0.92068 : 1.104e-3 * thrust + 27.702,
    },
  ];
  const masses = relations.map(({ mass }) => mass);
  return {
    relations,
    value: Math.exp(masses.reduce((sum, mass) => sum + Math.log(mass), 0) / masses.length),
    low: BELOW * Math.min(...masses),
    high: ABOVE * Math.max(...masses),
  };
}

/** [N] thrusts for which the relations were made. */
export const MASS_RANGE = { from: 1e4, to: 1e7 } as const;

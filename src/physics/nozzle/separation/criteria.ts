/** The criteria as rows: formula, range, source. A new one adds a row. */

import {
  KALT_BADAL,
  limitAmbientPower,
  type PowerLaw,
  SCHILLING_CONE,
  SCHILLING_CONTOURED,
  SEPARATION_PRESSURE_RATIO_SUMMERFIELD,
  separationPressureRatioPower,
  separationPressureRatioSchmucker,
  separationPressureRatioStark,
  separationPressureRatioZukoski,
} from './formulas.ts';
import type { CriterionId, Span } from './model.ts';
import { separationPressureRatioShockMach } from './shockMachRatio.ts';

/** What a criterion may ask of the nozzle it judges. */
export interface JudgedWall {
  /** [Pa] */ readonly chamberPressure: number;
  /** γ for a shock at the wall [–] */ readonly gamma: number;
  /** Straight wall or shaped: one of the criteria has constants for each. */ readonly form:
    | 'cone'
    | 'contoured';
}

export interface Criterion {
  readonly id: CriterionId;
  readonly name: string;
  readonly source: string;
  /** In words. */ readonly range: string;
  /** Mach numbers at which it counts [–]. */ readonly mach: Span | null;
  /** Pressure ratios p_c/p_a at which it counts [–]. */ readonly pressureRatio: Span | null;
  /** Flattest wall on which it counts [rad]. */ readonly wallAngle: number | null;
  /** p_sep/p_a [–]; null where it has no value. */
  ratio(mach: number | null, pressureRatio: number, wall: JudgedWall): number | null;
  /** [Pa] ambient pressure at which it lets the gas go, at a wall pressure and Mach number. */
  limitAmbient(pressure: number, mach: number | null, wall: JudgedWall): number | null;
}

type OfMach = Pick<Criterion, 'ratio' | 'limitAmbient'>;

function ofMach(ratioAt: (mach: number, wall: JudgedWall) => number): OfMach {
  return {
    ratio: (mach, _, wall) => (mach === null ? null : ratioAt(mach, wall)),
    limitAmbient: (pressure, mach, wall) => (mach === null ? null : pressure / ratioAt(mach, wall)),
  };
}

function ofPressureRatio(lawOf: (wall: JudgedWall) => PowerLaw): OfMach {
  return {
    ratio: (_, pressureRatio, wall) => separationPressureRatioPower(lawOf(wall), pressureRatio),
    limitAmbient: (pressure, _, wall) => limitAmbientPower(lawOf(wall), pressure, wall.chamberPressure),
  };
}

/** The deciding one: over the widest span of Mach numbers, between the others. */
export const DECIDING: CriterionId = 'schmucker';
/** Decides where the gas has no Mach number. */
export const DECIDING_WITHOUT_MACH: CriterionId = 'summerfield';

/** Wall angle from which criteria of flat walls hold in cones [rad]: E. L. Morrisette, T. J. Goldberg, NASA TP-1207, 1978; from memory. */
const MORRISETTE_GOLDBERG_ANGLE = (9 * Math.PI) / 180;

/** p_c/p_a between which the two power laws count: taken from the spans usually plotted; common practice, no source. */
const POWER_LAW_RANGE: Span = { low: 10, high: 250 };

export const CRITERIA: readonly Criterion[] = [
  {
    id: 'schmucker',
    name: 'Schmucker 1973',
    source: 'R. Schmucker, TU Munich TB-7, -10, -14, 1973 (NASA TM-77396, 1984); formula from memory',
    range: 'Mach 1.5 to 5.5 (from memory, rounded)',
    mach: { low: 1.5, high: 5.5 },
    pressureRatio: null,
    wallAngle: null,
    ...ofMach(separationPressureRatioSchmucker),
  },
  {
    id: 'summerfield',
    name: 'Summerfield 1954',
    source: 'M. Summerfield, C. Foster, W. Swan, Jet Propulsion 24(9), 1954, 319–321',
    range: 'Mach 2 to 4: further up measured ratios fall well below a fixed one (common practice, no source)',
    mach: { low: 2, high: 4 },
    pressureRatio: null,
    wallAngle: null,
    ratio: () => SEPARATION_PRESSURE_RATIO_SUMMERFIELD,
    limitAmbient: (pressure) => pressure / SEPARATION_PRESSURE_RATIO_SUMMERFIELD,
  },
  {
    id: 'kaltBadal',
    name: 'Kalt & Badal 1965',
    source: 'S. Kalt, D. Badal, J. Spacecraft & Rockets 2(3), 1965; formula from memory',
    range: 'chamber over outside pressure 10 to 250 (common practice, no source); tests on cones',
    mach: null,
    pressureRatio: POWER_LAW_RANGE,
    wallAngle: null,
    ...ofPressureRatio(() => KALT_BADAL),
  },
  {
    id: 'schilling',
    name: 'Schilling 1962',
    source: 'Schilling, 1962, constants for contoured walls and for cones; formulas from memory',
    range: 'chamber over outside pressure 10 to 250 (common practice, no source)',
    mach: null,
    pressureRatio: POWER_LAW_RANGE,
    wallAngle: null,
    ...ofPressureRatio(({ form }) => (form === 'cone' ? SCHILLING_CONE : SCHILLING_CONTOURED)),
  },
  {
    id: 'stark',
    name: 'Stark 2013',
    source: 'R. Stark, AIAA 2013-3840; formula from memory',
    range: 'Mach 2.5 to 4.5 (from memory)',
    mach: { low: 2.5, high: 4.5 },
    pressureRatio: null,
    wallAngle: null,
    ...ofMach(separationPressureRatioStark),
  },
  {
    id: 'zukoski',
    name: 'Zukoski 1967',
    source: 'E. E. Zukoski, AIAA J. 5, 1967; formula from memory',
    range:
      'Mach 1.4 to 6 (from memory), wall at 9° or more to the axis (E. L. Morrisette, T. J. Goldberg, NASA TP-1207, 1978; from memory)',
    mach: { low: 1.4, high: 6 },
    pressureRatio: null,
    wallAngle: MORRISETTE_GOLDBERG_ANGLE,
    ...ofMach(separationPressureRatioZukoski),
  },
  {
    id: 'shockMachRatio',
    name: 'Reshotko & Tucker 1955',
    source:
      'E. Reshotko, M. Tucker, NACA TN 3454, 1955, used for nozzles by M. Arens, E. Spiegler, AIAA J. 1(3), 1963; from memory',
    range: 'Mach 1.5 to 4 (from memory, rounded)',
    mach: { low: 1.5, high: 4 },
    pressureRatio: null,
    wallAngle: null,
    ...ofMach((mach, { gamma }) => separationPressureRatioShockMach(mach, gamma)),
  },
];

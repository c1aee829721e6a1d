import type { Expansion } from '../../gas/flow.ts';
import type { ThrustAt, ThrustPart } from '../model.ts';
import type { WallSeparation } from './model.ts';
import { flowVerdict } from './verdict.ts';

/** The thrust of a nozzle at one ambient pressure if the gas stayed on its wall. */
export interface FullThrust {
  /** C_F [–] */ readonly coefficient: number;
  readonly parts: readonly ThrustPart[];
  readonly partsAbsent: string | null;
  readonly boundary: number | null;
}

/** The surface from which the gas separates, as the parts of the thrust name it. */
const WALL = 'nozzle wall';

/**
 * Thrust at any ambient pressure: that of full flow, and on the wall behind the place of separation the dead air's
 * pressure in the stead of the gas's.
 *
 *   C_F = C_F,full + [ ∫_s^lip p_dead dε − ∫_s^lip p_wall dε ] / p0
 *
 * Source: S. Kalt, D. Badal, J. Spacecraft & Rockets 2(3), 1965 (attached part plus near-ambient remainder; from memory).
 */
export function thrustOffDesign(
  wall: WallSeparation,
  ambientPressure: number,
  full: FullThrust,
): Omit<ThrustAt, 'exit'> {
  const { coefficient, gain, absent, separation } = wall.at(ambientPressure, full.coefficient);
  return {
    ambientPressure,
    thrustCoefficientIfFull: full.coefficient,
    thrustCoefficient: coefficient,
    absent,
    ...partsOf(full, separation.massFlowShare < 1, coefficient, gain),
    boundary: coefficient === null || full.boundary === null ? null : full.boundary + gain,
    flow: flowVerdict(wall, separation, ambientPressure),
    separation,
  };
}

function partsOf(
  full: FullThrust,
  unchoked: boolean,
  coefficient: number | null,
  gain: number,
): Pick<ThrustAt, 'parts' | 'partsAbsent'> {
  if (coefficient === null) return { parts: [], partsAbsent: 'There is no thrust to share out.' };
  if (unchoked) {
    return {
      parts: [],
      partsAbsent: 'Unchoked flow is known at its end only, not on each surface.',
    };
  }
  const parts = full.parts.map((part) =>
    part.surface === WALL ? { ...part, coefficient: part.coefficient + gain } : part,
  );
  return { parts, partsAbsent: full.partsAbsent };
}

/** The same for a nozzle that by definition holds the gas on its wall: the verdict tells, the thrust does not follow. */
export function thrustAttached(
  wall: WallSeparation,
  ambientPressure: number,
  full: FullThrust,
  expansion: Expansion,
): Omit<ThrustAt, 'exit'> {
  const { absent, separation } = wall.at(ambientPressure, full.coefficient);
  const none =
    ambientPressure > expansion.throat.pressure ? (absent ?? unchokedReason(ambientPressure)) : null;
  return {
    ambientPressure,
    thrustCoefficientIfFull: full.coefficient,
    thrustCoefficient: none === null ? full.coefficient : null,
    absent: none,
    parts: none === null ? full.parts : [],
    partsAbsent: none ?? full.partsAbsent,
    boundary: none === null ? full.boundary : null,
    flow: flowVerdict(wall, separation, ambientPressure),
    separation: {
      ...separation,
      thrustCoefficient: none === null ? { low: full.coefficient, high: full.coefficient } : null,
    },
  };
}

/** Why an idealisation has no thrust when the surroundings press harder than the choked throat. */
export function unchokedReason(ambientPressure: number): string {
  return (
    `At ${Number((ambientPressure / 1000).toPrecision(3))} kPa around it the throat cannot be relied on to choke, and this idealisation knows choked flow only. ` +
    'Raise the chamber pressure to at least about twice the ambient pressure.'
  );
}

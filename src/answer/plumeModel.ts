/** The jet behind an engine in the answer. SI units. */

import type { JetRegime, ShockMeeting } from '../physics/plume/index.ts';

export interface PlumePoint {
  /** [m] from the throat plane */ readonly axial: number;
  /** [m] */ readonly radius: number;
}

export interface BoundaryPoint extends PlumePoint {
  /** True where the boundary is drawn on, not computed. */ readonly sketch: boolean;
}

export interface PlumeFigures {
  /** [Pa] */ readonly ambientPressure: number;
  readonly regime: JetRegime | null;
  /** [rad] of the boundary at the lip, outwards positive */ readonly boundaryTurn: number | null;
  /** [rad] direction of the boundary right behind the lip, against the axis */ readonly boundaryAngle:
    | number
    | null;
  readonly boundaryMach: number | null;
  /** [Pa] on the boundary: the ambient's, or the lowest that the data of the gas reach */
  readonly boundaryPressure: number | null;
  readonly fullyExpandedMach: number | null;
  /** [m] */ readonly fullyExpandedDiameter: number | null;
  /** [m] from the lip */ readonly cellLength: number | null;
  /** [m] from the lip */ readonly machDisk: number | null;
  readonly shockMeeting: ShockMeeting | null;
  /** Where characteristics first run together; null: not within what is computed. */
  readonly firstCrossing: PlumePoint | null;
  /** From the lip on; empty where there is none. */ readonly boundary: readonly BoundaryPoint[];
}

export interface PlumeAtAltitude extends PlumeFigures {
  /** [m] geometric */ readonly altitude: number;
}

export interface PlumeAnswer {
  readonly seaLevel: PlumeFigures;
  readonly vacuum: PlumeFigures;
  /** At the altitudes of the answer. */ readonly altitudes: readonly PlumeAtAltitude[];
  /** At the ambient pressures of the answer. */ readonly ambients: readonly PlumeFigures[];
}

/** What is known of the jet behind a nozzle at one ambient pressure. Lengths over the throat radius, angles in radians. */

/** How the exit stands to its surroundings. */
export type JetRegime = 'over-expanded' | 'matched' | 'under-expanded';

/** How the shock that closes the first cell meets the axis. */
export type ShockMeeting = 'Mach disk' | 'regular reflection';

export interface JetPoint {
  /** downstream of the lip [–] */ readonly axial: number;
  /** from the axis [–] */ readonly radius: number;
}

/** The gas as it would be if it expanded, or were compressed, isentropically to the ambient pressure. */
export interface FullyExpanded {
  /** M_j [–] */ readonly mach: number;
  /** D_j over the throat diameter [–] */ readonly diameter: number;
}

/** What happens to the boundary of the jet at the lip. */
export interface LipTurn {
  readonly regime: JetRegime;
  /** [Pa] on the wall at the lip */ readonly lipPressure: number;
  readonly lipMach: number;
  /** [rad] direction of the wall's flow at the lip, outwards positive */ readonly lipAngle: number;
  /** [rad] by which the boundary turns there, outwards positive: expansion above 0, shock below 0 */
  readonly turn: number;
  /** Mach number along the boundary [–] */ readonly boundaryMach: number;
  /** [rad] angle of the shock to the flow ahead of it; null: an expansion */ readonly shockAngle:
    | number
    | null;
  /** [Pa] pressure on the boundary: the ambient's, or the lowest that the data of the gas reach */
  readonly boundaryPressure: number;
}

/** The jet as far as it is computed, and a sketch of how it goes on. */
export interface JetOutline {
  /** From the lip on, by characteristics. */ readonly computed: readonly JetPoint[];
  /** From the last computed point on: a drawing, not a result. */ readonly sketched: readonly JetPoint[];
  /** Where characteristics of one family first run together: a shock begins there; null: not within what is computed */
  readonly firstCrossing: JetPoint | null;
}

/** A number, or why there is none. */
export type Given<T> =
  | { readonly value: T; readonly absent: null }
  | { readonly value: null; readonly absent: string };

export interface Plume {
  /** Where the jet begins, over the throat radius from the throat plane; null: at the end of the nozzle's outer wall */
  readonly lipAxial: number | null;
  /** [Pa] */ readonly ambientPressure: number;
  readonly lip: Given<LipTurn>;
  readonly fullyExpanded: Given<FullyExpanded>;
  /** First shock cell, lip to the end of it [–] */ readonly cellLength: Given<number>;
  /** Lip to Mach disk [–] */ readonly machDisk: Given<number>;
  readonly meeting: Given<ShockMeeting>;
  readonly outline: Given<JetOutline>;
}

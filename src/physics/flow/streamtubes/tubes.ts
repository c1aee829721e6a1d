/**
 * A front across the flow: streamtubes side by side, each with its own mass flow, momentum and share of stagnation
 * pressure. Nodes lie on the streamlines between the tubes; tube j lies between nodes j and j + 1, lower side first.
 *
 * Momentum of a tube is that of the flow across its piece of front, pressure included:
 *
 *   P = ṁ V + p A,        A = r̄ (Δr, −Δx)   round flow, per radian;   A = (Δr, −Δx)   plane flow, per metre of width
 */

import type { Symmetry } from '../points.ts';

export interface TubeFront {
  readonly count: number;
  readonly round: boolean;
  /** Nodes [m], count + 1. */ readonly x: Float64Array;
  readonly r: Float64Array;
  /** [kg/s] per radian or per metre of width */ readonly mass: Float64Array;
  /** [N] per radian or per metre of width */ readonly momentumX: Float64Array;
  readonly momentumR: Float64Array;
  /** [m/s] */ readonly speed: Float64Array;
  /** Direction of the flow: angle [rad], cosine, sine. */ readonly theta: Float64Array;
  readonly cosine: Float64Array;
  readonly sine: Float64Array;
  /** ln of p in Pa */ readonly lnP: Float64Array;
  /** [Pa] */ readonly pressure: Float64Array;
  /** ln of the share of stagnation pressure left */ readonly lnSigma: Float64Array;
  /** √(M² − 1) / (W V²) = −dθ/d ln p across a C− wave [rad] */ readonly bend: Float64Array;
  /** √(M² − 1) */ readonly beta: Float64Array;
  /** Faces between the tubes and at both ends, of the last step: ln p, p [Pa], flow angle [rad]. */
  readonly faceLnP: Float64Array;
  readonly faceP: Float64Array;
  readonly faceTheta: Float64Array;
}

export function newFront(count: number, symmetry: Symmetry): TubeFront {
  const tubes = (): Float64Array => new Float64Array(count);
  const nodes = (): Float64Array => new Float64Array(count + 1);
  return {
    count,
    round: symmetry === 'axisymmetric',
    x: nodes(),
    r: nodes(),
    mass: tubes(),
    momentumX: tubes(),
    momentumR: tubes(),
    speed: tubes(),
    theta: tubes(),
    cosine: tubes(),
    sine: tubes(),
    lnP: tubes(),
    pressure: tubes(),
    lnSigma: tubes(),
    bend: tubes(),
    beta: tubes(),
    faceLnP: nodes(),
    faceP: nodes(),
    faceTheta: nodes(),
  };
}

import type { SupersonicTable } from '../gasTable.ts';
import type { CharacteristicNet } from '../net.ts';
import type { Symmetry } from '../points.ts';

/** Where characteristics of one family first meet. */
export interface Crossing {
  readonly axial: number;
  readonly radius: number;
  /** C−: sent back by the boundary; C+: come back from the axis. */ readonly family: 'C−' | 'C+';
}

/** A jet under way. */
export interface Jet {
  readonly net: CharacteristicNet;
  readonly table: SupersonicTable;
  readonly symmetry: Symmetry;
  /** ν on the boundary [rad] */ readonly boundaryNu: number;
  /** Nothing is computed further down than this [m]. */ readonly axialLimit: number;
  /** Largest pressure ratio of a shock that is carried as a characteristic [–]; 1: none */
  readonly weakRise: number;
  /** The first crossing; null while there is none. */ crossing: Crossing | null;
  /** False once a line has ended short of the axis. */ reachesAxis: boolean;
  /** Number of the line of the net that leaves the lip with the boundary's pressure at its head. */ lipLine: number;
}

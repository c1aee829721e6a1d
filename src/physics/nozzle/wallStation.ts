/** The gas at one place of the wall, at the wall itself; sizes over the throat radius. */
export interface WallStation {
  /** from the throat plane [–] */ readonly axial: number;
  /** from the axis [–] */ readonly radius: number;
  /** [Pa] */ readonly pressure: number;
  /** [–]; null where the gas has no sound speed */ readonly mach: number | null;
  /** [K] */ readonly temperature: number;
}

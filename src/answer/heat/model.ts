/** What the answer prints of heat and cooling. SI units. */

export interface HeatPoint {
  readonly axial: number;
  readonly radius: number;
  /** [W/m²] by Bartz, radiation with it */ readonly flux: number;
  /** [W/m²] by the integral layer, radiation with it */ readonly layerFlux: number;
  /** [W/m²] */ readonly radiationFlux: number;
  /** [K] */ readonly adiabaticTemperature: number;
}

/** Heat to walls of one supposed temperature. */
export interface HeatAnswer {
  readonly wallTemperature: number;
  /** [W] */ readonly total: number;
  readonly layerTotal: number;
  /** of the total [–] */ readonly radiationShare: number;
  /** [W/m²] */ readonly peakFlux: number;
  readonly layerPeakFlux: number;
  /** [m] from the throat plane */ readonly peakAt: number;
  /** Which wall that is. */ readonly peakOn: string;
  /** [m²] */ readonly wettedArea: number;
  /** [m] */ readonly throatEdge: number;
  /** [m] */ readonly throatHydraulicDiameter: number;
  /** What a tenth of a millimetre more throat makes of area, flow and pressure [–]. */
  readonly gapError: { readonly area: number; readonly flow: number; readonly pressure: number };
  readonly walls: readonly { readonly name: string; readonly points: readonly HeatPoint[] }[];
}

export interface CoolingPoint {
  readonly axial: number;
  readonly radius: number;
  readonly adiabaticTemperature: number;
  readonly wallHot: number;
  readonly wallCold: number;
  readonly coolantTemperature: number;
  readonly coolantPressure: number;
  readonly coolantVelocity: number;
  readonly flux: number;
  /** null where the wall cannot get so hot */ readonly localMargin: number | null;
}

export interface CooledWallAnswer {
  readonly name: string;
  /** [m] at the throat */ readonly channelDepth: number;
  readonly points: readonly CoolingPoint[];
  readonly skirt: readonly { readonly axial: number; readonly radius: number; readonly wallHot: number }[];
}

export interface CoolingAnswer {
  readonly coolant: string;
  readonly wall: string;
  /** Of heat from wall to coolant. */ readonly correlation: string;
  /** What ends the heat that the coolant can take, in words. */ readonly capacityBy: string;
  readonly margin: number;
  readonly heatMargin: number;
  readonly wallMargin: number;
  readonly tightestAt: number;
  readonly tightestOn: string;
  readonly heat: number;
  readonly capacity: number;
  readonly flow: number;
  readonly inletTemperature: number;
  readonly inletPressure: number;
  readonly outletTemperature: number;
  readonly pressureDrop: number;
  readonly channelDepth: number;
  readonly channelWidth: number;
  readonly hottestWall: number;
  readonly hottestAt: number;
  readonly wallLimit: number;
  /** [K]; absent: no skirt */ readonly skirtTemperature?: number;
  readonly skirtLimit?: number;
  readonly scaling: {
    readonly heatMarginWithThrust: number | null;
    readonly wallMarginWithThrust: number | null;
    readonly heatMarginWithPressure: number | null;
    readonly wallMarginWithPressure: number | null;
  };
  readonly walls: readonly CooledWallAnswer[];
  readonly notes: readonly string[];
}

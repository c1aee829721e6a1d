/**
 * A plug nozzle as the flow models see it: walls, lip, start data. What the design makes, what the off-design field reads.
 *
 * Lengths are over the throat radius R_t = √(A_t/π), the radius of the circle of the throat's area, whatever the form: so a
 * plug and a bell of the same throat area are drawn to one scale. Axial distance counts from the lip, downstream positive;
 * radius is the distance from the axis, or from the plane of symmetry of a linear plug, of which the upper half is meant.
 * Angles in rad against the axis, negative towards it. Pressures in Pa.
 */

import type { SupersonicTable } from '../../flow/gasTable.ts';
import type { Symmetry } from '../../flow/points.ts';
import type { KeptFronts } from '../../flow/streamtubes/march.ts';

/** A point of a wall that guides supersonic flow, with the state there at and above the design pressure ratio. */
export interface PlugWallPoint {
  readonly axial: number;
  readonly radius: number;
  /** [rad] direction of the wall */ readonly angle: number;
  /** Prandtl–Meyer angle of the flow at the wall [rad] */ readonly nu: number;
}

export interface PlugGeometry {
  readonly form: 'annular' | 'linear';
  readonly symmetry: Symmetry;
  /** The gas over the Prandtl–Meyer angle; reaches below the exit pressure. */ readonly table: SupersonicTable;
  /** Exit area (annulus up to the lip, with the base) over throat area [–]. */ readonly areaRatio: number;
  /** Width of a linear plug [throat radii]; null where annular. */ readonly width: number | null;
  /**
   * Factor from a force on this geometry (axisymmetric: whole ring; planar: upper half, a width of 1), in Pa times throat
   * radii squared (planar: throat radii), to a coefficient: C = areaScale · F / p0. 1/π annular, 2·width/π linear.
   */
  readonly areaScale: number;
  /** Mass flow of that same piece in kg/(m² s) times throat radii squared (planar: throat radii). */
  readonly massFlow: number;

  /** Prandtl–Meyer angles [rad]: at the throat line, at the lip before its fan, of the design exit flow. */
  readonly nuThroat: number;
  readonly nuLip: number;
  readonly nuExit: number;
  /** Flow direction at the throat [rad], negative towards the axis. */ readonly throatAngle: number;

  /** End of the cowl; axial 0. */ readonly lip: { readonly axial: number; readonly radius: number };
  /**
   * Start line: nodes (stride NODE of physics/flow: x, r, θ, ν, μ) of the first ray, all supersonic, from the cowl side to
   * the plug side. Purely external: the first C− of the lip's fan. With inner expansion: the first C+ of the fan at the
   * plug-side corner of the throat.
   */
  readonly throatLine: Float64Array;
  /** Nodes of the C− from the lip to the plug at the lip's state before its fan, lip first: all that is upstream of it is not felt by ambient pressure unless that exceeds the lip's. */
  readonly lipRay: Float64Array;
  /** C− lines upstream of `lipRay` up to the last C+ of the inner fan, outer end first, its neighbour first; empty where there is no inner fan. */
  readonly between: readonly Float64Array[];
  /** Nodes of the rays of the lip's fan, the first is `lipRay`; each ends at its point of `wholeWall`, from `lipRayFoot` on; the wall's last points, towards the tip, have none. */
  readonly rays: readonly Float64Array[];
  /** Inner side of the cowl from the throat line to the lip; only the lip where purely external. */
  readonly cowl: readonly PlugWallPoint[];
  /** The plug's wall from the throat line to the whole plug's tip (radius 0). */
  readonly wholeWall: readonly PlugWallPoint[];
  /** The same up to the cut, its last point at the cut; `wholeWall` where all is kept. */
  readonly wall: readonly PlugWallPoint[];
  /** Index in `wall` and `wholeWall` of the foot of `lipRay`. */ readonly lipRayFoot: number;
  /** Where the plug is cut: radius 0 where whole. */
  readonly cut: { readonly axial: number; readonly radius: number };
}

/** State of the flow on the plug's wall at some ambient pressure. */
export interface PlugWallState {
  readonly axial: number;
  readonly radius: number;
  /** [Pa] */ readonly pressure: number;
  readonly mach: number;
  /** [K] */ readonly temperature: number;
}

/** A pressure rise on the wall, by which the flow could leave it. */
export interface Recompression {
  /** where it begins */ readonly axial: number;
  /** Mach number ahead of it */ readonly mach: number;
  /** static pressure behind over ahead [–] */ readonly pressureRatio: number;
}

/** The off-design flow on a plug at one ambient pressure. */
export interface PlugWallPressure {
  /** From the throat line's foot to the cut. */ readonly stations: readonly PlugWallState[];
  /** From the throat line to the lip, inner side of the cowl. */ readonly cowl: readonly PlugWallState[];
  /** Free boundary from the lip downstream. */
  readonly boundary: readonly { readonly axial: number; readonly radius: number; readonly angle: number }[];
  readonly recompressions: readonly Recompression[];
  /** Fronts of the march, wall first, for pictures; null where nothing is marched. */ readonly fronts: KeptFronts | null;
  /** Number of the ray, with its fraction, at which the march takes over from the lip's fan; all of them where none does. */
  readonly raysUsed: number;
  /**
   * Axial thrust coefficient of the flow through a section at the cut, wall to free boundary, by momentum and pressure
   * over ambient [–]: for the control volume. null where the field ends before.
   */
  readonly streamCoefficient: number | null;
  /** Why part of it is not computed; null: all is. */ readonly notComputed: string | null;
}

/** Off-design field of a plug below its design pressure ratio. */
export type PlugWallPressureModel = (geometry: PlugGeometry, ambientPressure: number) => PlugWallPressure;

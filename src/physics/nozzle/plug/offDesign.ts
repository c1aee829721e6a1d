/**
 * The flow on a plug at any ambient pressure.
 *
 * Above the design pressure ratio the lip's fan goes on past the plug: the wall feels the design flow, whatever the ambient.
 * Below it the fan ends at the ray on which the gas has come down to ambient. Up to that ray the flow is the design's, ray
 * by ray; from it on it is marched in streamtubes between the plug's wall and a free boundary at ambient pressure. The
 * wall, curved for more turning than the fan still gives, compresses the gas; the waves run to the boundary, come back as
 * expansions, and so on down the plug. Where they run together they are shocks, and their loss is counted.
 */

import { cubicBetween } from '../../../numerics/cubicBetween.ts';
import { nuAtPressure, type SupersonicTable, tableStateAt } from '../../flow/gasTable.ts';
import { NODE } from '../../flow/points.ts';
import {
  frontAlong,
  marchTubes,
  pressureBoundary,
  type SideSamples,
  speedAtPressure,
  type TubeGas,
  type TubeMarch,
  tubeGas,
  tubeStateAt,
  wallBoundary,
  wallLine,
} from '../../flow/streamtubes/index.ts';
import { acrossAtLip } from './acrossLip.ts';
import type {
  PlugGeometry,
  PlugWallPoint,
  PlugWallPressure,
  PlugWallPressureModel,
  PlugWallState,
} from './geometry.ts';
import { recompressionsOn } from './recompression.ts';

/** Tubes across the flow: the thrust is within 0.05 % of that with twice as many. */
const TUBES = 32;

/**
 * @param lossy isentrope of the same gas at a lower stagnation pressure; null where the composition is fixed
 * @returns the flow by ambient pressure [Pa]; tables and rays are prepared once
 */
export function plugOffDesign(geometry: PlugGeometry, lossy: SupersonicTable | null): PlugWallPressureModel {
  const gas = tubeGas(geometry.table, lossy);
  return (_, ambientPressure) => plugFlowAt(geometry, gas, ambientPressure);
}

/** The flow on the plug at one ambient pressure [Pa]. */
export function plugFlowAt(geometry: PlugGeometry, gas: TubeGas, ambientPressure: number): PlugWallPressure {
  const { table, wall, lipRayFoot, cowl, nuLip, nuExit } = geometry;
  const lipPressure = tableStateAt(table, nuLip).pressure;
  const exitPressure = tableStateAt(table, nuExit).pressure;
  const cowlStates = cowl.map((point) => designState(table, point));
  if (ambientPressure <= exitPressure) {
    return {
      stations: wall.map((point) => designState(table, point)),
      cowl: cowlStates,
      boundary: [],
      recompressions: [],
      fronts: null,
      raysUsed: geometry.rays.length,
      streamCoefficient: null,
      notComputed: null,
    };
  }
  const compressed = ambientPressure > lipPressure;
  const share = compressed ? 0 : rayShare(geometry, nuAtPressure(table, ambientPressure));
  const across = compressed ? acrossAtLip(geometry) : null;
  const start = across?.nodes ?? rayAt(geometry, share);
  const onWall = across?.onWall ?? lipRayFoot + share;
  const foot = { axial: start[0]!, radius: start[1]!, angle: start[2]! };
  const rest = wall.filter(({ axial }, i) => i > onWall && axial > foot.axial);
  const march = marchFrom(geometry, gas, start, foot, rest, ambientPressure);
  const upstream = march === null ? wall : wall.filter((_, i) => i < onWall);
  const stations = [
    ...upstream.map((point) => designState(table, point)),
    ...(march === null ? [] : toCut(statesAlong(march.lower, gas), march, geometry)),
  ];
  return {
    stations,
    cowl: cowlStates,
    boundary: march === null ? [] : boundaryOf(march.upper, geometry),
    recompressions: recompressionsOn(stations),
    fronts: march?.kept ?? null,
    raysUsed: march === null ? geometry.rays.length : share,
    streamCoefficient:
      march === null || march.stopped !== null ? null : streamCoefficient(geometry, march, ambientPressure),
    notComputed: march?.stopped?.what ?? null,
  };
}

/** What the wall feels at and above the design pressure ratio. */
function designState(table: SupersonicTable, { axial, radius, nu }: PlugWallPoint): PlugWallState {
  const { pressure, mach, temperature } = tableStateAt(table, nu);
  return { axial, radius, pressure, mach, temperature };
}

/** Number of the ray, with its fraction, on which the lip's side has ν. */
function rayShare({ rays }: PlugGeometry, nu: number): number {
  let k = 0;
  while (k < rays.length - 2 && rays[k + 1]![3]! < nu) k++;
  const low = rays[k]![3]!;
  const high = rays[k + 1]![3]!;
  return k + Math.min(Math.max((nu - low) / (high - low), 0), 1);
}

/** Nodes of the ray of number `share`, wall first, at equal shares of its node numbers: between two rays linear. */
function rayAt({ rays }: PlugGeometry, share: number): Float64Array {
  const k = Math.min(Math.floor(share), rays.length - 2);
  const t = share - k;
  const nodes = new Float64Array((TUBES * 2 + 1) * NODE);
  for (let i = 0; i <= TUBES * 2; i++) {
    const along = 1 - i / (TUBES * 2);
    for (let c = 0; c < NODE; c++) {
      nodes[i * NODE + c] = (1 - t) * nodeAt(rays[k]!, along, c) + t * nodeAt(rays[k + 1]!, along, c);
    }
  }
  return nodes;
}

/** Component c at a share of the ray's length from the lip. */
function nodeAt(ray: Float64Array, share: number, c: number): number {
  const last = ray.length - NODE;
  const dx = ray[last]! - ray[0]!;
  const dr = ray[last + 1]! - ray[1]!;
  const whole = dx * dx + dr * dr;
  // By projection on the chord: a ray is nearly straight.
  let i = 0;
  let before = 0;
  for (; i < last; i += NODE) {
    const next = ((ray[i + NODE]! - ray[0]!) * dx + (ray[i + NODE + 1]! - ray[1]!) * dr) / whole;
    if (next >= share || i + NODE >= last) {
      const t = (share - before) / (next - before);
      return ray[i + c]! + t * (ray[i + NODE + c]! - ray[i + c]!);
    }
    before = next;
  }
  return ray[last + c]!;
}

/** March to the cut, or for a whole plug to where the tip is too thin for tubes. null when the ray ends behind the cut. */
function marchFrom(
  geometry: PlugGeometry,
  gas: TubeGas,
  start: Float64Array,
  foot: Place,
  rest: readonly PlugWallPoint[],
  ambientPressure: number,
): TubeMarch | null {
  const points = upToTip(rest, geometry);
  if (points.length === 0) return null;
  return marchTubes({
    gas,
    front: frontAlong(gas, geometry.symmetry, start, TUBES),
    lower: [wallBoundary(wallLine(smoothed([foot, ...points])))],
    upper: [pressureBoundary(gas, ambientPressure)],
    keepEvery: KEEP_EVERY,
  });
}

/** Steps between two fronts kept for pictures. */
const KEEP_EVERY = 12;

interface Place {
  readonly axial: number;
  readonly radius: number;
  /** [rad] */ readonly angle: number;
}

/** Pieces between two points of the wall: the corners of a coarser line would send out waves of their own. */
const PIECES = 6;

/** The wall between its points as cubics with its own slopes. */
function smoothed(points: readonly Place[]): Place[] {
  const line = [points[0]!];
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1]!;
    const b = points[i]!;
    const chord = Math.hypot(b.axial - a.axial, b.radius - a.radius);
    for (let k = 1; k <= PIECES; k++) {
      const t = k / PIECES;
      line.push({
        axial: cubicBetween(a.axial, chord * Math.cos(a.angle), b.axial, chord * Math.cos(b.angle), t),
        radius: cubicBetween(a.radius, chord * Math.sin(a.angle), b.radius, chord * Math.sin(b.angle), t),
        angle: b.angle,
      });
    }
  }
  return line;
}

/** Share of the lip radius at which the march along a whole round plug ends; along a linear one it goes to the tip. */
const TIP_LEFT = 0.01;

/** The wall's points, the last piece of a whole round plug cut short where its tip is too thin for tubes. */
function upToTip(points: readonly PlugWallPoint[], geometry: PlugGeometry): readonly Place[] {
  const least = geometry.symmetry === 'axisymmetric' ? TIP_LEFT * geometry.lip.radius : 0;
  const thick = points.filter(({ radius }) => radius > least);
  const next = points[thick.length];
  const last = thick[thick.length - 1];
  if (next === undefined || last === undefined) return thick;
  const t = (last.radius - least) / (last.radius - next.radius);
  return [...thick, { axial: last.axial + t * (next.axial - last.axial), radius: least, angle: next.angle }];
}

/** The last state holds from the last sample to the cut, a fraction of a step or the tip that was left out. */
function toCut(
  states: readonly PlugWallState[],
  { stopped }: TubeMarch,
  { cut }: PlugGeometry,
): readonly PlugWallState[] {
  const last = states[states.length - 1];
  return stopped === null && last !== undefined && cut.axial > last.axial
    ? [...states, { ...last, axial: cut.axial, radius: cut.radius }]
    : states;
}

function statesAlong(side: SideSamples, gas: TubeGas): PlugWallState[] {
  return Array.from({ length: side.count }, (_, i) => {
    const lnSigma = side.lnSigma[i]!;
    const pressure = Math.exp(side.lnP[i]!);
    const { mach, temperature } = tubeStateAt(gas, speedAtPressure(gas, pressure, lnSigma), lnSigma);
    return { axial: side.x[i]!, radius: side.r[i]!, pressure, mach, temperature };
  });
}

function boundaryOf(
  side: SideSamples,
  { lip }: PlugGeometry,
): { readonly axial: number; readonly radius: number; readonly angle: number }[] {
  let from = { axial: lip.axial, radius: lip.radius };
  const points = Array.from({ length: side.count }, (_, i) => {
    const here = { axial: side.x[i]!, radius: side.r[i]! };
    const angle = Math.atan2(here.radius - from.radius, here.axial - from.axial);
    from = here;
    return { ...here, angle };
  });
  return [{ ...lip, angle: points[0]?.angle ?? 0 }, ...points];
}

/** Momentum and pressure over ambient across the last front, over p0 A_t; the boundary itself is at ambient. */
function streamCoefficient(geometry: PlugGeometry, { front }: TubeMarch, ambientPressure: number): number {
  const turn = front.round ? 2 * Math.PI : 1;
  const axial = front.momentumX.reduce((sum, value) => sum + value, 0);
  const area = (r: number): number => (front.round ? (r * r) / 2 : r);
  const across = area(front.r[front.count]!) - area(front.r[0]!);
  return (geometry.areaScale * turn * (axial - ambientPressure * across)) / geometry.table.stagnationPressure;
}

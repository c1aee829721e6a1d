import type { Problem } from '../../../numerics/problem.ts';
import type { WallStation } from '../model.ts';
import {
  SEPARATION_PRESSURE_RATIO_SUMMERFIELD,
  separationPressureRatioSchmucker,
} from '../separation/formulas.ts';
import { type DeflectedFlow, type DeflectedGas, deflectedFlow } from './deflectedFlow.ts';
import type { DeflectionShape, Place } from './shape.ts';

/** Forces on the surfaces at one ambient pressure, that pressure taken off outside, over p0 A_t, forwards positive [–]. */
export interface DeflectedForces {
  readonly throat: number;
  readonly wall: number;
  readonly edge: number;
  readonly base: number;
}

/** The nozzle at one ambient pressure. */
export interface DeflectedAt {
  /** The gas on the wall as long as the criterion keeps it there. */ readonly forces: DeflectedForces;
  /** Their sum by the boundary [–] */ readonly boundary: number;
  /** The place of the wall nearest to letting go, or where it lets go. */ readonly weakest: {
    readonly pressure: number;
    readonly separationPressure: number;
    readonly station: WallStation;
  };
  readonly isSeparated: boolean;
  /** Why there is no thrust here; null where there is. */ readonly problem: Problem | null;
}

/** p_sep/p_a at the wall; Summerfield's where the gas has no Mach number. */
function separationRatio(mach: number | null): number {
  return mach === null ? SEPARATION_PRESSURE_RATIO_SUMMERFIELD : separationPressureRatioSchmucker(mach);
}

/** The wall feels the throat's roundness over this distance behind the throat line; nobody asks for separation there. */
const NEAR_THROAT = 0.05;

/**
 * What a computed flow makes of an ambient pressure p_a: forces on the wall up to where the criterion lets the gas go, from
 * there on ambient.
 *
 *   chamber   [ṁu + pA]_throat − p_a (r_o² − r_i²)       edge   ∫ p dA − p_a (r_i² − r_b²)
 *   wall      ∫^{sep} p dA − p_a (r_sep² − r_o²)          base   (p_wake − p_a) r_b²
 */
export function deflectedAt(
  flow: DeflectedFlow,
  shape: DeflectionShape,
  ambientPressure: number,
  p0: number,
): DeflectedAt {
  const outside = ambientPressure / p0;
  const { wallForce } = flow;
  const stations = flow.stations();
  const { weakest, separated } = judgeWall(stations, ambientPressure);
  const lip: Place = shape.wall.at(-1)!;
  const last = wallForce.length - 1;
  const [inner, outer] = [shape.inner.radius ** 2, shape.outer.radius ** 2];
  const base = flow.baseRadius ** 2;
  const fixed = {
    throat: flow.throat - outside * (outer - inner),
    edge: flow.edge - outside * (inner - base),
    base: (flow.wakePressure / p0 - outside) * base,
  };
  const wallTo = (index: number, radius: number): number =>
    wallForce[index]! - outside * (radius ** 2 - outer);
  const wall = separated === null ? wallTo(last, lip.radius) : wallTo(separated, stations[separated]!.radius);
  // By the boundary: what the last front carries, less the wall behind the separation as computed and as it is.
  const boundary = flow.boundary - outside * lip.radius ** 2 - (wallTo(last, lip.radius) - wall);
  return {
    forces: { ...fixed, wall },
    boundary,
    weakest,
    isSeparated: separated !== null,
    // A march that ended before the place of separation knows too little; behind it nothing more is needed.
    problem: separated === null ? flow.stopped : null,
  };
}

/**
 * What a wake at another pressure than the air's adds to thrust, its push on the base aside; the gas leaves the wall where it
 * does with the wake at the air's pressure. Null where no flow reaches so far.
 */
export function wakeAdds(
  shape: DeflectionShape,
  gas: DeflectedGas,
  p0: number,
  ambientPressure: number,
  wakePressure: number,
): number | null {
  const [own, other] = [ambientPressure, wakePressure].map((pressure) => deflectedFlow(shape, gas, pressure));
  if (own!.stopped !== null || other!.stopped !== null) return null;
  const { separated } = judgeWall(own!.stations(), ambientPressure);
  const leaves = separated === null ? null : own!.stations()[separated]!.axial;
  const outside = ambientPressure / p0;
  const streamOf = (flow: DeflectedFlow): number => {
    const stations = flow.stations();
    const to = leaves === null ? stations.length - 1 : stations.findIndex(({ axial }) => axial >= leaves);
    const wall = flow.wallForce[to]! - outside * stations[to]!.radius ** 2;
    return flow.throat + flow.edge + wall + outside * flow.baseRadius ** 2;
  };
  return streamOf(other!) - streamOf(own!);
}

function judgeWall(
  stations: readonly WallStation[],
  ambientPressure: number,
): Pick<DeflectedAt, 'weakest'> & { readonly separated: number | null } {
  let weakest: DeflectedAt['weakest'] | null = null;
  for (const [i, station] of stations.entries()) {
    if (station.axial < NEAR_THROAT) continue;
    const separationPressure = separationRatio(station.mach) * ambientPressure;
    const here = { pressure: station.pressure, separationPressure, station };
    if (station.pressure < separationPressure) return { weakest: here, separated: i };
    if (
      weakest === null ||
      station.pressure * weakest.separationPressure < weakest.pressure * separationPressure ||
      ambientPressure === 0
    )
      weakest = here;
  }
  const end = stations[stations.length - 1]!;
  return {
    weakest: weakest ?? {
      pressure: end.pressure,
      separationPressure: separationRatio(end.mach) * ambientPressure,
      station: end,
    },
    separated: null,
  };
}

/** Open wakes computed so far, by their number on the ladder of ambient pressures. */
export interface OpenWakes {
  at(ambientPressure: number): DeflectedAt;
}

/** Step of the ladder: each rung 6 % above the one below. */
const LN_STEP = 0.06;

/**
 * The open wake, base at ambient: flows computed on a ladder of ambient pressures 6 % apart, each when first asked for;
 * between two rungs every force goes linearly with ln p_a, and the more careful verdict holds.
 *
 * @param lowest [Pa] ambient pressure of the lowest rung: the wake closes there
 */
export function openWakes(shape: DeflectionShape, gas: DeflectedGas, p0: number, lowest: number): OpenWakes {
  const rungs = new Map<number, DeflectedAt>();
  const top = Math.floor(Math.log((0.97 * gas.linePressure) / lowest) / LN_STEP);
  const rung = (k: number): DeflectedAt => {
    const kept = rungs.get(k);
    if (kept !== undefined) return kept;
    const pressure = lowest * Math.exp(k * LN_STEP);
    const found = deflectedAt(deflectedFlow(shape, gas, pressure), shape, pressure, p0);
    rungs.set(k, found);
    return found;
  };
  return {
    at(ambientPressure) {
      const place = Math.max(0, Math.log(ambientPressure / lowest) / LN_STEP);
      const k = Math.min(Math.floor(place), top - 1);
      return between(rung(k), rung(k + 1), place - k);
    },
  };
}

function between(low: DeflectedAt, high: DeflectedAt, share: number): DeflectedAt {
  const mix = (a: number, b: number): number => a + share * (b - a);
  const nearer = share < 0.5 ? low : high;
  const careful = low.isSeparated === high.isSeparated ? nearer : low.isSeparated ? low : high;
  return {
    forces: {
      throat: mix(low.forces.throat, high.forces.throat),
      wall: mix(low.forces.wall, high.forces.wall),
      edge: mix(low.forces.edge, high.forces.edge),
      base: mix(low.forces.base, high.forces.base),
    },
    boundary: mix(low.boundary, high.boundary),
    weakest: careful.weakest,
    isSeparated: careful.isSeparated,
    problem: low.problem ?? high.problem,
  };
}

import type { Problem } from '../../../numerics/problem.ts';
import { nuAtPressure, tableStateAt } from '../../flow/gasTable.ts';
import { NODE, setNodeInto } from '../../flow/points.ts';
import {
  carriedBy,
  frontAlong,
  marchTubes,
  nuOfSpeed,
  pressureBoundary,
  type SideSamples,
  speedAtPressure,
  type TubeFront,
  type TubeGas,
  tubeStateAt,
  wallBoundary,
  wallLine,
} from '../../flow/streamtubes/index.ts';
import type { WallStation } from '../model.ts';
import { type DeflectionShape, type Place, pintleEdge } from './shape.ts';

/** Streamtubes across the throat where nothing is said: the thrust is within 0.4 % of that of four times as many. */
const TUBES = 48;
/** The wake's neck: it closes where its boundary comes down to this share of the pintle's radius (own choice, no source). */
export const NECK_SHARE = 0.3;

export interface MarchOptions {
  /** `neck`: end there where the wake closes. */ readonly until?: 'neck' | 'lip';
  /** Streamtubes across the throat. */ readonly tubes?: number;
  /** The wake closes where its boundary comes down to this share of the pintle's radius. */ readonly neckShare?: number;
}

/** The gas of an expansion–deflection nozzle, ready to be marched. */
export interface DeflectedGas {
  readonly gas: TubeGas;
  /** ν on the throat line [rad] */ readonly lineNu: number;
  /** [Pa] on the throat line */ readonly linePressure: number;
}

export function deflectedGas(gas: TubeGas, lineNu: number): DeflectedGas {
  return { gas, lineNu, linePressure: tableStateAt(gas.table, lineNu).pressure };
}

/** The flow with a given pressure in the wake; forces over p0 A_t, ambient zero, forwards positive [–]. */
export interface DeflectedFlow {
  /** [Pa] in the wake behind the pintle */ readonly wakePressure: number;
  /** Where the wake closes; null where it stays open to the lip. */ readonly neck: {
    readonly place: Place;
    /** [rad] by which the flow there still runs inwards */ readonly turn: number;
    readonly mach: number;
  } | null;
  /** Momentum and pressure across the throat line. */ readonly throat: number;
  /** On the pintle's edge behind the throat line. */ readonly edge: number;
  /** Outer wall from the throat to each station. */ readonly wallForce: Float64Array;
  stations(): readonly WallStation[];
  /** Radius of the base behind the edge [–]. */ readonly baseRadius: number;
  /** On the base. */ readonly basePush: number;
  /** Momentum and pressure across the last front and the wake inside it. */ readonly boundary: number;
  /** Inner boundary of the flow from the edge on. */ readonly wake: readonly Place[];
  /** Mass flow at the end over that at the throat, less 1 [–] */ readonly massMiss: number;
  /** Why the march ended before the lip; null where it did not. */ readonly stopped: Problem | null;
}

/**
 * The flow from the throat line to the lip at a given wake pressure, in streamtubes with shocks.
 *
 * Start: uniform flow, a little faster than sound, across the straight throat line, directed outwards at θ_t: the flow ahead of it
 * is taken as one-dimensional (the series for a round throat does not apply to an annular one turned outwards).
 * Outside: the wall. Inside: the pintle's rounded edge until the pressure on it has fallen to the wake's (Prandtl–Meyer),
 * then a free boundary at that pressure. Where this comes down to the neck the wake is closed: the flow is turned axial
 * along a smooth core of dead gas, half the neck wide at its end.
 */
export function deflectedFlow(
  shape: DeflectionShape,
  { gas, lineNu }: DeflectedGas,
  wakePressure: number,
  { until = 'lip', tubes = TUBES, neckShare = NECK_SHARE }: MarchOptions = {},
): DeflectedFlow {
  const front = startFront(shape, gas, lineNu, tubes);
  const throat = carriedBy(front);
  const outer = wallBoundary(wallLine(shape.wall));
  const edge = pintleEdge(shape, nuAtPressure(gas.table, wakePressure) - lineNu);
  const baseRadius = edge.at(-1)!.radius;
  const lip = shape.wall.at(-1)!;
  const neckRadius = neckShare * shape.inner.radius;
  const unit = 0.5 * gas.stagnationPressure; // forces of a march are per radian: 2π/(π p0)
  const wakeOver = wakePressure / gas.stagnationPressure;
  const first = marchTubes({
    gas,
    front,
    lower: [wallBoundary(wallLine(edge)), pressureBoundary(gas, wakePressure)],
    upper: [outer],
    axialEnd: lip.axial,
    closesAt: neckRadius,
  });
  const end = { axial: front.x[0]!, radius: front.r[0]! };
  const onFree = wakeOver * (end.radius ** 2 - baseRadius ** 2);
  const lowerForce = lastOf(first.lower.force) / unit;
  const flow = {
    wakePressure,
    throat: throat.axialForce / (Math.PI * gas.stagnationPressure),
    edge: -(lowerForce - onFree),
    baseRadius,
    basePush: wakeOver * baseRadius ** 2,
  };
  const outline = outlineOf(first.lower, edge.at(-1)!);
  const isClosed = first.stopped === null && end.radius <= neckRadius * (1 + 1e-6);
  if (!isClosed) {
    return {
      ...flow,
      neck: null,
      ...wallOf(gas, unit, first.upper),
      boundary: carriedOver(front, gas) + wakeOver * end.radius ** 2,
      wake: [...outline, end],
      massMiss: carriedBy(front).massFlow / throat.massFlow - 1,
      stopped: first.stopped,
    };
  }
  const neck = {
    place: end,
    turn: Math.max(-front.theta[0]!, 0),
    mach: tableStateAt(gas.table, nuOfSpeed(gas, front.speed[0]!)).mach,
  };
  if (until === 'neck') {
    return {
      ...flow,
      neck,
      ...wallOf(gas, unit, first.upper),
      boundary: carriedOver(front, gas) + wakeOver * end.radius ** 2,
      wake: [...outline, end],
      massMiss: 0,
      stopped: null,
    };
  }
  const core = coreOf(end, neck.turn, lip.axial);
  const second = marchTubes({
    gas,
    front,
    lower: [wallBoundary(wallLine(core))],
    upper: [outer],
    axialEnd: lip.axial,
  });
  return {
    ...flow,
    neck,
    ...wallOf(gas, unit, first.upper, second.upper),
    boundary: carriedOver(front, gas) + lastOf(second.lower.force) / unit + wakeOver * end.radius ** 2,
    wake: [...outline, ...core.filter(({ axial }) => axial <= lip.axial)],
    massMiss: carriedBy(front).massFlow / throat.massFlow - 1,
    stopped: second.stopped,
  };
}

function startFront(shape: DeflectionShape, gas: TubeGas, lineNu: number, tubes: number): TubeFront {
  const nodes = new Float64Array(2 * NODE);
  setNodeInto(nodes, 0, gas.table, shape.inner.axial, shape.inner.radius, shape.throatAngle, lineNu);
  setNodeInto(nodes, NODE, gas.table, shape.outer.axial, shape.outer.radius, shape.throatAngle, lineNu);
  return frontAlong(gas, 'axisymmetric', nodes, tubes);
}

function carriedOver(front: TubeFront, gas: TubeGas): number {
  return carriedBy(front).axialForce / (Math.PI * gas.stagnationPressure);
}

function lastOf(values: Float64Array): number {
  return values.length === 0 ? 0 : values[values.length - 1]!;
}

/** Wall stations, found when first asked for, and the force up to each, of one march after the other. */
function wallOf(
  gas: TubeGas,
  unit: number,
  ...marches: readonly SideSamples[]
): Pick<DeflectedFlow, 'stations' | 'wallForce'> {
  let stations: readonly WallStation[] | null = null;
  const forces: number[] = [];
  let before = 0;
  for (const { count, force } of marches) {
    for (let i = 0; i < count; i++) forces.push(before - force[i]! / unit);
    before -= lastOf(force) / unit;
  }
  return {
    stations() {
      stations ??= marches.flatMap((march) => stationsOf(gas, march));
      return stations;
    },
    wallForce: Float64Array.from(forces),
  };
}

function stationsOf(gas: TubeGas, { count, x, r, lnP, lnSigma }: SideSamples): readonly WallStation[] {
  return Array.from({ length: count }, (_, i) => {
    const pressure = Math.exp(lnP[i]!);
    const speed = speedAtPressure(gas, pressure, lnSigma[i]!);
    const { mach, temperature } = tubeStateAt(gas, speed, lnSigma[i]!);
    return { axial: x[i]!, radius: r[i]!, pressure, mach, temperature };
  });
}

/** The free boundary as it went, from the edge of the pintle. */
function outlineOf({ x, r, count }: SideSamples, from: Place): readonly Place[] {
  const places: Place[] = [from];
  for (let i = 0; i < count; i++) {
    if (x[i]! > from.axial) places.push({ axial: x[i]!, radius: r[i]! });
  }
  return places;
}

/** From the neck, where the flow runs inwards by `turn`, smoothly to axial, then straight past the lip. */
function coreOf(neck: Place, turn: number, lipAxial: number): Place[] {
  const pieces = 24;
  const places: Place[] = [];
  const radius = turn > 1e-3 ? (CORE_SHARE * neck.radius) / (1 - Math.cos(turn)) : 0;
  for (let i = 0; i <= pieces && radius > 0; i++) {
    const angle = -turn * (1 - i / pieces);
    places.push({
      axial: neck.axial + radius * (Math.sin(turn) + Math.sin(angle)),
      radius: neck.radius - radius * (Math.cos(angle) - Math.cos(turn)),
    });
  }
  const end = places.at(-1) ?? neck;
  if (places.length === 0) places.push(neck);
  places.push({ axial: Math.max(lipAxial, end.axial) + 10 * lipAxial, radius: end.radius });
  return places;
}
/** By how much of the neck the core narrows while the flow is turned axial. */
const CORE_SHARE = 0.5;

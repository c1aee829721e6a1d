/** A nozzle's wall as columns: state, area, angle, and the push of the gas on it, from the throat to each station. */

import type { WallStation } from '../wallStation.ts';
import type { WallPlace } from './model.ts';

export interface WallTable {
  readonly count: number;
  readonly axial: Float64Array;
  readonly areaRatio: Float64Array;
  readonly radius: Float64Array;
  readonly lnPressure: Float64Array;
  /** [–]; null where the gas has no sound speed somewhere */ readonly mach: Float64Array | null;
  /** Angle to the axis [rad] */ readonly angle: Float64Array;
  /** ∫ p dε from the first station [Pa] */ readonly push: Float64Array;
}

/** A place between two stations: cell, and share of the way along it. */
export interface Along {
  readonly cell: number;
  readonly share: number;
}

/** Columns of the stations from throat to lip; at least two, axial distance rising. */
export function wallTable(stations: readonly WallStation[]): WallTable {
  const count = stations.length;
  const column = (of: (station: WallStation) => number): Float64Array => Float64Array.from(stations, of);
  const radius = column((station) => station.radius);
  const areaRatio = column((station) => station.radius ** 2);
  const push = new Float64Array(count);
  for (let i = 1; i < count; i++) {
    const mean = (stations[i]!.pressure + stations[i - 1]!.pressure) / 2;
    push[i] = push[i - 1]! + mean * (areaRatio[i]! - areaRatio[i - 1]!);
  }
  return {
    count,
    axial: column((station) => station.axial),
    radius,
    areaRatio,
    lnPressure: column((station) => Math.log(station.pressure)),
    mach: stations.every(({ mach }) => mach !== null) ? column(({ mach }) => mach!) : null,
    angle: Float64Array.from(stations, (_, i) => {
      const before = stations[Math.max(i - 1, 0)]!;
      const after = stations[Math.min(i + 1, count - 1)]!;
      return Math.atan2(after.radius - before.radius, after.axial - before.axial);
    }),
    push,
  };
}

/** Between two stations: axial distance, radius and Mach number evenly, the pressure by its logarithm. */
export function placeAt(wall: WallTable, { cell, share }: Along): WallPlace {
  return {
    axial: between(wall.axial, cell, share),
    areaRatio: between(wall.radius, cell, share) ** 2,
    mach: wall.mach === null ? null : between(wall.mach, cell, share),
    pressure: Math.exp(between(wall.lnPressure, cell, share)),
  };
}

export function angleAt(wall: WallTable, { cell, share }: Along): number {
  return between(wall.angle, cell, share);
}

/** ∫ p dε from a place to the lip [Pa]: what the gas pushes on the wall behind it while it flows full. */
export function pushBehind(wall: WallTable, { cell, share }: Along, place: WallPlace): number {
  const last = wall.count - 1;
  const next = Math.min(cell + 1, last);
  const mean = (place.pressure + Math.exp(wall.lnPressure[next]!)) / 2;
  return share >= 1
    ? wall.push[last]! - wall.push[next]!
    : wall.push[last]! - wall.push[next]! + mean * (wall.areaRatio[next]! - place.areaRatio);
}

function between(column: Float64Array, cell: number, share: number): number {
  const from = column[cell]!;
  return share === 0 ? from : from + share * (column[cell + 1]! - from);
}

export function throatOf(): Along {
  return { cell: 0, share: 0 };
}

export function lipOf(wall: WallTable): Along {
  return { cell: wall.count - 2, share: 1 };
}

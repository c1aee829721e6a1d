/** The gas in a nozzle as flat bands of a ramp: each band edge is a line of equal value at the mean pressure. */

import type { WallPoint } from '../../answer/model.ts';
import type { Ramp } from '../look/flowRamps.ts';

/** A place along the axis: axial distance [m] and radius of the wall there [m]. */
export interface Station {
  readonly axial: number;
  readonly radius: number;
}

export interface GasBand {
  /** Step of the ramp. */ readonly step: number;
  /** Wall from the upper edge to the lower one. */ readonly stations: readonly Station[];
}

export interface Isobar extends Station {
  /** In the unit of the ramp. */ readonly value: number;
  readonly powerOfTen: boolean;
}

export interface GasBands {
  readonly bands: readonly GasBand[];
  readonly isobars: readonly Isobar[];
}

/** A station with what the ramp shows there, in the ramp's unit. */
interface ShownPoint extends Station {
  readonly shown: number;
}

/** Values below this, in the unit of a ramp, are at rest or nothing. */
const LEAST = 1e-3;

/**
 * Bands from the injector face to the axial distance `end` [m].
 * @param valueAt what the ramp shows, at a pressure [Pa]
 */
export function gasBands(
  given: readonly WallPoint[],
  end: number,
  ramp: Ramp,
  valueAt: (pressure: number) => number,
): GasBands {
  const wall = given.map(
    ({ axial, radius, meanPressure }): ShownPoint => ({
      axial,
      radius,
      shown: ramp.tint === 'pressure' ? meanPressure : Math.max(LEAST, valueAt(meanPressure)),
    }),
  );
  const bands: GasBand[] = [];
  const isobars: Isobar[] = [];
  const first = wall[0];
  if (!first) return { bands, isobars };
  let step = ramp.stepOf(first.shown);
  let stations: Station[] = [first];
  for (let i = 1; i < wall.length; i++) {
    const from = wall[i - 1] as ShownPoint;
    const full = wall[i] as ShownPoint;
    if (from.axial >= end) break;
    const to =
      full.axial > end ? shownBetween(from, full, (end - from.axial) / (full.axial - from.axial)) : full;
    const last = ramp.stepOf(to.shown);
    while (step !== last) {
      const edge = ramp.startOf(last < step ? step : step + 1);
      const at = shownBetween(from, to, shareAt(from.shown, to.shown, edge));
      stations.push(at);
      bands.push({ step, stations });
      const next = last < step ? step - 1 : step + 1;
      isobars.push({
        axial: at.axial,
        radius: at.radius,
        value: edge,
        powerOfTen: ramp.isStrong(last < step ? step : next),
      });
      stations = [at];
      step = next;
    }
    stations.push(to);
  }
  bands.push({ step, stations });
  return { bands, isobars };
}

/** Share of the way from one value to another at which a third is met, on a logarithmic scale, kept in 0…1. */
function shareAt(from: number, to: number, pressure: number): number {
  const t = Math.log(pressure / from) / Math.log(to / from);
  return t < 0 ? 0 : t > 1 ? 1 : t;
}

function shownBetween(a: ShownPoint, b: ShownPoint, t: number): ShownPoint {
  return {
    axial: a.axial + t * (b.axial - a.axial),
    radius: a.radius + t * (b.radius - a.radius),
    shown: a.shown * (b.shown / a.shown) ** t,
  };
}

function pointBetween(a: WallPoint, b: WallPoint, t: number): WallPoint {
  return {
    ...a,
    axial: a.axial + t * (b.axial - a.axial),
    radius: a.radius + t * (b.radius - a.radius),
    pressure: a.pressure * (b.pressure / a.pressure) ** t,
    meanPressure: a.meanPressure * (b.meanPressure / a.meanPressure) ** t,
  };
}

/** The station at a distance from the throat [m]; the lip beyond it. */
export function stationAtAxial(wall: readonly WallPoint[], axial: number): Station {
  const next = wall.findIndex((point) => point.axial >= axial);
  if (next < 0) return wall[wall.length - 1] as WallPoint;
  if (next === 0) return wall[0] as WallPoint;
  const from = wall[next - 1] as WallPoint;
  const to = wall[next] as WallPoint;
  return pointBetween(from, to, (axial - from.axial) / (to.axial - from.axial));
}

/**
 * Where, after the throat, a pressure falls to a given one; the lip where it stays above.
 * @param which the mean over the cross-section, or the pressure on the wall
 */
export function stationAtPressure(
  wall: readonly WallPoint[],
  pressure: number,
  which: 'meanPressure' | 'pressure',
): Station {
  for (let i = 1; i < wall.length; i++) {
    const from = wall[i - 1] as WallPoint;
    const to = wall[i] as WallPoint;
    if (to.axial <= 0 || to[which] > pressure) continue;
    return from[which] <= pressure ? from : pointBetween(from, to, shareAt(from[which], to[which], pressure));
  }
  return wall[wall.length - 1] as WallPoint;
}

/** The walls of an annular plug engine as its mesh asks for them, and its gases. */

import type { FlowKernel } from '../euler/index.ts';
import type { Expansion } from '../gas/index.ts';
import type { ContourPoint } from '../nozzle/index.ts';
import { airGases, type FieldGases } from './fieldGases.ts';
import type { PlugShape } from './plugLayout.ts';
import {
  acrossFlow,
  apart,
  lengthWhere,
  type Place,
  type PolyLine,
  polyLine,
  smoothPlaces,
} from './polyLine.ts';

export interface PlugEngine {
  readonly expansion: Expansion;
  /** Chamber and cowl, to the lip; and chamber and plug, to the cut: as many stations as the shorter of both up to the throat. */
  readonly cowl: readonly ContourPoint[];
  readonly plug: readonly ContourPoint[];
  /** √(A_t/π) [m] */ readonly throatRadius: number;
  /** [m] of a linear plug, whose radii are heights over its middle plane; null: it goes all round */ readonly width:
    | number
    | null;
  /** By what the steps are taken; absent or null: by the reference. */ readonly kernel?: FlowKernel | null;
}

export interface PreparedPlug {
  readonly engine: PlugEngine;
  readonly shape: PlugShape;
  readonly gases: FieldGases;
}

/** Widths of the throat ahead of it that are in the field, at most. */
const CHAMBER = 8;
/** A cowl that goes on behind the throat for less of the throat's width does not. */
const LEAST_COWL = 1e-6;
/** Stations between throat and lip. */
const STATIONS = 48;
/** And along the plug behind the ring. */
const STATIONS_OF_PLUG = 400;
const THICKNESS = 0.04;
/** Radius over that of the lip at which a plug that tapers further ends: behind a point no cells of a wake have room. */
const TIP = 0.004;

export function preparePlug(engine: PlugEngine): PreparedPlug {
  const { cowl, plug, expansion } = engine;
  const place = ({ axial, radius }: ContourPoint): Place => [axial, radius];
  const throat = plug.findIndex(({ part }) => part === 'nozzle') - 1;
  const gap = apart(place(plug[throat]!), place(cowl[throat]!));
  let first = throat;
  while (first > 0 && apart(place(plug[first - 1]!), place(plug[throat]!)) < CHAMBER * gap) first -= 1;
  const inlet = first > 0 ? inBetween(plug, cowl, first, CHAMBER * gap, throat) : null;
  const duct = (wall: readonly ContourPoint[], from: Place | undefined): readonly Place[] => [
    ...(from === undefined ? [] : [from]),
    ...smoothPlaces(wall.slice(first, throat + 1)),
  ];
  const [innerDuct, outerDuct] = [duct(plug, inlet?.inner), duct(cowl, inlet?.outer)];
  const lip = place(cowl.at(-1)!);
  // Where all gas turns outside the cowl ends at the throat, whose line is the ring's last; the plug has no corner there.
  const isExternal = apart(place(cowl[throat]!), lip) < LEAST_COWL * gap;
  const wall = polyLine(smoothPlaces(plug.slice(isExternal ? throat : throat + 1)));
  const inner = isExternal ? 0 : acrossFlow(wall, lip, cowl.at(-1)!.angle);
  const end = endOf(wall, TIP * lip[1]);
  const free = isExternal ? [] : stationsBetween(wall, inner, polyLine(smoothPlaces(cowl.slice(throat))));
  return {
    engine,
    shape: {
      ring: [...innerDuct.map((each, k) => ({ inner: each, outer: outerDuct[k]! })), ...free],
      throat: innerDuct.length - 1,
      plug: Array.from({ length: STATIONS_OF_PLUG + 1 }, (_, k) =>
        wall.at(inner + ((end - inner) * k) / STATIONS_OF_PLUG),
      ),
      thickness: THICKNESS * lip[1],
      symmetry: engine.width === null ? 'round' : 'flat',
    },
    gases: airGases(expansion),
  };
}

/** From throat to lip. */
function stationsBetween(wall: PolyLine, inner: number, cowl: PolyLine): PlugShape['ring'] {
  return Array.from({ length: STATIONS }, (_, k) => ({
    inner: wall.at((inner * (k + 1)) / STATIONS),
    outer: cowl.at((cowl.length * (k + 1)) / STATIONS),
  }));
}

/** Length along the wall at which it ends, or before that where it is down to a radius [m]. */
function endOf(wall: PolyLine, least: number): number {
  if (wall.at(wall.length)[1] >= least) return wall.length;
  return lengthWhere(wall, ([, radius]) => least - radius);
}

/** On the straight chamber, so far from the throat. */
function inBetween(
  plug: readonly ContourPoint[],
  cowl: readonly ContourPoint[],
  first: number,
  far: number,
  throat: number,
): { readonly inner: Place; readonly outer: Place } {
  const at = (wall: readonly ContourPoint[]): Place => {
    const [a, b] = [wall[first]!, wall[first - 1]!];
    const whole = Math.hypot(b.axial - a.axial, b.radius - a.radius);
    const done = Math.hypot(
      plug[first]!.axial - plug[throat]!.axial,
      plug[first]!.radius - plug[throat]!.radius,
    );
    const t = Math.min(1, (far - done) / whole);
    return [a.axial + t * (b.axial - a.axial), a.radius + t * (b.radius - a.radius)];
  };
  return { inner: at(plug), outer: at(cowl) };
}

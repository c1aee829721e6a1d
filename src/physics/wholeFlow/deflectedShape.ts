/** The walls of an expansion–deflection engine as its mesh asks for them, and its gases. */

import type { FlowKernel } from '../euler/index.ts';
import type { Expansion } from '../gas/index.ts';
import type { ContourBody, ContourPoint } from '../nozzle/index.ts';
import { airGases, type FieldGases } from './fieldGases.ts';
import type { LipState } from './jetRoom.ts';
import {
  acrossFlow,
  apart,
  lengthAt,
  type Place,
  type PolyLine,
  polyLine,
  smoothPlaces,
} from './polyLine.ts';
import type { RoundShape } from './roundMesh.ts';
import { wallCourse } from './wallCourse.ts';

export interface DeflectedEngine {
  readonly expansion: Expansion;
  /** The outer wall, from the injector face to the lip [m]. */ readonly wall: readonly ContourPoint[];
  /** Its outline from the injector face to the axis behind its base [m]. */ readonly pintle: ContourBody;
  /** √(A_t/π) [m] */ readonly throatRadius: number;
  /** By what the steps are taken; absent or null: by the reference. */ readonly kernel?: FlowKernel | null;
}

/** Sizes in metres. */
export interface DeflectedShape extends RoundShape {
  /** From where the gas comes in: along the pintle to the end of its rounded edge, where its base begins. */ readonly pintle: PolyLine;
  /** The outer wall to the lip. */ readonly outer: PolyLine;
  /** Lengths along the two at which the throat line ends. */ readonly throat: {
    readonly inner: number;
    readonly outer: number;
  };
  /** The same at the bore, the outer wall's narrowest place ahead of it. */ readonly bore: {
    readonly inner: number;
    readonly outer: number;
  };
  /** Distance between the walls there. */ readonly gap: number;
  /** Where the edge ends. */ readonly base: Place;
}

export interface PreparedDeflected {
  readonly engine: DeflectedEngine;
  readonly shape: DeflectedShape;
  readonly lip: LipState;
  readonly gases: FieldGases;
}

/** Thickness of the wall at the lip over the lip’s radius: not stated by a study. */
const THICKNESS = 0.05;
/** Straight chamber ahead of the converging wall that is in the field, in throat radii, at most. */
const CHAMBER = 0.5;

export function prepareDeflected(engine: DeflectedEngine): PreparedDeflected {
  const { wall, pintle, expansion, throatRadius } = engine;
  const end = wall.at(-1)!;
  const narrows = wall.find(({ part }) => part !== 'chamber')!.axial;
  const inlet = Math.max(wall[0]!.axial, narrows - CHAMBER * throatRadius);
  const outer = polyLine(from(inlet, smoothPlaces(wall)));
  const throat = wall.find(({ part }) => part === 'nozzle')!;
  // The outline ends with the base: its outer end and the axis.
  const along = smoothPlaces(withAngles(pintle.outline.slice(0, -1)));
  const inner = polyLine(from(inlet, along));
  const place: Place = [throat.axial, throat.radius];
  const throatLine = { inner: acrossFlow(inner, place, throat.angle), outer: lengthAt(outer, throat.axial) };
  const bore = wall.reduce((least, point) =>
    point.part !== 'nozzle' && point.radius < least.radius ? point : least,
  );
  return {
    engine,
    shape: {
      wall: wallCourse(wall),
      inlet,
      lip: end.axial,
      thickness: THICKNESS * end.radius,
      pintle: inner,
      outer,
      throat: throatLine,
      bore: { inner: lengthAt(inner, bore.axial), outer: lengthAt(outer, bore.axial) },
      gap: apart(inner.at(throatLine.inner), outer.at(throatLine.outer)),
      base: inner.at(inner.length),
    },
    lip: { radius: end.radius, areaRatio: (end.radius / throatRadius) ** 2, angle: end.angle },
    gases: airGases(expansion),
  };
}

/** From an axial distance on. */
function from(axial: number, places: readonly Place[]): readonly Place[] {
  const next = places.findIndex(([x]) => x > axial);
  const [a, b] = [places[Math.max(0, next - 1)]!, places[next]!];
  const t = Math.max(0, (axial - a[0]) / (b[0] - a[0]));
  return [[axial, a[1] + t * (b[1] - a[1])], ...places.slice(next)];
}

/** Each point’s own angle: that of the line between its neighbours. */
function withAngles(outline: ContourBody['outline']) {
  return outline.map((point, k) => {
    const [a, b] = [outline[Math.max(0, k - 1)]!, outline[Math.min(outline.length - 1, k + 1)]!];
    return { ...point, angle: Math.atan2(b.radius - a.radius, b.axial - a.axial) };
  });
}

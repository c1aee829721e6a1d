/**
 * The thrust of an engine ring by ring of its wall.
 *
 * The gas on a ring between two places pushes along the axis with
 *
 *   F = ∫ (p_w − p_a) d(π r²)
 *
 * p_w wall pressure [Pa], by trapezoid over the ring; p_a ambient pressure [Pa]; forwards positive where the wall opens
 * towards the exit, on a plug where it closes. Where the gas has left the wall, p_w = p_a. The rings of one surface are
 * put right by one small uniform pressure, so that they add up to the push that the model has on that surface: its own
 * integral is finer than the places of the wall that an answer keeps. A surface whose rings would be off by more than
 * {@link LARGEST_OFFSET} of the thrust is taken as one piece.
 */

import type { ConditionRow, EngineAnswer } from '../../answer/model.ts';
import { ProblemError } from '../../numerics/problem.ts';

interface Place {
  readonly axial: number;
  readonly radius: number;
  readonly pressure: number;
}

/** A piece of the thrust. */
export interface ThrustPiece {
  /** `injector face`, `nozzle wall`, `losses` */ readonly surface: string;
  /** [m] from the throat plane; both null where it is no stretch of the wall. */ readonly from:
    | number
    | null;
  readonly to: number | null;
  /** [N] forwards positive */ readonly force: number;
  /** [N] of all pieces so far */ readonly sum: number;
  /** [Pa] mean on it; null where it is no ring. */ readonly pressure: number | null;
}

export interface ThrustRings {
  readonly pieces: readonly ThrustPiece[];
  /** [N] what all add up to: the engine's thrust there */ readonly thrust: number;
  /** Uniform pressure times area that puts the rings right, largest over the surfaces, over the thrust [–]. */
  readonly largestOffset: number;
}

/** Over the thrust [–]. */
export const LARGEST_OFFSET = 0.01;
/** Rings ahead of the throat and behind it. */
const RINGS = { ahead: 8, behind: 24 } as const;

export const LOSSES = 'losses';

export function thrustRings(engine: EngineAnswer, row: ConditionRow): ThrustRings {
  const { thrust, thrustParts } = row;
  if (thrust === null || thrustParts.length === 0)
    throw new ProblemError({
      code: 'thrust-without-parts',
      what: `It is not known where the thrust of ${engine.name} acts there.`,
      why: thrust === null ? 'The engine has no thrust there.' : 'Its nozzle is a bound without a wall.',
      mend: 'Choose another engine, or another altitude.',
    });
  const pieces: Omit<ThrustPiece, 'sum'>[] = [];
  let largestOffset = 0;
  for (const { surface, force } of thrustParts) {
    const { places, count, sign } = ringPlaces(engine, row, surface);
    const whole = {
      surface,
      force,
      pressure: null,
      from: places[0]?.axial ?? null,
      to: places.at(-1)?.axial ?? null,
    };
    if (places.length < 2) {
      pieces.push(whole);
      continue;
    }
    const rings = ringsOf(places, count, sign, row.ambientPressure);
    const raw = rings.reduce((sum, ring) => sum + ring.force, 0);
    const area = rings.reduce((sum, ring) => sum + ring.area, 0);
    const offset = Math.abs(force - raw) / Math.abs(thrust);
    if (offset > LARGEST_OFFSET || area === 0) {
      pieces.push(whole);
      continue;
    }
    largestOffset = Math.max(largestOffset, offset);
    for (const ring of rings)
      pieces.push({
        surface,
        from: ring.from,
        to: ring.to,
        force: ring.force + ((force - raw) * ring.area) / area,
        pressure: ring.pressure,
      });
  }
  const ideal = thrustParts.reduce((sum, { force }) => sum + force, 0);
  pieces.push({ surface: LOSSES, from: null, to: null, force: thrust - ideal, pressure: null });
  let sum = 0;
  return {
    pieces: pieces.map((piece) => {
      sum += piece.force;
      return { ...piece, sum };
    }),
    thrust,
    largestOffset,
  };
}

/** The places of a surface from the injector on, how many rings to make of it, and which way an opening wall pushes. */
function ringPlaces(
  { wall, contour }: EngineAnswer,
  { field, separation, flow, ambientPressure }: ConditionRow,
  surface: string,
): { readonly places: readonly Place[]; readonly count: number; readonly sign: 1 | -1 } {
  const none = { places: [], count: 0, sign: 1 } as const;
  if (contour.plug !== undefined) {
    if (surface === 'plug' && field !== undefined)
      return {
        places: field.flatMap(([onWall]) => (onWall === undefined ? [] : [onWall])),
        count: RINGS.behind,
        sign: -1,
      };
    return none;
  }
  if (surface === 'converging wall')
    return { places: wall.filter(({ axial }) => axial <= 0), count: RINGS.ahead, sign: 1 };
  if (surface === 'nozzle wall') {
    const left = flow.state === 'separated' ? separation?.place.axial : undefined;
    const places = wall
      .filter(({ axial }) => axial >= 0)
      .map((place) =>
        left !== undefined && place.axial > left ? { ...place, pressure: ambientPressure } : place,
      );
    return { places, count: RINGS.behind, sign: 1 };
  }
  return none;
}

interface Ring {
  readonly from: number;
  readonly to: number;
  readonly force: number;
  /** [m²] seen along the axis */ readonly area: number;
  readonly pressure: number;
}

function ringsOf(places: readonly Place[], count: number, sign: 1 | -1, ambient: number): readonly Ring[] {
  const [first, last] = [places[0] as Place, places[places.length - 1] as Place];
  const edges = Array.from(
    { length: count + 1 },
    (_, i) => first.axial + (i / count) * (last.axial - first.axial),
  );
  return edges.slice(1).map((to, i): Ring => {
    const from = edges[i] as number;
    const inside = [
      placeAt(places, from),
      ...places.filter(({ axial }) => axial > from && axial < to),
      placeAt(places, to),
    ];
    let [force, area, pressed] = [0, 0, 0];
    for (let k = 1; k < inside.length; k++) {
      const [a, b] = [inside[k - 1] as Place, inside[k] as Place];
      const opened = Math.PI * (b.radius ** 2 - a.radius ** 2);
      const mean = (a.pressure + b.pressure) / 2;
      force += sign * (mean - ambient) * opened;
      area += Math.abs(opened);
      pressed += mean * Math.abs(opened);
    }
    return { from, to, force, area, pressure: area > 0 ? pressed / area : (inside[0] as Place).pressure };
  });
}

/** Linear between the places given; where several lie at one, the last of them. */
function placeAt(places: readonly Place[], axial: number): Place {
  const next = places.findIndex((place) => place.axial > axial);
  if (next <= 0) return (next === 0 ? places[0] : places[places.length - 1]) as Place;
  const [a, b] = [places[next - 1] as Place, places[next] as Place];
  const t = (axial - a.axial) / (b.axial - a.axial);
  const between = (low: number, high: number): number => low + t * (high - low);
  return { axial, radius: between(a.radius, b.radius), pressure: between(a.pressure, b.pressure) };
}

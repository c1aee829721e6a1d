/** Rows of a first estimate, each by the row before at the same share of the chamber pressure. */

import { STANDARD_GRAVITY } from '../../physics/constants.ts';
import type { Contour, FlowVerdict } from '../../physics/nozzle/model.ts';
import type { ConditionRow, PlaceOnWall, PlugRow, RowSeparation, ThrustPartAnswer } from '../model.ts';
import { fieldUpTo } from './fieldUpTo.ts';
import { meanCoefficient, meanExitShare, stateAt } from './meanFlow.ts';
import type { AnsweredEngine, EngineBasis, EstimatedRow, Likeness } from './model.ts';
import { addedByRecut, recutAt } from './recutTable.ts';

/** What an estimate holds on to. */
export interface Held {
  readonly known: AnsweredEngine;
  readonly before: EngineBasis;
  readonly now: EngineBasis;
  /** Rows of the answer before, the vacuum last, by falling ambient pressure. */ readonly rows: readonly ConditionRow[];
}

export function heldOf(known: AnsweredEngine, before: EngineBasis, now: EngineBasis): Held {
  return { known, before, now, rows: [...known.rows, known.vacuum] };
}

/** Thrust coefficient of a row before, less that of the mean flow [–]; null where it has none. */
function beyondMean(held: Held, index: number): number | null {
  const row = held.rows[index];
  if (row === undefined || row.thrustCoefficient === null) return null;
  const share = row.ambientPressure / held.before.chamber.pressure;
  return row.thrustCoefficient - meanCoefficient(held.before, share, isThickRow(held, row));
}

const isThickRow = ({ known }: Held, { mode }: ConditionRow): boolean =>
  mode !== undefined && mode === known.answer.change?.thick;

/** A place among the rows before: between `from` and the next one, or `from` alone. */
interface Between {
  readonly from: number;
  readonly to: number;
  /** of the way to `to` */ readonly part: number;
  readonly nearest: number;
}

/** Where the air pressed as hard, by the share of the chamber pressure. */
function placeAmong({ rows, before, now }: Held, ambientPressure: number, mode: string | undefined): Between {
  const wanted = (ambientPressure * before.chamber.pressure) / now.chamber.pressure;
  const pressure = (i: number): number => rows[i]?.ambientPressure ?? 0;
  let low = 0;
  let high = rows.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (pressure(middle) >= wanted) low = middle;
    else high = middle;
  }
  const span = pressure(low) - pressure(high);
  const part = span > 0 ? Math.min(1, Math.max(0, (pressure(low) - wanted) / span)) : 0;
  const [above, below] = [rows[low], rows[high]];
  const fits = (row: ConditionRow | undefined): boolean => mode === undefined || row?.mode === mode;
  const alike = above?.mode === below?.mode && above?.flow.state === below?.flow.state;
  if (alike && fits(above)) return { from: low, to: high, part, nearest: part < 0.5 ? low : high };
  const near = part < 0.5 ? low : high;
  const nearest = fits(rows[near]) ? near : nearestWith(rows, near, fits);
  return { from: nearest, to: nearest, part: 0, nearest };
}

function nearestWith(
  rows: readonly ConditionRow[],
  from: number,
  fits: (row: ConditionRow | undefined) => boolean,
): number {
  for (let away = 1; away < rows.length; away++) {
    if (fits(rows[from - away]) && from - away >= 0) return from - away;
    if (from + away < rows.length && fits(rows[from + away])) return from + away;
  }
  return from;
}

/**
 * Thrust coefficient at an ambient pressure: what the full model added to the mean flow is held at the same p_a/p₀.
 *
 *   C_F = C_F,before + C̄_F − C̄_F,before + ΔC_F          where the gas stays on the wall; ΔC_F of another cut of a plug
 *   C_F = C_F,before · [u(p_a)/c*] / [u(p_a)/c*]_before    where it has left it and feels the air from there on
 */
export function coefficientAt(held: Held, ambientPressure: number): number | null {
  return coefficient(
    held,
    placeAmong(held, ambientPressure, modeAsked(held, ambientPressure)),
    ambientPressure,
  );
}

function coefficient(held: Held, place: Between, ambientPressure: number): number | null {
  const { before, now, rows } = held;
  const near = rows[place.nearest];
  if (near === undefined) return null;
  const share = ambientPressure / now.chamber.pressure;
  if (near.flow.state === 'separated') {
    const held = between(place, (i) => rows[i]?.thrustCoefficient ?? null);
    const speed = (of: EngineBasis): number => stateAt(of.flow, share).velocity / of.characteristicVelocity;
    return held === null ? null : (held * speed(now)) / speed(before);
  }
  const added = between(place, (i) => beyondMean(held, i));
  const cut = addedByRecut(now, share);
  if (added === null || cut === null) return null;
  return added + meanCoefficient(now, share, isThickRow(held, near)) + cut;
}

function between({ from, to, part }: Between, of: (index: number) => number | null): number | null {
  const [low, high] = [of(from), of(to)];
  return low === null || high === null ? null : low + part * (high - low);
}

/** A nozzle that changes over at a stated place does so there, whatever the chamber pressure. */
function modeAsked({ now, rows }: Held, ambientPressure: number): string | undefined {
  const { nozzle } = now.input;
  if (!('switchAt' in nozzle) || nozzle.switchAt === null) return undefined;
  return rows.find((row) => row.ambientPressure <= ambientPressure)?.mode ?? rows.at(-1)?.mode;
}

/** What the rows need of the engine as a whole. */
export interface Whole {
  /** p₀ A_t [N] */ readonly pressureTimesArea: number;
  /** [kg/s] */ readonly massFlow: number;
  readonly contour: Contour;
  readonly likeness: Likeness;
}

export function rowAt(
  held: Held,
  { pressureTimesArea, massFlow, contour, likeness }: Whole,
  ambientPressure: number,
  altitude: number | null,
): EstimatedRow {
  const { known, before, now, rows } = held;
  const place = placeAmong(held, ambientPressure, modeAsked(held, ambientPressure));
  const near = rows[place.nearest] ?? known.vacuum;
  const isThick = isThickRow(held, near);
  const share = ambientPressure / now.chamber.pressure;
  const pressure = now.chamber.pressure / before.chamber.pressure;
  const exit = meanExitShare(now, share, isThick) / meanExitShare(before, share, isThick);
  const c = coefficient(held, place, ambientPressure);
  const thrust = c === null ? null : c * pressureTimesArea;
  const flowShare = (near.separation?.massFlow ?? known.answer.massFlow) / known.answer.massFlow;
  const pressureTimesAreaBefore = (before.chamber.pressure * Math.PI * known.answer.throat.diameter ** 2) / 4;
  const full =
    (near.thrustIfFull / pressureTimesAreaBefore - (near.thrustCoefficient ?? 0)) * pressureTimesArea;
  const push =
    near.thrust === null || thrust === null
      ? pressureTimesArea / pressureTimesAreaBefore
      : thrust / near.thrust;
  const flow = verdictAt(held, place, pressure, pressure * exit);
  const separation =
    near.separation === undefined
      ? undefined
      : separationLike(near.separation, contour, { pressure, push, flow: massFlow / known.answer.massFlow });
  const { separation: _, modes: __, plug, field, ...rest } = near;
  return {
    like: place.nearest,
    row: {
      ...rest,
      altitude,
      ambientPressure,
      thrustCoefficient: c,
      thrust,
      specificImpulse: thrust === null ? null : thrust / (massFlow * flowShare * STANDARD_GRAVITY),
      thrustIfFull: (thrust ?? 0) + full,
      thrustParts: near.thrustParts.map((part) =>
        pushed(part, push, pressureTimesAreaBefore / pressureTimesArea),
      ),
      flow,
      exitPressure:
        (between(place, (i) => rows[i]?.exitPressure ?? null) ?? near.exitPressure) * pressure * exit,
      ...(separation && { separation }),
      ...(plug && { plug: plugLike(plug, pressure, baseRatio(now, share)) }),
      ...(field && { field: fieldLike(field, likeness) }),
    },
  };
}

function pushed(
  { surface, coefficient: c, force }: ThrustPartAnswer,
  push: number,
  area: number,
): ThrustPartAnswer {
  return { surface, coefficient: c * push * area, force: force * push };
}

/** Pressures at the lip go with the mean exit pressure, those at which the gas lets go with the chamber pressure. */
function verdictAt(held: Held, place: Between, pressure: number, lip: number): FlowVerdict {
  const { rows, now } = held;
  const near = (rows[place.nearest] ?? held.known.vacuum).flow;
  const lipPressure = (between(place, (i) => rows[i]?.flow.lipPressure ?? null) ?? near.lipPressure) * lip;
  const separationPressure =
    (between(place, (i) => rows[i]?.flow.separationPressure ?? null) ?? near.separationPressure) * pressure;
  const letsGo = lipPressure < separationPressure && near.lipPressure >= near.separationPressure;
  const stays =
    near.state === 'separated' &&
    lipPressure > separationPressure &&
    near.lipPressure <= near.separationPressure &&
    now.exits.thick === null;
  const state = near.state !== 'unchoked' && letsGo ? 'separated' : stays ? 'near the limit' : near.state;
  return { ...near, state, lipPressure, separationPressure };
}

interface Ratios {
  readonly pressure: number;
  readonly push: number;
  readonly flow: number;
}

/** The gas leaves at the same area ratio, if the wall goes so far. */
function separationLike(
  before: RowSeparation,
  contour: Contour,
  { pressure, push, flow }: Ratios,
): RowSeparation {
  const at = (place: PlaceOnWall): PlaceOnWall =>
    placeOn(contour, { ...place, pressure: place.pressure * pressure });
  const { thrust, specificImpulse } = before;
  const times = (span: NonNullable<typeof thrust>, factor: number): NonNullable<typeof thrust> => ({
    ...span,
    low: span.low * factor,
    high: span.high * factor,
  });
  return {
    ...before,
    place: at(before.place),
    earliest: at(before.earliest),
    latest: at(before.latest),
    massFlow: before.massFlow * flow,
    ...(thrust && { thrust: times(thrust, push) }),
    ...(specificImpulse && { specificImpulse: times(specificImpulse, push / flow) }),
  };
}

/** Where the wall behind the throat has this area ratio; its lip where it nowhere does. */
function placeOn({ wall, throatRadius }: Contour, place: PlaceOnWall): PlaceOnWall {
  const radius = throatRadius * Math.sqrt(place.areaRatio);
  const next = wall.findIndex((point) => point.axial >= 0 && point.radius >= radius);
  const to = wall[next] ?? wall.at(-1);
  const from = wall[next - 1] ?? to;
  if (to === undefined || from === undefined) return place;
  const part = next > 0 && to.radius > from.radius ? (radius - from.radius) / (to.radius - from.radius) : 1;
  const areaRatio = Math.min(place.areaRatio, (to.radius / throatRadius) ** 2);
  return { ...place, areaRatio, axial: from.axial + part * (to.axial - from.axial) };
}

/** Base pressure over that before at the same p_a/p₀; null where there is none now. */
const baseRatio = ({ recut }: EngineBasis, share: number): number | null =>
  recut === undefined ? 1 : recutAt(recut, recut.base, share);

function plugLike(before: PlugRow, pressure: number, ratio: number | null): PlugRow {
  const { base, ...rest } = before;
  if (base === undefined) return before;
  if (ratio === null) return rest;
  const { wake } = base;
  const by = pressure * ratio;
  return { ...rest, base: { wake, pressure: base.pressure * by, low: base.low * by, high: base.high * by } };
}

function fieldLike(
  field: NonNullable<ConditionRow['field']>,
  { length, pressure, upTo }: Likeness,
): NonNullable<ConditionRow['field']> {
  const like = field.map((line) =>
    line.map((at) => ({
      axial: at.axial * length,
      radius: at.radius * length,
      pressure: at.pressure * pressure,
    })),
  );
  return upTo === undefined ? like : fieldUpTo(like, upTo);
}

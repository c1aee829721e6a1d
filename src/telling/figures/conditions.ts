/** Rows of an engine over altitude, as curves need them, and one row at any altitude. */

import type { ConditionRow, EngineAnswer, ThrustPartAnswer } from '../../answer/model.ts';
import { airAtGeometricAltitude } from '../../physics/air/index.ts';
import { STANDARD_GRAVITY } from '../../physics/constants.ts';
import type { FlowVerdict } from '../../physics/nozzle/model.ts';
import type { Altitude, FigureOptions } from './options.ts';
import { separationBetween } from './separationBetween.ts';

/** [Pa] standard air at a geometric altitude; 0 in vacuum. */
export function ambientAt(altitude: Altitude): number {
  return altitude === 'vacuum' ? 0 : airAtGeometricAltitude(altitude).pressure;
}

/** Rows of one engine by falling ambient pressure, the vacuum row last. */
export function rowsOf(engine: EngineAnswer, options: FigureOptions): readonly ConditionRow[] {
  const given = options.curves?.[engine.id] ?? engine.altitudes;
  const rows = [...given].sort((a, b) => b.ambientPressure - a.ambientPressure);
  const last = rows[rows.length - 1];
  return last && last.ambientPressure > 0 ? [...rows, vacuumRow(engine, last)] : rows;
}

/** In vacuum every nozzle flows full, by any criterion. */
function vacuumRow(engine: EngineAnswer, nearest: ConditionRow): ConditionRow {
  return {
    altitude: null,
    ambientPressure: 0,
    ...engine.vacuum,
    thrustParts: engine.thrustParts.vacuum.parts,
    flow: { ...nearest.flow, state: 'full', separationPressure: 0 },
    exitPressure: engine.exit.pressure,
    ...(engine.change && { mode: engine.change.thin }),
  };
}

/**
 * The row at an ambient pressure, between the neighbours linearly in ambient pressure:
 * F = F_vac − p_a A_e is a straight line in p_a for a full nozzle of fixed shape. Null where a neighbour is null;
 * of two flow states the more careful one.
 */
export function conditionAt(rows: readonly ConditionRow[], ambient: number): ConditionRow {
  const exact = rows.find((row) => Math.abs(row.ambientPressure - ambient) <= 1e-9 * ambient);
  if (exact) return exact;
  const next = rows.findIndex((row) => row.ambientPressure < ambient);
  const below = rows[next < 0 ? rows.length - 1 : next] as ConditionRow;
  const above = rows[next <= 0 ? 0 : next - 1] as ConditionRow;
  const span = above.ambientPressure - below.ambientPressure;
  if (span === 0) return outside(below, ambient);
  const t = (ambient - below.ambientPressure) / span;
  const between = (low: number, high: number): number => low + t * (high - low);
  const maybe = (low: number | null, high: number | null): number | null =>
    low === null || high === null ? null : between(low, high);
  return {
    altitude: null,
    ambientPressure: ambient,
    thrustCoefficient: maybe(below.thrustCoefficient, above.thrustCoefficient),
    specificImpulse: maybe(below.specificImpulse, above.specificImpulse),
    thrust: maybe(below.thrust, above.thrust),
    thrustIfFull: between(below.thrustIfFull, above.thrustIfFull),
    thrustParts: partsBetween(below.thrustParts, above.thrustParts, between),
    exitPressure: exitBetween(below, above, ambient, between),
    flow: moreCareful(below.flow, above.flow, between),
    ...separationOf(below, above, between),
    ...(below.mode !== undefined && { mode: below.mode }),
    // A plug's flow is not a mean of two: that of the nearer row is shown.
    ...ofPlug(t < 0.5 ? below : above),
  };
}

/** Each surface's push, where both neighbours have the same surfaces; none otherwise. */
function partsBetween(
  below: ConditionRow['thrustParts'],
  above: ConditionRow['thrustParts'],
  between: (low: number, high: number) => number,
): ConditionRow['thrustParts'] {
  const same =
    below.length === above.length && below.every(({ surface }, i) => surface === above[i]?.surface);
  if (!same) return [];
  return below.map(({ surface, coefficient, force }, i) => ({
    surface,
    coefficient: between(coefficient, (above[i] as ThrustPartAnswer).coefficient),
    force: between(force, (above[i] as ThrustPartAnswer).force),
  }));
}

/** A nozzle that adapts keeps the air's pressure at its exit as long as it can still close; others move evenly. */
function exitBetween(
  below: ConditionRow,
  above: ConditionRow,
  ambient: number,
  between: (low: number, high: number) => number,
): number {
  const matched = Math.abs(above.exitPressure - above.ambientPressure) <= 1e-6 * above.ambientPressure;
  return matched ? Math.max(ambient, below.exitPressure) : between(below.exitPressure, above.exitPressure);
}

function separationOf(
  below: ConditionRow,
  above: ConditionRow,
  between: (low: number, high: number) => number,
): Pick<ConditionRow, 'separation'> {
  const separation = separationBetween(below.separation, above.separation, between);
  return separation === undefined ? {} : { separation };
}

function ofPlug({ plug, field }: ConditionRow): Pick<ConditionRow, 'plug' | 'field'> {
  return { ...(plug && { plug }), ...(field && { field }) };
}

/** Denser air than any row knows: nothing is said of the thrust there. */
function outside(nearest: ConditionRow, ambient: number): ConditionRow {
  return {
    ...nearest,
    altitude: null,
    ambientPressure: ambient,
    thrust: null,
    thrustCoefficient: null,
    specificImpulse: null,
  };
}

const CARE = { full: 0, 'near the limit': 1, separated: 2, unchoked: 3 } as const;

function moreCareful(
  a: FlowVerdict,
  b: FlowVerdict,
  between: (low: number, high: number) => number,
): FlowVerdict {
  const careful = CARE[a.state] >= CARE[b.state] ? a : b;
  return {
    state: careful.state,
    criterion: careful.criterion,
    lipPressure: between(a.lipPressure, b.lipPressure),
    separationPressure: between(a.separationPressure, b.separationPressure),
  };
}

/** [s] specific impulse if the flow stayed on the wall, from the thrust of that case: I = F / (ṁ g₀). */
export function impulseIfFull(engine: EngineAnswer, row: ConditionRow): number {
  return row.thrustIfFull / (engine.massFlow * STANDARD_GRAVITY);
}

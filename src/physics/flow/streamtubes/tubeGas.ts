/**
 * The gas of a streamtube: its state by speed V and by the stagnation pressure it has left.
 *
 * At constant total enthalpy two numbers fix the state. Here they are V and σ = p0'/p0, the share of the chamber's
 * stagnation pressure that is left behind shocks (σ = 1 before the first, lower behind each: entropy in another dress).
 *
 *   ζ(V, σ) = ln( p / (σ p0) ) + ln p0        W(V, σ) = ρ/p [s²/m²]        M²(V, σ)
 *
 * For a gas of fixed composition all three depend on V alone, exactly: enthalpy and so temperature follow from V, and the
 * entropy moves only ln p. Where the composition shifts, a second expansion from the same enthalpy at a lower stagnation
 * pressure gives the change with ln σ, taken as linear: `shift`.
 *
 * Uniform knots in V, cubic Hermite; dζ/dV = −V W exactly (Bernoulli, dp = −ρ V dV), dΦ/dV = −M²/V (sound speed).
 */

import { ProblemError } from '../../../numerics/problem.ts';
import { columnAt, type SupersonicTable } from '../gasTable.ts';
import { lastKnotBefore, nuAtSpeed, whereCubic } from '../tableInverse.ts';

/** Numbers per knot: ζ, W, M² and Φ = ζ + ln W = ln(ρ/σ), each with h times its slope, h the step in V. */
export const TUBE_GAS_STRIDE = 8;

export interface TubeGas {
  /** [m/s] of the throat */ readonly slowest: number;
  /** [m/s] end of the table */ readonly fastest: number;
  /** [m/s] */ readonly step: number;
  readonly cells: number;
  readonly knots: Float64Array;
  /** Change of every knot per unit of ln σ; null where the composition is fixed. */
  readonly shift: Float64Array | null;
  /** p0 [Pa] */ readonly stagnationPressure: number;
  /** The isentrope σ = 1. */ readonly table: SupersonicTable;
}

const CELLS = 256;

/**
 * @param table the isentrope from the chamber
 * @param lossy the isentrope from the same enthalpy at a lower stagnation pressure; null where the composition is fixed
 */
export function tubeGas(table: SupersonicTable, lossy: SupersonicTable | null = null): TubeGas {
  const { knots, step, cells, nuMax } = table;
  const slowest = columnAt(knots.speed, step, cells, 0);
  const fastest = columnAt(knots.speed, step, cells, nuMax);
  const h = (fastest - slowest) / CELLS;
  const base = knotsOver(table, slowest, h, 0);
  return {
    slowest,
    fastest,
    step: h,
    cells: CELLS,
    knots: base,
    shift: lossy === null ? null : shiftOf(base, lossy, table.stagnationPressure, slowest, h),
    stagnationPressure: table.stagnationPressure,
    table,
  };
}

/** ln σ of the second isentrope divides the difference of the knots. */
function shiftOf(
  base: Float64Array,
  lossy: SupersonicTable,
  stagnationPressure: number,
  slowest: number,
  h: number,
): Float64Array {
  const lnSigma = Math.log(lossy.stagnationPressure / stagnationPressure);
  const second = knotsOver(lossy, slowest, h, lnSigma);
  return base.map((value, i) => (second[i]! - value) / lnSigma);
}

function knotsOver(table: SupersonicTable, slowest: number, h: number, lnSigma: number): Float64Array {
  const out = new Float64Array((CELLS + 1) * TUBE_GAS_STRIDE);
  const { knots, step, cells } = table;
  for (let i = 0; i <= CELLS; i++) {
    const speed = slowest + i * h;
    const nu = nuAtSpeed(table, speed);
    const lnP = columnAt(knots.lnPressure, step, cells, nu);
    const mach = columnAt(knots.mach, step, cells, nu);
    const at = i * TUBE_GAS_STRIDE;
    out[at] = lnP - lnSigma;
    out[at + 2] = Math.exp(columnAt(knots.lnDensity, step, cells, nu) - lnP);
    out[at + 4] = mach * mach;
    out[at + 1] = -speed * out[at + 2]! * h;
    out[at + 6] = columnAt(knots.lnDensity, step, cells, nu) - lnSigma;
    out[at + 7] = (-mach * mach * h) / speed;
  }
  for (const column of [2, 4]) setSlopes(out, column);
  return out;
}

/** Fourth-order differences, second-order at the ends. */
function setSlopes(out: Float64Array, column: number): void {
  const at = (i: number): number => out[i * TUBE_GAS_STRIDE + column]!;
  for (let i = 0; i <= CELLS; i++) {
    const slope =
      i === 0
        ? -1.5 * at(0) + 2 * at(1) - 0.5 * at(2)
        : i === CELLS
          ? 1.5 * at(CELLS) - 2 * at(CELLS - 1) + 0.5 * at(CELLS - 2)
          : i === 1 || i === CELLS - 1
            ? 0.5 * (at(i + 1) - at(i - 1))
            : (8 * (at(i + 1) - at(i - 1)) - (at(i + 2) - at(i - 2))) / 12;
    out[i * TUBE_GAS_STRIDE + column + 1] = slope;
  }
}

/** State of the gas at a speed and a share of stagnation pressure. SI units. */
export interface TubeState {
  readonly speed: number;
  readonly pressure: number;
  readonly density: number;
  readonly mach: number;
  /** [K] from the isentrope of σ = 1 at the same speed */ readonly temperature: number;
}

/** @throws ProblemError outside the table */
export function tubeStateAt(gas: TubeGas, speed: number, lnSigma: number): TubeState {
  if (!(speed >= gas.slowest * (1 - 1e-9) && speed <= gas.fastest * (1 + 1e-9))) {
    throw new ProblemError({
      code: 'flow-outside-table',
      what: `The flow reaches ${speed.toFixed(1)} m/s, outside ${gas.slowest.toFixed(1)} to ${gas.fastest.toFixed(1)} m/s of the gas table.`,
      why: 'beyond it the gas would be colder or thinner than its data allow, or the flow would be subsonic',
      mend: 'Use a smaller area ratio or a higher ambient pressure.',
      facts: { speed, slowest: gas.slowest, fastest: gas.fastest },
    });
  }
  const zeta = tubeColumn(gas, 0, speed, lnSigma);
  const perPressure = tubeColumn(gas, 2, speed, lnSigma);
  const pressure = Math.exp(zeta + lnSigma);
  const nu = nuAtSpeed(gas.table, speed);
  const { knots, step, cells } = gas.table;
  return {
    speed,
    pressure,
    density: pressure * perPressure,
    mach: Math.sqrt(tubeColumn(gas, 4, speed, lnSigma)),
    temperature: columnAt(knots.temperature, step, cells, nu),
  };
}

/** One column (0 ζ, 2 W, 4 M²) at a speed [m/s] and ln σ. */
export function tubeColumn(gas: TubeGas, column: number, speed: number, lnSigma: number): number {
  const value = hermite(gas.knots, column, (speed - gas.slowest) / gas.step, gas.cells);
  if (gas.shift === null || lnSigma === 0) return value;
  return value + lnSigma * hermite(gas.shift, column, (speed - gas.slowest) / gas.step, gas.cells);
}

function hermite(knots: Float64Array, column: number, s: number, cells: number): number {
  let i = s | 0;
  if (i < 0) i = 0;
  if (i >= cells) i = cells - 1;
  const t = s - i;
  const k = i * TUBE_GAS_STRIDE + column;
  const a = knots[k]!;
  const da = knots[k + 1]!;
  const b = knots[k + TUBE_GAS_STRIDE]!;
  const db = knots[k + TUBE_GAS_STRIDE + 1]!;
  const d = b - a;
  return a + t * (da + t * (3 * d - 2 * da - db + t * (da + db - 2 * d)));
}

/** Speed [m/s] at a pressure [Pa] of a tube with ln σ: ζ falls with V. */
export function speedAtPressure(gas: TubeGas, pressure: number, lnSigma: number): number {
  const wanted = Math.log(pressure) - lnSigma;
  const most = tubeColumn(gas, 0, gas.slowest, lnSigma);
  if (!(most >= wanted && tubeColumn(gas, 0, gas.fastest, lnSigma) <= wanted)) {
    throw new ProblemError({
      code: 'pressure-outside-table',
      what: `The pressure ${pressure.toPrecision(4)} Pa is outside what the supersonic flow reaches in the gas table.`,
      mend: 'Use an ambient pressure below the throat pressure and above the end of the table.',
      facts: { pressure },
    });
  }
  const { knots, shift, cells, step, slowest } = gas;
  const at = (k: number): number => knots[k]! + (shift === null ? 0 : lnSigma * shift[k]!);
  const i = lastKnotBefore((knot) => -at(knot * TUBE_GAS_STRIDE), cells, -wanted);
  const k = i * TUBE_GAS_STRIDE;
  const n = k + TUBE_GAS_STRIDE;
  return slowest + step * (i + whereCubic(at(k), at(k + 1), at(n), at(n + 1), wanted));
}

/** Prandtl–Meyer angle [rad] of the gas that has passed no shock, at a speed [m/s]. */
export function nuOfSpeed(gas: TubeGas, speed: number): number {
  return nuAtSpeed(gas.table, speed);
}

/**
 * The supersonic side of an isentropic expansion as a table over the Prandtl–Meyer angle.
 *
 *   ν(q) = ∫ √(M² − 1) dq/q = ∫ √(M² − 1)/(ρ q²) (−dp)      from the sonic point
 *
 * holds for any gas in isentropic flow at constant total enthalpy (W. D. Hayes & R. F. Probstein, Hypersonic Flow
 * Theory, 1959, and any text on characteristics; from memory): the sound speed is the flow's own.
 *
 * Near the sonic point ν ~ (M − 1)^{3/2}, so every property is smooth in ξ = ν^{1/3}; the table is uniform in ξ and
 * interpolated by cubic Hermite pieces. The integral is taken over w, p = p* exp(−w²), in which the integrand is smooth, by
 * Simpson’s rule: the ends of its panels are samples in any case, and of a perfect gas it misses ν by less than 2e-8 of itself
 * with 20 panels, by less than 4e-11 with 96.
 */

import { ProblemError } from '../../numerics/problem.ts';
import type { Expansion, FlowState } from '../gas/flow.ts';

/** Columns interpolated over ξ. */
const COLUMNS = ['mach', 'mu', 'lnPressure', 'speed', 'lnDensity', 'temperature'] as const;
type Column = (typeof COLUMNS)[number];

export interface SupersonicTable {
  /** Largest Prandtl–Meyer angle of the table [rad]. */ readonly nuMax: number;
  /** Step in ξ = ν^{1/3} [rad^{1/3}]. */ readonly step: number;
  readonly cells: number;
  /** Per column: value and ξ-derivative·step at each of cells + 1 knots, interleaved. */
  readonly knots: Readonly<Record<Column, Float64Array>>;
  /** Stagnation pressure [Pa]. */ readonly stagnationPressure: number;
  /** ρq at the sonic point [kg/(m² s)]. */ readonly sonicMassFlux: number;
}

/** State of the gas at a Prandtl–Meyer angle. SI units. */
export interface TableState {
  readonly mach: number;
  /** Mach angle [rad] */ readonly mu: number;
  readonly pressure: number;
  readonly speed: number;
  readonly density: number;
  readonly temperature: number;
}

interface Sample {
  readonly nu: number;
  readonly values: readonly number[];
}

/**
 * Tabulate the supersonic expansion from the throat down to `lowestPressure` [Pa].
 * @throws ProblemError when the expansion does not reach that pressure or has no sound speed on the way
 */
export function tabulateSupersonic(
  expansion: Expansion,
  lowestPressure: number,
  cells = 320,
  panels = Math.max(80, cells),
): SupersonicTable {
  const { throat, chamber } = expansion;
  const wMax = Math.sqrt(Math.log(throat.pressure / lowestPressure));
  if (!(wMax > 0)) {
    throw new ProblemError({
      code: 'table-needs-supersonic-range',
      what: `The lowest pressure of the flow table, ${lowestPressure} Pa, is not below the throat pressure ${throat.pressure} Pa.`,
      mend: 'Ask for a lower pressure.',
      facts: { lowestPressure, throatPressure: throat.pressure },
    });
  }
  const samples = integrate(expansion, wMax, panels);
  const nuMax = samples[samples.length - 1]!.nu;
  const step = Math.cbrt(nuMax) / cells;
  const xi = Float64Array.from(samples, (sample) => Math.cbrt(sample.nu));
  const knots = {} as Record<Column, Float64Array>;
  COLUMNS.forEach((name, column) => {
    const values = Float64Array.from(samples, (sample) => sample.values[column]!);
    knots[name] = hermiteKnots(xi, values, step, cells);
  });
  return {
    nuMax,
    step,
    cells,
    knots,
    stagnationPressure: chamber.pressure,
    sonicMassFlux: throat.massFlux,
  };
}

function integrate(expansion: Expansion, wMax: number, panels: number): Sample[] {
  const { throat } = expansion;
  const samples: Sample[] = [{ nu: 0, values: valuesOf(throat, 1) }];
  const stateAt = (w: number): FlowState => expansion.atPressure(throat.pressure * Math.exp(-w * w));
  let nu = 0;
  // At the sonic point itself w is 0.
  let before = 0;
  for (let panel = 0; panel < panels; panel++) {
    const w0 = (wMax * panel) / panels;
    const w1 = (wMax * (panel + 1)) / panels;
    const middle = 0.5 * (w0 + w1);
    const inner = slopeOf(stateAt(middle), middle);
    const end = stateAt(w1);
    const after = slopeOf(end, w1);
    nu += ((w1 - w0) * (before + 4 * inner + after)) / 6;
    before = after;
    samples.push({ nu, values: valuesOf(end, machOf(end)) });
  }
  return samples;
}

/** dν/dw [rad] */
function slopeOf(state: FlowState, w: number): number {
  const mach = machOf(state);
  const { pressure, massFlux, velocity } = state;
  return (2 * w * pressure * Math.sqrt(Math.max(mach * mach - 1, 0))) / (massFlux * velocity);
}

function machOf(state: {
  readonly mach: number | null;
  readonly pressure: number;
  readonly absent: string | null;
}): number {
  if (state.mach !== null) return state.mach;
  throw new ProblemError({
    code: 'no-sound-speed',
    what: `At ${state.pressure} Pa the gas has no single sound speed.`,
    why: state.absent ?? 'two phases of one substance pin the temperature there',
    mend: 'Use frozen chemistry for the flow field, or a nozzle that ends before that pressure.',
    facts: { pressure: state.pressure },
  });
}

function valuesOf(
  state: {
    readonly pressure: number;
    readonly velocity: number;
    readonly density: number;
    readonly temperature: number;
  },
  mach: number,
): readonly number[] {
  return [
    mach,
    Math.asin(Math.min(1, 1 / mach)),
    Math.log(state.pressure),
    state.velocity,
    Math.log(state.density),
    state.temperature,
  ];
}

/** Resample (x, y) on a uniform grid: values and step·derivatives by local quintic-free fourth-order differences. */
function hermiteKnots(x: Float64Array, y: Float64Array, step: number, cells: number): Float64Array {
  const slopes = polynomialSlopes(x, y);
  const out = new Float64Array(2 * (cells + 1));
  let i = 0;
  const last = x.length - 2;
  for (let k = 0; k <= cells; k++) {
    const at = Math.min(k * step, x[x.length - 1]!);
    while (i < last && x[i + 1]! < at) i++;
    const h = x[i + 1]! - x[i]!;
    const t = (at - x[i]!) / h;
    const a = y[i]!;
    const b = y[i + 1]!;
    const da = slopes[i]! * h;
    const db = slopes[i + 1]! * h;
    const c2 = 3 * (b - a) - 2 * da - db;
    const c3 = 2 * (a - b) + da + db;
    out[2 * k] = a + t * (da + t * (c2 + t * c3));
    out[2 * k + 1] = ((da + t * (2 * c2 + 3 * t * c3)) / h) * step;
  }
  return out;
}

/** Derivatives at the points of a smooth curve from the quartic through the five nearest points. */
function polynomialSlopes(x: Float64Array, y: Float64Array): Float64Array {
  const n = x.length;
  const slopes = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const first = Math.min(Math.max(i - 2, 0), n - 5);
    let slope = 0;
    for (let j = first; j < first + 5; j++) {
      slope += y[j]! * lagrangeSlope(x, first, j, i);
    }
    slopes[i] = slope;
  }
  return slopes;
}

/** Derivative at x[i] of the Lagrange basis polynomial of point j over points first…first+4. */
function lagrangeSlope(x: Float64Array, first: number, j: number, i: number): number {
  let sum = 0;
  for (let m = first; m < first + 5; m++) {
    if (m === j) continue;
    let product = 1 / (x[j]! - x[m]!);
    for (let k = first; k < first + 5; k++) {
      if (k !== j && k !== m) product *= (x[i]! - x[k]!) / (x[j]! - x[k]!);
    }
    sum += product;
  }
  return sum;
}

/** Cubic Hermite value of one column at ν [rad]; the caller keeps 0 ≤ ν ≤ nuMax. */
export function columnAt(knots: Float64Array, step: number, cells: number, nu: number): number {
  const s = Math.cbrt(nu) / step;
  let i = s | 0;
  if (i >= cells) i = cells - 1;
  const t = s - i;
  const k = 2 * i;
  const a = knots[k]!;
  const da = knots[k + 1]!;
  const b = knots[k + 2]!;
  const db = knots[k + 3]!;
  const d = b - a;
  return a + t * (da + t * (3 * d - 2 * da - db + t * (da + db - 2 * d)));
}

/**
 * State at Prandtl–Meyer angle `nu` [rad].
 * @throws ProblemError outside 0…nuMax
 */
export function tableStateAt(table: SupersonicTable, nu: number): TableState {
  requireInTable(table, nu);
  const { knots, step, cells } = table;
  return {
    mach: columnAt(knots.mach, step, cells, nu),
    mu: columnAt(knots.mu, step, cells, nu),
    pressure: Math.exp(columnAt(knots.lnPressure, step, cells, nu)),
    speed: columnAt(knots.speed, step, cells, nu),
    density: Math.exp(columnAt(knots.lnDensity, step, cells, nu)),
    temperature: columnAt(knots.temperature, step, cells, nu),
  };
}

export function requireInTable(table: SupersonicTable, nu: number): void {
  if (nu >= 0 && nu <= table.nuMax * (1 + 1e-12)) return;
  throw new ProblemError({
    code: 'flow-outside-table',
    what: `The flow turns to a Prandtl–Meyer angle of ${((nu * 180) / Math.PI).toFixed(2)}°, outside 0…${((table.nuMax * 180) / Math.PI).toFixed(2)}° of the gas table.`,
    why: 'beyond it the gas would be colder or thinner than its data allow, or the flow would be subsonic',
    mend: 'Use a smaller area ratio or a higher ambient pressure, or a gas whose data reach lower temperatures.',
    facts: { nu, nuMax: table.nuMax },
  });
}

/** Inverse of a monotonic column by bisection and secant: ν [rad] at which it takes `value`. */
function nuWhere(table: SupersonicTable, knots: Float64Array, value: number, name: string): number {
  const at = (nu: number) => columnAt(knots, table.step, table.cells, nu) - value;
  let low = 0;
  let high = table.nuMax;
  let fLow = at(low);
  let fHigh = at(high);
  if (Math.abs(fLow) < 1e-13 * Math.abs(value)) return low;
  if (fLow * fHigh > 0) {
    throw new ProblemError({
      code: 'flow-outside-table',
      what: `The gas table does not reach ${name} = ${value}.`,
      mend: 'Ask for a value nearer the throat, or tabulate to a lower pressure.',
      facts: { value },
    });
  }
  for (let i = 0; i < 200 && high - low > 1e-15 * table.nuMax; i++) {
    const secant = low - (fLow * (high - low)) / (fHigh - fLow);
    const inside = secant > low + 0.01 * (high - low) && secant < high - 0.01 * (high - low);
    const middle = i % 3 === 2 || !inside ? 0.5 * (low + high) : secant;
    const f = at(middle);
    if (f === 0) return middle;
    if (fLow * f < 0) {
      high = middle;
      fHigh = f;
    } else {
      low = middle;
      fLow = f;
    }
  }
  return 0.5 * (low + high);
}

/** ν [rad] at a Mach number ≥ 1. */
export function nuAtMach(table: SupersonicTable, mach: number): number {
  return nuWhere(table, table.knots.mach, mach, 'Mach number');
}

/** ν [rad] at a static pressure [Pa] at or below the throat's. */
export function nuAtPressure(table: SupersonicTable, pressure: number): number {
  return nuWhere(table, table.knots.lnPressure, Math.log(pressure), 'ln(pressure)');
}

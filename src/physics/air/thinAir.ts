import { gravityAt } from './geopotential.ts';
import { AVOGADRO_1976, MOLAR_GAS_CONSTANT_1976, SEA_LEVEL_MOLAR_MASS } from './standard.ts';
import {
  eddyDiffusion,
  HYDROGEN,
  MINOR_GASES,
  MIXING_ENDS,
  NITROGEN,
  type ThinAirGas,
} from './thinAirGases.ts';
import { temperatureGradientInThinAir, temperatureInThinAir } from './thinAirTemperature.ts';

/**
 * The thin air from 86 to 1000 km, where each gas settles on its own.
 *
 * Number density n of each gas (Z in metres here, the standard's fluxes in kilometres):
 *
 *   N2:            d ln n/dZ = −M g/(R* T) − (dT/dZ)/T,   M = M0 up to 100 km, M(N2) above
 *   O, O2, Ar, He: d ln n/dZ = −g/(R* T) · D/(D+K) · [M_i + M K/D + α (R*)/g · dT/dZ] − v/(D+K) − (dT/dZ)/T
 *   H (≥ 150 km):  dn/dZ = −φ/D − n [ g M_H/(R* T) + (1+α) (dT/dZ)/T ],  n(500 km) = 8·10¹⁰ m⁻³
 *   D = a (T/273.15)^b / N, with N and M of the gases computed before: N2 alone for O and O2;
 *   N2 + O + O2 for Ar and He; all five for H.
 *
 * p = R* T Σn / N_A,  ρ = Σ n M / N_A.
 *
 * Integrated once, on first use, by the classical fourth-order Runge–Kutta method in steps of 250 m, then
 * read from a table: ln p and ln ρ every 500 m, cubic between, with the exact slopes at both ends.
 * Source: U.S. Standard Atmosphere, 1976, section 1.3 (equations from memory; they close with the printed
 * rows to 1000 km, see the tests).
 */

const FIRST_KM = 86;
const LAST_KM = 1000;
const ROW_KM = 0.5;
const STEPS_PER_ROW = 2;
const ROWS = (LAST_KM - FIRST_KM) / ROW_KM;
const GASES = MINOR_GASES.length + 1;
/** Numbers kept for each interval: value and slope of ln p and ln ρ at its two ends. */
const KEPT = 8;

function diffusionOf(gas: ThinAirGas, temperature: number, numberDensity: number): number {
  return (gas.diffusion.a / numberDensity) * (temperature / 273.15) ** gas.diffusion.b;
}

/** v/(D+K) [1/km]. */
function fluxOf(gas: ThinAirGas, zKm: number): number {
  const { Q, U, W, below } = gas.flux;
  const rise = zKm - U;
  let flux = Q * rise * rise * Math.exp(-W * rise ** 3);
  if (below && zKm < below.u) {
    const left = below.u - zKm;
    flux += below.q * left * left * Math.exp(-below.w * left ** 3);
  }
  return flux;
}

/**
 * Slopes d ln n/dZ [1/km] of N2, O, O2, Ar, He into `slopes`, from the logarithms of their number densities.
 * `settled`: whether the interval lies above the end of mixing, so that the break falls between two steps.
 */
function slopesInto(slopes: Float64Array, zKm: number, logs: Float64Array, settled: boolean): void {
  const temperature = temperatureInThinAir(zKm);
  const gradient = temperatureGradientInThinAir(zKm);
  const g = gravityAt(zKm * 1000);
  const weight = (1000 * g) / (MOLAR_GAS_CONSTANT_1976 * temperature); // g/(R* T) per kilometre
  const eddy = eddyDiffusion(zKm);
  const warming = gradient / temperature;
  let count = Math.exp(logs[0]!);
  let mass = count * NITROGEN.molarMass;
  slopes[0] = -weight * (settled ? NITROGEN.molarMass : SEA_LEVEL_MOLAR_MASS) - warming;
  let countWithOxygen = count;
  let massWithOxygen = mass;
  for (let i = 0; i < MINOR_GASES.length; i++) {
    const gas = MINOR_GASES[i]!;
    if (i === 2) {
      count = countWithOxygen;
      mass = massWithOxygen;
    }
    const mean = settled ? mass / count : SEA_LEVEL_MOLAR_MASS;
    const own = diffusionOf(gas, temperature, count);
    const free = own / (own + eddy);
    // α (R*)/g · dT/dZ: the gradient is per kilometre, g/R* per metre
    const thermal = (gas.thermalDiffusion * MOLAR_GAS_CONSTANT_1976 * gradient) / (1000 * g);
    slopes[i + 1] =
      -weight * (free * (gas.molarMass + thermal) + (1 - free) * mean) - fluxOf(gas, zKm) - warming;
    const here = Math.exp(logs[i + 1]!);
    countWithOxygen += here;
    massWithOxygen += here * gas.molarMass;
  }
}

interface Column {
  /** ln n of the five gases at each half step, row by row. */ readonly logs: Float64Array;
  /** [km] */ readonly step: number;
}

/** The five gases from 86 km upwards. */
function integrateColumn(): Column {
  const steps = ROWS * STEPS_PER_ROW;
  const step = ROW_KM / STEPS_PER_ROW;
  const logs = new Float64Array((steps + 1) * GASES);
  logs[0] = Math.log(NITROGEN.atMixedCeiling);
  for (let i = 0; i < MINOR_GASES.length; i++) logs[i + 1] = Math.log(MINOR_GASES[i]!.atMixedCeiling);
  const slopes = [0, 1, 2, 3].map(() => new Float64Array(GASES));
  const trial = new Float64Array(GASES);
  const [k1, k2, k3, k4] = slopes as [Float64Array, Float64Array, Float64Array, Float64Array];
  for (let s = 0; s < steps; s++) {
    const z = FIRST_KM + s * step;
    const settled = z >= MIXING_ENDS;
    const now = logs.subarray(s * GASES, (s + 1) * GASES);
    slopesInto(k1, z, now, settled);
    for (let i = 0; i < GASES; i++) trial[i] = now[i]! + (step / 2) * k1[i]!;
    slopesInto(k2, z + step / 2, trial, settled);
    for (let i = 0; i < GASES; i++) trial[i] = now[i]! + (step / 2) * k2[i]!;
    slopesInto(k3, z + step / 2, trial, settled);
    for (let i = 0; i < GASES; i++) trial[i] = now[i]! + step * k3[i]!;
    slopesInto(k4, z + step, trial, settled);
    for (let i = 0; i < GASES; i++) {
      logs[(s + 1) * GASES + i] = now[i]! + (step / 6) * (k1[i]! + 2 * k2[i]! + 2 * k3[i]! + k4[i]!);
    }
  }
  return { logs, step };
}

/** dn/dZ [1/(m³ km)] of hydrogen. */
function hydrogenSlope(zKm: number, n: number, others: number): number {
  const temperature = temperatureInThinAir(zKm);
  const weight = (1000 * gravityAt(zKm * 1000)) / (MOLAR_GAS_CONSTANT_1976 * temperature);
  const diffusion = (HYDROGEN.diffusion.a / others) * (temperature / 273.15) ** HYDROGEN.diffusion.b;
  const warming = temperatureGradientInThinAir(zKm) / temperature;
  return (
    (-1000 * HYDROGEN.escape) / diffusion -
    n * (weight * HYDROGEN.molarMass + (1 + HYDROGEN.thermalDiffusion) * warming)
  );
}

function countAt(column: Column, index: number): number {
  let sum = 0;
  for (let i = 0; i < GASES; i++) sum += Math.exp(column.logs[index * GASES + i]!);
  return sum;
}

/** Hydrogen at each row from 150 km on, outwards from 500 km both ways; 0 below. */
function integrateHydrogen(column: Column): Float64Array {
  const hydrogen = new Float64Array(ROWS + 1);
  const reference = (HYDROGEN.reference - FIRST_KM) / ROW_KM;
  const first = (HYDROGEN.from - FIRST_KM) / ROW_KM;
  hydrogen[reference] = HYDROGEN.atReference;
  for (const direction of [-1, 1]) {
    const last = direction < 0 ? first : ROWS;
    for (let row = reference; row !== last; row += direction) {
      const z = FIRST_KM + row * ROW_KM;
      const h = direction * ROW_KM;
      const n = hydrogen[row]!;
      const start = countAt(column, row * STEPS_PER_ROW);
      const middle = countAt(column, row * STEPS_PER_ROW + direction);
      const end = countAt(column, (row + direction) * STEPS_PER_ROW);
      const k1 = hydrogenSlope(z, n, start);
      const k2 = hydrogenSlope(z + h / 2, n + (h / 2) * k1, middle);
      const k3 = hydrogenSlope(z + h / 2, n + (h / 2) * k2, middle);
      const k4 = hydrogenSlope(z + h, n + h * k3, end);
      hydrogen[row + direction] = n + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    }
  }
  return hydrogen;
}

/** ln p, ln ρ and their slopes per kilometre at one end of an interval, into `out` from `at`. */
function rowInto(
  out: Float64Array,
  at: number,
  zKm: number,
  logs: Float64Array,
  settled: boolean,
  hydrogen: number,
  work: Float64Array,
): void {
  slopesInto(work, zKm, logs, settled);
  let count = 0;
  let mass = 0;
  let countSlope = 0;
  let massSlope = 0;
  for (let i = 0; i < GASES; i++) {
    const n = Math.exp(logs[i]!);
    const molarMass = i === 0 ? NITROGEN.molarMass : MINOR_GASES[i - 1]!.molarMass;
    count += n;
    mass += n * molarMass;
    countSlope += n * work[i]!;
    massSlope += n * work[i]! * molarMass;
  }
  if (hydrogen > 0) {
    const slope = hydrogenSlope(zKm, hydrogen, count);
    count += hydrogen;
    mass += hydrogen * HYDROGEN.molarMass;
    countSlope += slope;
    massSlope += slope * HYDROGEN.molarMass;
  }
  const temperature = temperatureInThinAir(zKm);
  out[at] = Math.log((count * MOLAR_GAS_CONSTANT_1976 * temperature) / AVOGADRO_1976);
  out[at + 1] = countSlope / count + temperatureGradientInThinAir(zKm) / temperature;
  out[at + 2] = Math.log(mass / AVOGADRO_1976);
  out[at + 3] = massSlope / mass;
}

/** For each interval of 500 m: at its lower, then its upper end, ln p, its slope, ln ρ, its slope. */
function makeTable(): Float64Array {
  const column = integrateColumn();
  const hydrogen = integrateHydrogen(column);
  const table = new Float64Array(ROWS * KEPT);
  const work = new Float64Array(GASES);
  for (let row = 0; row < ROWS; row++) {
    const settled = FIRST_KM + row * ROW_KM >= MIXING_ENDS;
    const escaping = FIRST_KM + row * ROW_KM >= HYDROGEN.from;
    for (const end of [0, 1]) {
      const index = (row + end) * STEPS_PER_ROW * GASES;
      const logs = column.logs.subarray(index, index + GASES);
      const z = FIRST_KM + (row + end) * ROW_KM;
      rowInto(
        table,
        row * KEPT + (end * KEPT) / 2,
        z,
        logs,
        settled,
        escaping ? hydrogen[row + end]! : 0,
        work,
      );
    }
  }
  return table;
}

let made: Float64Array | null = null;

function table(): Float64Array {
  made ??= makeTable();
  return made;
}

/** Cubic through two values and two slopes; `at` the offset of the value in each half of the interval. */
function cubic(rows: Float64Array, start: number, at: number, share: number): number {
  const left = start + at;
  const right = start + KEPT / 2 + at;
  const s2 = share * share;
  const s3 = s2 * share;
  return (
    rows[left]! * (2 * s3 - 3 * s2 + 1) +
    rows[left + 1]! * ROW_KM * (s3 - 2 * s2 + share) +
    rows[right]! * (3 * s2 - 2 * s3) +
    rows[right + 1]! * ROW_KM * (s3 - s2)
  );
}

function read(zKm: number, at: number): number {
  const rows = table();
  const place = (zKm - FIRST_KM) / ROW_KM;
  const row = Math.min(Math.floor(place), ROWS - 1);
  return Math.exp(cubic(rows, row * KEPT, at, place - row));
}

/** Pressure [Pa] at Z [m], 86 km ≤ Z ≤ 1000 km. */
export function pressureInThinAir(altitudeGeometric: number): number {
  return read(altitudeGeometric / 1000, 0);
}

/** Density [kg/m³] at Z [m], 86 km ≤ Z ≤ 1000 km. */
export function densityInThinAir(altitudeGeometric: number): number {
  return read(altitudeGeometric / 1000, 2);
}

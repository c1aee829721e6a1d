import {
  MOLAR_GAS_CONSTANT_1976,
  SEA_LEVEL_GRAVITY,
  SEA_LEVEL_MOLAR_MASS,
  SEA_LEVEL_PRESSURE,
} from './standard.ts';

/**
 * The well-mixed air below 86 km: seven layers, in each of which the molecular-scale temperature is
 * linear in geopotential altitude.
 * Source: U.S. Standard Atmosphere, 1976, section 1.2 and Table 4.
 */

/** Hydrostatic constant g0′ M0 / R* [K/m′]. */
const HYDROSTATIC = (SEA_LEVEL_GRAVITY * SEA_LEVEL_MOLAR_MASS) / MOLAR_GAS_CONSTANT_1976;

/** Base altitude [m′] and gradient of the molecular-scale temperature [K/m′] of each layer. */
const LAYERS: readonly (readonly [base: number, gradient: number])[] = [
  [0, -0.0065],
  [11_000, 0],
  [20_000, 0.001],
  [32_000, 0.0028],
  [47_000, 0],
  [51_000, -0.0028],
  [71_000, -0.002],
];

/** [K] at sea level. */
const SEA_LEVEL_TEMPERATURE = 288.15;

interface Layer {
  /** [m′] */ readonly base: number;
  /** [K/m′] */ readonly gradient: number;
  /** [K] */ readonly temperature: number;
  /** [Pa] */ readonly pressure: number;
}

function pressureInLayer(layer: Layer, altitudeGeopotential: number): number {
  const rise = altitudeGeopotential - layer.base;
  if (layer.gradient === 0) return layer.pressure * Math.exp((-HYDROSTATIC * rise) / layer.temperature);
  const temperature = layer.temperature + layer.gradient * rise;
  return layer.pressure * (layer.temperature / temperature) ** (HYDROSTATIC / layer.gradient);
}

function altitudeInLayer(layer: Layer, pressure: number): number {
  const logRatio = Math.log(layer.pressure / pressure);
  if (layer.gradient === 0) return layer.base + (layer.temperature / HYDROSTATIC) * logRatio;
  const growth = Math.expm1((-layer.gradient / HYDROSTATIC) * -logRatio);
  return layer.base + (layer.temperature / layer.gradient) * growth;
}

function stackLayers(): readonly Layer[] {
  const stacked: Layer[] = [];
  for (const [base, gradient] of LAYERS) {
    const below = stacked.at(-1);
    stacked.push({
      base,
      gradient,
      temperature: below ? below.temperature + below.gradient * (base - below.base) : SEA_LEVEL_TEMPERATURE,
      pressure: below ? pressureInLayer(below, base) : SEA_LEVEL_PRESSURE,
    });
  }
  return stacked;
}

const stack = stackLayers();

/** The layer that holds the altitude; below sea level the first layer goes on downwards, as in the tables. */
function layerAt(altitudeGeopotential: number): Layer {
  let i = stack.length - 1;
  while (i > 0 && altitudeGeopotential < stack[i]!.base) i--;
  return stack[i]!;
}

/** Molecular-scale temperature T_M = T M0/M [K] at a geopotential altitude [m′] below 84 852 m′. */
export function molecularScaleTemperatureInMixedAir(altitudeGeopotential: number): number {
  const layer = layerAt(altitudeGeopotential);
  return layer.temperature + layer.gradient * (altitudeGeopotential - layer.base);
}

/**
 * Pressure [Pa] at a geopotential altitude below 84 852 m′.
 *
 *   gradient L ≠ 0:  p = p_b [ T_b / (T_b + L (H − H_b)) ] ^ ( g0′ M0 / (R* L) )
 *   gradient L = 0:  p = p_b exp( −g0′ M0 (H − H_b) / (R* T_b) )
 *
 * @param altitudeGeopotential H [m′]
 * Assumes: hydrostatic, perfect gas, well mixed.
 * Source: U.S. Standard Atmosphere, 1976, section 1.3.
 * Check: H = 11 000 m′ → 22 632 Pa.
 */
export function pressureInMixedAir(altitudeGeopotential: number): number {
  return pressureInLayer(layerAt(altitudeGeopotential), altitudeGeopotential);
}

/** Geopotential altitude [m′] of a pressure [Pa] in the mixed air: the equations above solved for H. */
export function geopotentialAtPressureInMixedAir(pressure: number): number {
  let i = stack.length - 1;
  while (i > 0 && pressure > stack[i]!.pressure) i--;
  return altitudeInLayer(stack[i]!, pressure);
}

/**
 * Molar mass over its sea-level value, M/M0 [–], every 500 m from 80 to 86 km geometric, where atomic
 * oxygen begins to form. Below 80 km it is 1.
 * Source: U.S. Standard Atmosphere, 1976, Table 8 (from memory; the last value closes with
 * T = 186.8673 K, T_M = 186.946 K at 86 km).
 */
const MOLAR_MASS_RATIO = [
  1, 0.999996, 0.999989, 0.999971, 0.999941, 0.999909, 0.99987, 0.999829, 0.999786, 0.999741, 0.999694,
  0.999641, 0.9995788,
];
const RATIO_FROM = 80_000;
const RATIO_STEP = 500;

/** M/M0 [–] at a geometric altitude [m] up to 86 km; linear between the rows of the table. */
export function molarMassRatioInMixedAir(altitudeGeometric: number): number {
  if (altitudeGeometric <= RATIO_FROM) return 1;
  const place = (altitudeGeometric - RATIO_FROM) / RATIO_STEP;
  const row = Math.min(Math.floor(place), MOLAR_MASS_RATIO.length - 2);
  const share = place - row;
  return MOLAR_MASS_RATIO[row]! * (1 - share) + MOLAR_MASS_RATIO[row + 1]! * share;
}

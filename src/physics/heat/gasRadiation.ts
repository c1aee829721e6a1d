/**
 * Radiation of hot water vapour and carbon dioxide to the wall.
 *
 *   q = ½ (1 + ε_w) ε_g σ (T⁴ − T_w⁴),    ε_g = ε_H2O + ε_CO2 − Δε
 *   ln ε₀ = Σ aᵢ λⁱ,  aᵢ = Σ cⱼᵢ (T/1000 K)ʲ,  λ = log₁₀(p_i L/(1 bar cm))
 *   ε/ε₀  = 1 − (a − 1)(1 − P)/(a + b − 1 + P) · exp(−c [log₁₀(m/(p_i L))]²)
 *
 * L is the mean path, 0.95 hydraulic diameters. Fitted to 2500 K; hotter gas is given its emissivity there. No soot, no
 * alumina, no cold layer in between: an estimate, good to perhaps half its value (no source).
 *
 * Source: B. Leckner, Combustion and Flame 19, 1972, 33 (constants from memory).
 * Check: 1000 K, 1 bar m at low pressure share: ε_H2O ≈ 0.36, ε_CO2 ≈ 0.17, read off H. C. Hottel's charts 0.35…0.4, 0.17…0.19 (from memory).
 */

const STEFAN_BOLTZMANN = 5.670374e-8;
/** Of a sooted or oxidised metal wall [–]; common practice, no source. */
const WALL_EMISSIVITY = 0.8;
const HOTTEST_FIT = 2500;
/** Mean path of a long cylinder over its diameter [–]. */
const MEAN_PATH = 0.95;

const WATER = [
  [-2.2118, -1.1987, 0.035596],
  [0.85667, 0.93048, -0.14391],
  [-0.10838, -0.17156, 0.045915],
] as const;
const DIOXIDE = [
  [-3.9893, 2.7669, -2.1081, 0.39163],
  [1.271, -1.109, 1.0195, -0.21897],
  [-0.23678, 0.19731, -0.19544, 0.044644],
] as const;

export interface RadiatingGas {
  /** Mole fraction [–] */ readonly water: number;
  /** Mole fraction [–] */ readonly dioxide: number;
}

/** Emissivity of the gas [–], at most 1. @param pressure [Pa] @param path L [m] */
export function gasEmissivity(
  { water, dioxide }: RadiatingGas,
  temperature: number,
  pressure: number,
  path: number,
): number {
  const t = Math.min(temperature, HOTTEST_FIT) / 1000;
  const bars = pressure / 1e5;
  const centimetres = 100 * path;
  const [ofWater, ofDioxide] = [water * bars * centimetres, dioxide * bars * centimetres];
  const emissivity =
    waterEmissivity(t, bars, water * bars, ofWater) +
    dioxideEmissivity(t, bars, dioxide * bars, ofDioxide) -
    overlap(ofWater, ofDioxide);
  return Math.min(Math.max(emissivity, 0), 1);
}

/** q [W/m²] into a wall of temperature T_w [K]. @param diameter hydraulic [m] */
export function gasRadiation(
  gas: RadiatingGas,
  temperature: number,
  pressure: number,
  diameter: number,
  wallTemperature: number,
): number {
  const emissivity = gasEmissivity(gas, temperature, pressure, MEAN_PATH * diameter);
  return (
    0.5 * (1 + WALL_EMISSIVITY) * emissivity * STEFAN_BOLTZMANN * (temperature ** 4 - wallTemperature ** 4)
  );
}

function lowPressure(constants: readonly (readonly number[])[], t: number, along: number): number {
  const lambda = Math.log10(along);
  let sum = 0;
  constants.forEach((row, i) => {
    sum += row.reduce((a, c, j) => a + c * t ** j, 0) * lambda ** i;
  });
  return Math.exp(sum);
}

/** Thinner than this [bar cm] neither gas radiates to speak of. */
const THIN = 0.01;

function waterEmissivity(t: number, bars: number, partial: number, along: number): number {
  if (along < THIN) return 0;
  const a = t < 0.75 ? 2.144 : 1.888 - 2.053 * Math.log10(t);
  const effective = bars + (2.56 * partial) / Math.sqrt(t);
  return lowPressure(WATER, t, along) * broadening(a, 1.1 * t ** -1.4, 0.5, effective, 13.2 * t * t, along);
}

function dioxideEmissivity(t: number, bars: number, partial: number, along: number): number {
  if (along < THIN) return 0;
  const most = t < 0.7 ? 0.054 / (t * t) : 0.225 * t * t;
  const effective = bars + 0.28 * partial;
  return (
    lowPressure(DIOXIDE, t, along) * broadening(1 + 0.1 * t ** -1.45, 0.23, 1.47, effective, most, along)
  );
}

function broadening(a: number, b: number, c: number, effective: number, most: number, along: number): number {
  const off = Math.log10(most / along);
  return 1 - (((a - 1) * (1 - effective)) / (a + b - 1 + effective)) * Math.exp(-c * off * off);
}

function overlap(water: number, dioxide: number): number {
  const all = water + dioxide;
  if (all <= 1 || water === 0) return 0;
  const share = water / all;
  return (share / (10.7 + 101 * share) - 0.0089 * share ** 10.4) * Math.log10(all) ** 2.76;
}

/** σ ε T⁴ [W/m²] that a bare surface sends out. */
export function sentOut(emissivity: number, temperature: number): number {
  return emissivity * STEFAN_BOLTZMANN * temperature ** 4;
}

/** Tanks and the gas that presses on the propellant: mass by membrane stress and by the gas law. */

import { MOLAR_GAS_CONSTANT } from '../constants.ts';

export interface TankMaterial {
  /** Stress that is allowed [Pa] */ readonly stress: number;
  /** [kg/m³] */ readonly density: number;
}

/** Volume over that of the propellant: room for the gas to begin with. Common practice, no source. */
export const ULLAGE = 1.05;

/**
 * Mass of a pressurised shell [kg]
 *
 *   sphere: m = (3/2) p V ρ/σ,   long cylinder: m = 2 p V ρ/σ
 *
 * from hoop stress p r/(2t) and p r/t, thin wall, nothing for ends, fittings, insulation or least gauges. A band between the two.
 * Source: membrane stress, any textbook of strength; D. K. Huzel, D. H. Huang, NASA SP-125, 2nd ed. 1971, ch. 8.
 * Check: 1 m³ at 20 bar, 2800 kg/m³, 280 MPa: 30 kg as a sphere, 40 kg as a cylinder.
 */
export function tankMass(
  pressure: number,
  volume: number,
  { stress, density }: TankMaterial,
): { readonly low: number; readonly high: number } {
  const one = (pressure * volume * density) / stress;
  return { low: 1.5 * one, high: 2 * one };
}

/** Helium, stored at a high pressure. */
export interface Pressurant {
  /** [Pa] at the start */ readonly storedPressure: number;
  /** [K] */ readonly temperature: number;
}

const HELIUM = { molarMass: 4.002602e-3, gamma: 5 / 3 } as const;

/**
 * Mass of helium that drives out the propellant [kg]
 *
 *   m = p V M/(R T) · γ/(1 − p/p₀)
 *
 * the gas left in the bottle cools as it expands; p: tank, p₀: bottle at the start.
 * Source: G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., 2001, ch. 6 (from memory).
 * Check: 1 m³ at 20 bar from 300 bar at 293 K → 3.286 · 1.786 = 5.87 kg.
 * @returns null where the bottle holds no more pressure than the tank
 */
export function pressurantMass(
  pressure: number,
  volume: number,
  { storedPressure, temperature }: Pressurant,
): number | null {
  if (pressure >= storedPressure) return null;
  const held = (pressure * volume * HELIUM.molarMass) / (MOLAR_GAS_CONSTANT * temperature);
  return (held * HELIUM.gamma) / (1 - pressure / storedPressure);
}

/** Volume of the bottle that holds it [m³]: m R T/(M p₀). */
export function bottleVolume(mass: number, { storedPressure, temperature }: Pressurant): number {
  return (mass * MOLAR_GAS_CONSTANT * temperature) / (HELIUM.molarMass * storedPressure);
}

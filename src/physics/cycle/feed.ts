/** The propellants on their way: pressure drops, and the power that pumps need. */

export interface Stream {
  /** [kg/s] */ readonly massFlow: number;
  /** [kg/m³] */ readonly density: number;
  /** Share of the shaft's power that becomes pressure [–] */ readonly efficiency: number;
  /** In the tank [Pa] */ readonly from: number;
  /** Behind the pump [Pa] */ readonly to: number;
}

/** Pressure drops between pump and chamber, each over the chamber pressure [–]. */
export interface PressureDrops {
  readonly injector: number;
  /** Cooling channels, on the fuel’s side. */ readonly jacket: number;
  /** Valves and lines. */ readonly lines: number;
}

/**
 * Power that one stream takes from the shaft [W]
 *
 *   P = ṁ (p_out − p_in) / (η ρ)
 *
 * Assumes: incompressible. Liquid hydrogen is some per cent lighter work than that at high pressure.
 * Source: M. Martinez-Sanchez, MIT 16.512 Rocket Propulsion, lecture 25; A. J. Sobin, W. R. Bissell, NASA SP-8107, 1974.
 * Check: 42 500 gal/min raised by 1 500 psi are 37 190 hp at η = 1 (gpm · psi / 1714 = 37 194).
 */
export function pumpPower({ massFlow, density, efficiency, from, to }: Stream): number {
  return (massFlow * Math.max(to - from, 0)) / (efficiency * density);
}

/** Pressure behind the pump [Pa]: p_c (1 + Σ drops). */
export function pressureBehindPump(chamberPressure: number, ...drops: readonly number[]): number {
  return chamberPressure * drops.reduce((sum, drop) => sum + drop, 1);
}

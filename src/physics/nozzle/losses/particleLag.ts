/**
 * Loss to drops of alumina that lag behind the gas in velocity and temperature.
 *
 *   u_p du_p/dx = 18 μ f_D (u − u_p)/(ρ_p d²),            f_D = 1 + 0.15 Re^0.687
 *   c u_p dT_p/dx = 6 Nu λ (T − T_p)/(ρ_p d²),            Nu = 2 + 0.6 Re^½ Pr^⅓
 *   Δs = ψ ∫ (u − u_p) du_p/T + ψ c ∫ (1/T − 1/T_p) (−dT_p),     ΔI/I = T_e Δs/u_e²
 *
 * ψ is the share of the mass that is alumina; the gas is taken as it flows without lag, so that the loss is of first order in
 * the lag. The work lost to a Δs is T_e Δs (Gouy and Stodola).
 *
 *   d = 3.6304 µm (D_t/1 in)^0.2932        mean diameter for long stay and high pressure
 *
 * Sources: L. Schiller, A. Naumann, VDI-Z. 77, 1933, 318; W. E. Ranz, W. R. Marshall, Chem. Eng. Prog. 48, 1952, 141; R. W.
 * Hermsen, J. Spacecraft 18(6), 1981 (diameter); all from memory. The drops of one motor spread over a factor of three in size.
 */

export interface LagStation {
  /** [m] along the flow */ readonly path: number;
  /** [K] */ readonly temperature: number;
  /** [m/s] */ readonly velocity: number;
  /** [kg/m³] of the gas alone */ readonly density: number;
  /** [Pa s] */ readonly viscosity: number;
  /** [W/(m K)] */ readonly conductivity: number;
  /** [–] */ readonly prandtl: number;
}

/** [kg/m³] of liquid alumina near 2500 K, and its heat capacity [J/(kg K)]; from memory. */
const DROP_DENSITY = 2800;
const DROP_HEAT_CAPACITY = 1888;
const INCH = 0.0254;

/** Mean diameter of the drops [m] behind a throat of `throatDiameter` [m]. */
export function aluminaDiameter(throatDiameter: number): number {
  return 3.6304e-6 * (throatDiameter / INCH) ** 0.2932;
}

/**
 * Share of the specific impulse lost [–].
 * @param stations from the chamber to the lip
 * @param massShare ψ [–] @param diameter d [m]
 */
export function particleLagLoss(
  stations: readonly LagStation[],
  massShare: number,
  diameter: number,
): number {
  const first = stations[0]!;
  const last = stations[stations.length - 1]!;
  let velocity = first.velocity;
  let temperature = first.temperature;
  let entropy = 0;
  for (let i = 1; i < stations.length; i++) {
    const here = stations[i]!;
    const step = here.path - stations[i - 1]!.path;
    if (!(step > 0)) continue;
    const reynolds = (here.density * Math.abs(here.velocity - velocity) * diameter) / here.viscosity;
    const mass = DROP_DENSITY * diameter * diameter * velocity;
    const drag = (18 * here.viscosity * (1 + 0.15 * reynolds ** 0.687) * step) / mass;
    const nusselt = 2 + 0.6 * Math.sqrt(reynolds) * Math.cbrt(here.prandtl);
    const heat = (6 * nusselt * here.conductivity * step) / (mass * DROP_HEAT_CAPACITY);
    const nextVelocity = (velocity + drag * here.velocity) / (1 + drag);
    const nextTemperature = (temperature + heat * here.temperature) / (1 + heat);
    entropy += ((here.velocity - nextVelocity) * (nextVelocity - velocity)) / here.temperature;
    entropy +=
      DROP_HEAT_CAPACITY * (temperature - nextTemperature) * (1 / here.temperature - 1 / nextTemperature);
    velocity = nextVelocity;
    temperature = nextTemperature;
  }
  return (last.temperature * massShare * entropy) / (last.velocity * last.velocity);
}

/**
 * What the standard states of each gas above 86 km.
 * Source: U.S. Standard Atmosphere, 1976, section 1.3 and Tables 3, 6, 7, 9 (from memory; the sum at 86 km
 * closes with the pressure there, the whole with the printed rows up to 1000 km).
 */
export interface ThinAirGas {
  readonly name: string;
  /** [kg/mol] */ readonly molarMass: number;
  /** Number density at 86 km [1/m³] */ readonly atMixedCeiling: number;
  /** Thermal diffusion coefficient α [–] */ readonly thermalDiffusion: number;
  /** D = a (T/273.15)^b / N: a [1/(m s)] and b [–] */ readonly diffusion: {
    readonly a: number;
    readonly b: number;
  };
  /**
   * v/(D + K) [1/km] = Q (Z−U)² exp(−W (Z−U)³) + q (u−Z)² exp(−w (u−Z)³): sources, sinks and vertical flux.
   * The second term only below u; Z, U, u in km, Q, q, W, w in km⁻³.
   */
  readonly flux: {
    readonly Q: number;
    readonly U: number;
    readonly W: number;
    readonly below: { readonly q: number; readonly u: number; readonly w: number } | null;
  };
}

/** Molecular nitrogen: sets the pressure scale; molar mass [kg/mol], number density at 86 km [1/m³]. */
export const NITROGEN = { molarMass: 0.0280134, atMixedCeiling: 1.129794e20 };

/** Atomic oxygen, molecular oxygen, argon, helium, in the order in which the standard computes them. */
export const MINOR_GASES: readonly ThinAirGas[] = [
  {
    name: 'O',
    molarMass: 0.0159994,
    atMixedCeiling: 8.6e16,
    thermalDiffusion: 0,
    diffusion: { a: 6.986e20, b: 0.75 },
    flux: {
      Q: -5.809644e-4,
      U: 56.90311,
      W: 2.70624e-5,
      below: { q: -3.416248e-3, u: 97, w: 5.008765e-4 },
    },
  },
  {
    name: 'O2',
    molarMass: 0.0319988,
    atMixedCeiling: 3.030898e19,
    thermalDiffusion: 0,
    diffusion: { a: 4.863e20, b: 0.75 },
    flux: { Q: 1.366212e-4, U: 86, W: 8.333333e-5, below: null },
  },
  {
    name: 'Ar',
    molarMass: 0.039948,
    atMixedCeiling: 1.3514e18,
    thermalDiffusion: 0,
    diffusion: { a: 4.487e20, b: 0.87 },
    flux: { Q: 9.434079e-5, U: 86, W: 8.333333e-5, below: null },
  },
  {
    name: 'He',
    molarMass: 0.0040026,
    atMixedCeiling: 7.5817e14,
    thermalDiffusion: -0.4,
    diffusion: { a: 1.7e21, b: 0.691 },
    flux: { Q: -2.457369e-4, U: 86, W: 6.666667e-4, below: null },
  },
];

/** Atomic hydrogen escapes: a constant upward flux, known at 500 km, left out below 150 km. */
export const HYDROGEN = {
  /** [kg/mol] */ molarMass: 0.00100797,
  /** Number density [1/m³] at the reference altitude */ atReference: 8e10,
  /** [km] */ reference: 500,
  /** [km] */ from: 150,
  /** α [–] */ thermalDiffusion: -0.25,
  /** a [1/(m s)], b [–] */ diffusion: { a: 3.305e21, b: 0.5 },
  /** φ [1/(m² s)] */ escape: 7.2e11,
};

/** Above this altitude [km] nitrogen settles by its own mass instead of that of the mixture. */
export const MIXING_ENDS = 100;

/**
 * Eddy diffusion coefficient K [m²/s] at Z [km]:
 * 120 up to 95 km, then 120 exp(1 − 400/[400 − (Z − 95)²]), none from 115 km on.
 */
export function eddyDiffusion(zKm: number): number {
  if (zKm < 95) return 120;
  if (zKm >= 115) return 0;
  return 120 * Math.exp(1 - 400 / (400 - (zKm - 95) ** 2));
}

/** Rows of the data files, as the physics receives them. The physics never reads files. */

/** One temperature interval of a NASA nine-coefficient polynomial. */
export interface ThermoRange {
  /** [K] */ readonly Tmin: number;
  /** [K] */ readonly Tmax: number;
  /** a1…a7 of cp/R = a1 T⁻² + a2 T⁻¹ + a3 + a4 T + a5 T² + a6 T³ + a7 T⁴. */
  readonly a: readonly number[];
  /** b1, b2: integration constants of h/RT and s/R. */
  readonly b: readonly number[];
}

export interface SpeciesRecord {
  readonly name: string;
  /** Plain-English name, where the data has one. */
  readonly label?: string;
  readonly elements: Readonly<Record<string, number>>;
  readonly phase: 'gas' | 'solid' | 'liquid';
  /** In the short list that is enough for rocket combustion products. */
  readonly core: boolean;
  /** [kg/mol] */ readonly molarMass: number;
  /** [J/mol] at 298.15 K */ readonly hf298: number;
  readonly refCode: string;
  readonly refText?: string;
  readonly note?: string;
  readonly ranges: readonly ThermoRange[];
}

export interface PropellantRecord {
  readonly id: string;
  readonly name: string;
  /** Plain names and spellings by which a study may call it, e.g. `oxygen`, `liquid oxygen`. */
  readonly alsoCalled: readonly string[];
  readonly role: 'oxidizer' | 'fuel' | 'diluent';
  readonly phase: 'solid' | 'liquid' | 'gas';
  readonly elements: Readonly<Record<string, number>>;
  /** [kg/mol] of the stated formula */ readonly molarMass: number;
  /** [K] temperature at which it is fed */ readonly temperature: number;
  /** [J/kg] on the scale of the species data (elements at 298.15 K, 1 bar are zero) */ readonly enthalpy: number;
  /** [J/kg] */ readonly enthalpyUncertainty: number;
  readonly enthalpySource: string;
  /** [kg/m³] */ readonly density: number;
  readonly densitySource: string;
  readonly note?: string;
  /** One line on how it burns, poisons or detonates; printed with the caution. */
  readonly hazard: string;
}

/** Constants of the Lennard-Jones (12-6) potential of one gas species. */
export interface TransportRecord {
  /** Name in the species data. */ readonly species: string;
  /** σ, collision diameter [m] */ readonly diameter: number;
  /** ε/k, depth of the well over Boltzmann's constant [K] */ readonly wellDepth: number;
  /** Whether both rest on measurement. */ readonly measured: boolean;
  readonly from: string;
}

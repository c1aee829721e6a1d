/** Rows of data about coolants and walls, as `data/` holds them. SI units. */

/** Values over ln p and u, row by row; at each pressure h = lowest + (highest − lowest) u^power. */
export interface CoolantTable {
  readonly pressure: readonly number[];
  /** [J/kg] at u = 0 */ readonly lowest: readonly number[];
  /** [J/kg] at u = 1 */ readonly highest: readonly number[];
  readonly power: number;
  readonly columns: number;
  readonly temperature: readonly number[];
  readonly density: readonly number[];
  readonly heatCapacity: readonly number[];
  readonly viscosity: readonly number[];
  readonly conductivity: readonly number[];
}

export interface CoolantRecord {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  readonly criticalPressure: number;
  readonly criticalTemperature: number;
  /** [K] top of the table above the critical pressure */ readonly hottest: number;
  /** Below the critical pressure, up to the boiling point. */ readonly liquid: CoolantTable;
  readonly dense: CoolantTable;
}

/** A temperature that must not be passed, and why. */
export interface TemperatureLimit {
  /** [K] */ readonly temperature: number;
  readonly why: string;
  readonly source: string;
}

/** What a coolant stands. */
export interface CoolantLimits {
  readonly id: string;
  /** Of the wall that it touches: deposits. */ readonly wall: TemperatureLimit | null;
  /** Of the coolant itself: it comes apart. */ readonly bulk: TemperatureLimit | null;
}

export interface WallMaterialRecord {
  readonly id: string;
  readonly name: string;
  readonly family: 'copper' | 'nickel' | 'steel' | 'refractory' | 'carbon' | 'light';
  /** Pairs of temperature [K] and conductivity [W/(m K)], rising in temperature. */
  readonly conductivity: readonly (readonly [temperature: number, value: number])[];
  /** [kg/m³] */ readonly density: number;
  /** On the gas side, in long use. */ readonly limit: TemperatureLimit;
  /** Of the outside, for a wall that only radiates [–]. */ readonly emissivity: number;
  readonly source: string;
}

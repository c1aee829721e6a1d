import type { PropellantRecord, SpeciesRecord, TransportRecord } from '../physics/gas/records.ts';

import type { CoolantLimits, CoolantRecord, WallMaterialRecord } from '../physics/heat/index.ts';

/** One coolant of the index. */
export interface CoolantRow extends CoolantLimits {
  readonly alsoCalled: readonly string[];
  /** Ids of the propellants that it stands for. */ readonly propellants: readonly string[];
}

/** Where the answer layer gets its data rows. Node reads files, the browser fetches them; both lazily. */
export interface DataShelf {
  /** All species made only of these elements, gas and condensed. */
  species(elements: readonly string[]): Promise<readonly SpeciesRecord[]>;
  propellants(): Promise<readonly PropellantRecord[]>;
  /** What coolants there are, the propellants they stand for and what they stand. */
  coolants(): Promise<readonly CoolantRow[]>;
  /** The table of one of them. */
  coolant(id: string): Promise<CoolantRecord>;
  walls(): Promise<readonly WallMaterialRecord[]>;
  /** Constants of viscosity and conductivity, of every species that has them. */
  transport(): Promise<readonly TransportRecord[]>;
}

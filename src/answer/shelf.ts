import type { PropellantRecord, SpeciesRecord, TransportRecord } from '../physics/gas/records.ts';

/** Where the answer layer gets its data rows. Node reads files, the browser fetches them; both lazily. */
export interface DataShelf {
  /** All species made only of these elements, gas and condensed. */
  species(elements: readonly string[]): Promise<readonly SpeciesRecord[]>;
  propellants(): Promise<readonly PropellantRecord[]>;
  /** Constants of viscosity and conductivity, of every species that has them. */
  transport(): Promise<readonly TransportRecord[]>;
}

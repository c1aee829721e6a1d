/** Measured points of a study: where they stand, and what was read of them. SI units. */

export interface MeasuredInput {
  readonly id: string;
  readonly title: string | null;
  /** Name of a CSV file inside the study's folder. */ readonly file: string;
  /** Id of the engine or the vehicle that was measured. */ readonly of: string;
  /** Id of a source of the study. */ readonly source: string;
  /** Surroundings of all its points, where the place of the points is none; null: not said. */
  readonly at:
    | { readonly kind: 'vacuum' }
    | { readonly kind: 'altitude' | 'pressure'; readonly value: number }
    | null;
  readonly path: string;
}

/** One column of the file. */
export interface MeasuredColumn {
  /** As written in the header: a quantity, or an input. */ readonly name: string;
  /** As written; empty for a plain number. */ readonly unit: string;
  /** Exponents of kilogram, metre, second, kelvin, mole, radian. */ readonly dimension: readonly number[];
  /** [SI], one a row; null where the cell is empty. */ readonly values: readonly (number | null)[];
  /** [SI], two standard deviations, one a row; null where none is stated. */
  readonly plusMinus: readonly (number | null)[];
}

export interface MeasuredTable {
  /** Where each point was measured: the first column. */ readonly place: MeasuredColumn;
  readonly columns: readonly MeasuredColumn[];
}

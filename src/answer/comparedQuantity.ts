/** One number of two things set against each other. SI. */

export interface ComparedQuantity {
  /** Name in the catalogue. */ readonly quantity: string;
  /** Where: an altitude [m] or null for vacuum / for quantities without a place. */ readonly altitude:
    | number
    | null;
  readonly base: number | null;
  readonly other: number | null;
  /** other − base; null if either is */ readonly difference: number | null;
  /** (other − base)/base */ readonly share: number | null;
  /** Ends of the difference’s own band, what both engines share taken out; absent: nothing is left open, or not drawn. */
  readonly band?: { readonly low: number; readonly high: number };
  /** In words: `12 s more`, `the same`, `too close to call (from 1 s less to 3 s more)`, … */ readonly words: string;
}

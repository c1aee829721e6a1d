/** Whether the second engine of a pair is worth it: what it gains and what it costs, on one basis. SI units. */

export interface WorthValue {
  readonly value: number;
  /** [SI] between them lie 95 % of what is not known; null where nothing is open. */ readonly low:
    | number
    | null;
  readonly high: number | null;
}

/** Null with its reason where an engine has no such number. */
export interface WorthSide {
  readonly found: WorthValue | null;
  readonly why: string | null;
}

export interface WorthRow {
  readonly group: 'gain' | 'price';
  /** Name in the catalogue. */ readonly quantity: string;
  readonly label: string;
  /** `at the pad`, `in vacuum`; empty where there is no place. */ readonly where: string;
  readonly base: WorthSide;
  readonly other: WorthSide;
  /** Of the engine that stands for the bound: what no nozzle behind that throat can beat; null where the study has none. */
  readonly bound: WorthSide | null;
  /** Other less base, with its own band; null where a side is missing. */
  readonly difference: {
    readonly value: number;
    readonly low: number;
    readonly high: number;
    readonly tooClose: boolean;
    readonly words: string;
  } | null;
}

export interface WorthTable {
  /** Ids of engines. */ readonly base: string;
  readonly other: string;
  readonly bound: string | null;
  /** What is the same for both, e.g. `same throat area`; empty where nothing of the size is. */
  readonly basis: readonly string[];
  readonly rows: readonly WorthRow[];
  /** How it was drawn. */ readonly drawn: string;
}

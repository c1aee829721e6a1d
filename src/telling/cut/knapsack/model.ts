/** The greatest weight within a time, where items need others and a group adds a bonus once any of its items is taken. */

export interface Item {
  /** Whole number ≥ 0. */ readonly time: number;
  /** Whole number ≥ 0. */ readonly weight: number;
  /** Items that must be taken with it, by place. */ readonly needs: readonly number[];
}

/** Items that stand together. */
export interface Group {
  /** Whole number ≥ 0, added once any of its items is taken. */ readonly bonus: number;
  readonly items: readonly Item[];
}

export interface ClosureKnapsack {
  /** Whole number ≥ 0. */ readonly room: number;
  /** `needs` counts through all groups in this order. */ readonly groups: readonly Group[];
}

export interface Taken {
  readonly weight: number;
  readonly time: number;
  /** By place through all groups. */ readonly taken: readonly boolean[];
  /** No choice weighs more than this beyond it; 0: it is the best. */ readonly short: number;
}

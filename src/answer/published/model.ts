/** What an answer says about published figures. Numbers are SI; specific impulse in seconds. */

/** One published row beside the value that the models give. */
export interface PublishedFigure {
  /** Name in the catalogue without its place. */ readonly quantity: string;
  /** Name of what it is held against: the whole engine's, `cycle.thrust`, where the study states a cycle; else the same name. */
  readonly comparedWith: string;
  /** Where it holds; null where the quantity is the same everywhere. */ readonly at: {
    /** [m] geometric; null for vacuum and for a pressure without an altitude */ readonly altitude:
      | number
      | null;
    /** [Pa] */ readonly ambientPressure: number;
  } | null;
  readonly value: number;
  /** As stated; null where the row states none. */ readonly plusMinus: number | null;
  /** Half a unit of the last digit given; counts where no ± is stated. */ readonly rounding: number;
  /** As the study writes it. */ readonly text: string;
  /** In words: citation or title. */ readonly source: string;
  /** Key of the study's sources; null for a citation in words. */ readonly sourceKey: string | null;
  /** Null with a reason where the models have no value. */ readonly computed: number | null;
  /** computed − published */ readonly difference: number | null;
  /** difference over published */ readonly share: number | null;
  /** Whether the computed value lies inside the ±, or inside the rounding where none is stated. */
  readonly within: boolean | null;
}

/** One quantity by one road: from one row or from several together. */
export interface PublishedRoad {
  readonly value: number;
  /** Least and greatest that the ± and the digits of its rows allow. */ readonly low: number;
  readonly high: number;
  /** In words: how it follows from its rows. */ readonly by: string;
  /** Its rows: `published[0]`, or a path of the study for an input stated there. */ readonly rows: readonly string[];
}

/** The same quantity by two roads. Where they disagree, the rows contradict each other. */
export interface PublishedCheck {
  /** Name in the catalogue. */ readonly quantity: string;
  /** Where; null where the quantity is the same everywhere [Pa]. */ readonly ambientPressure: number | null;
  readonly one: PublishedRoad;
  readonly other: PublishedRoad;
  readonly agrees: boolean;
  /** other − one */ readonly difference: number;
  /** difference over one */ readonly share: number;
  /** By how much the two miss each other beyond ± and digits; 0 where they agree. */ readonly beyond: number;
  /** One sentence: what, by how much, which rows. */ readonly words: string;
}

export interface PublishedBand {
  readonly low: number;
  readonly high: number;
}

/** The input that the published rows settle. */
export interface PublishedSolve {
  /** Name in the catalogue: `areaRatio`, `massFlow`, … */ readonly quantity: string;
  /** True where the study states that input too; then the engine keeps what is stated. */ readonly stated: boolean;
  /** What the engine was computed with. */ readonly used: number;
  /** The value that meets the rows; null with a reason where none does, or more than one. */ readonly value:
    | number
    | null;
  /** Where every row is met within its ± or its digits. */ readonly bands: readonly PublishedBand[];
  /** What each row asks for by itself. */ readonly rows: readonly {
    readonly row: string;
    readonly bands: readonly PublishedBand[];
  }[];
  /** Rows that do not depend on that input. */ readonly withoutEffect: readonly string[];
}

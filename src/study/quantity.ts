/** A number as the study states it. */

/** A range within which a value may lie. SI. */
export type RangeSpread =
  /** Anywhere alike. */
  | { readonly kind: 'even'; readonly low: number; readonly high: number }
  /** Most likely at the peak, falling straight to nothing at both ends. */
  | { readonly kind: 'triangular'; readonly low: number; readonly high: number; readonly peak: number };

/** A number as written in the study. */
export interface Quantity {
  /** SI (kelvin, pascal, metre, newton, radian, plain share for %) */ readonly value: number;
  /** ± in the same unit [SI], two standard deviations of a normal spread; null when exact, a range, or not stated */ readonly plusMinus:
    | number
    | null;
  /** Where it is stated as a range: `value` is then its middle or its peak, and `plusMinus` null. Absent: it is not. */
  readonly spread?: RangeSpread;
  /** As the user wrote it, e.g. `97.5 ± 1 %`, `95 to 97 %`. */ readonly text: string;
  /** Path in the study, e.g. `engines.bell.chamber.pressure`. */ readonly path: string;
  /** True where the study says nothing and the documented default was taken. */ readonly byDefault: boolean;
}

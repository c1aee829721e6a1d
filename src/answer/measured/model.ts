/** Measured points beside what is computed at the same places. SI units. */

import type { Problem } from '../../numerics/problem.ts';

export interface MeasuredPoint {
  /** Of the place. */ readonly at: number;
  readonly value: number;
  /** Two standard deviations; null where none is stated. */ readonly plusMinus: number | null;
  /** Null where it cannot be computed there; `problem` says why. */ readonly computed: number | null;
  /** 95 % of the models’ published errors; equal to `computed` where there are none. */
  readonly low: number | null;
  readonly high: number | null;
  /** Measured less computed. */ readonly residual: number | null;
  /** Of the computed value [–]. */ readonly share: number | null;
  /** Whether the residual is no more than both bands together; null where either is missing. */
  readonly agrees: boolean | null;
  readonly problem: Problem | null;
}

export interface MeasuredSeries {
  /** Of the section in the study. */ readonly id: string;
  readonly title: string | null;
  /** Id and name of the engine or the vehicle. */ readonly engine: string;
  readonly engineName: string;
  /** Name in the catalogue. */ readonly quantity: string;
  /** `altitude`, `ambientPressure`, `throttle`, `wall.axial`, `time` of a flight, or an input of the engine. */ readonly place: string;
  readonly source: string;
  readonly points: readonly MeasuredPoint[];
  /** Root of the mean square of the residuals; null where there are none. */ readonly rms: number | null;
  /** Their mean. */ readonly bias: number | null;
}

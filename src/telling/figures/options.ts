/** What the caller of a figure may choose. */

import type { MeasuredSeries } from '../../answer/measured/model.ts';
import type { ConditionRow } from '../../answer/model.ts';
import type { EngineStyle } from '../look/engineStyles.ts';
import type { Tint } from '../look/flowRamps.ts';
import type { FigureSize } from '../look/formats.ts';
import type { Theme } from '../look/tokens.ts';
import type { FramePart } from './frame.ts';

/** A geometric altitude [m], or no air at all. */
export type Altitude = number | 'vacuum';

export interface FigureOptions {
  readonly size: FigureSize;
  readonly theme: Theme;
  /** No ground painted, for laying over film. */ readonly transparent?: boolean;
  /** Where the cut is drawn, or where curves are marked. */ readonly altitude?: Altitude;
  /** What the gas of a cut is drawn by; its pressure unless said. */ readonly tint?: Tint;
  /** Said instead of the finding that the comparison gives. */ readonly title?: string;
  /** Measured points to draw over the curves that they belong to. */
  readonly measured?: readonly MeasuredSeries[];
  /** Parts of head and foot to leave out, where the words around the picture say them. */
  readonly without?: readonly FramePart[];
  /**
   * Rows over altitude by engine id, finer than those in the answer, the vacuum row last (see the answer's
   * altitude curve). Without them the rows of the answer are used and joined linearly in ambient pressure,
   * which is exact for a nozzle of fixed shape that flows full.
   */
  readonly curves?: Readonly<Record<string, readonly ConditionRow[]>>;
  /** Styles by engine id, where an engine is to keep one that its place in this answer would not give it. */
  readonly styles?: Readonly<Record<string, EngineStyle>>;
}

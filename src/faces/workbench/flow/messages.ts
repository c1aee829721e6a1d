/** Between the page and the worker that paints whole flows. */

import type { Shown } from '../../../answer/flow/index.ts';
import type { FlowPlacing } from '../../../telling/figures/flowUnderlay.ts';
import type { Theme } from '../../../telling/look/tokens.ts';

/** A picture of a field. */
export interface FlowPaint {
  /** Under which the picture is known. */ readonly id: string;
  /** Of the field. */ readonly key: string;
  readonly shown: Shown;
  readonly theme: Theme;
  readonly placing: FlowPlacing;
  /** Pixels of the picture for one of the drawing. */ readonly ratio: number;
  readonly streamlines: boolean;
}

/** All that is wanted now, the most wanted first; what was wanted before and is not begun is dropped. */
export interface FlowPaintOrder {
  readonly wanted: readonly FlowPaint[];
}

export type FlowPainted =
  | { readonly id: string; readonly picture: ImageBitmap }
  /** Its cells cannot be had now, or (`fault`) it cannot be painted. */
  | { readonly id: string; readonly picture: null; readonly fault?: string };

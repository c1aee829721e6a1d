/** What the caller of a clip may choose, besides its time. */

import type { Altitude, FigureOptions } from '../figures/options.ts';

export type ClipOptions = Omit<FigureOptions, 'altitude'>;

export interface ClimbOptions extends ClipOptions {
  readonly from: Altitude;
  readonly to: Altitude;
}

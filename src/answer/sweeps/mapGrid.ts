/** What has been sampled of a map. */

import type { ExpressionValue } from './valueWithBand.ts';

export interface MapGrid {
  readonly across: readonly number[];
  readonly up: readonly number[];
  readonly values: readonly ExpressionValue[];
}

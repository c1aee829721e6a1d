/** A script and its film laid beside each other, token by token. */

import type { Pair } from './align.ts';
import type { FilmToken } from './filmTokens.ts';
import type { PlacedLine, ScriptToken } from './scriptTokens.ts';

export interface Laid {
  readonly lines: readonly PlacedLine[];
  readonly script: readonly ScriptToken[];
  readonly film: readonly FilmToken[];
  readonly pairs: readonly Pair[];
}

/** Forces of one clip, all in one unit with the same digits. */

import { textOfSigned } from './signedText.ts';

export interface ForceUnit {
  readonly symbol: string;
  /** [1/N] */ readonly perNewton: number;
  readonly decimals: number;
}

export function forceUnit(pieces: readonly { readonly force: number }[]): ForceUnit {
  const largest = Math.max(...pieces.map(({ force }) => Math.abs(force)));
  if (largest >= 1e5) return { symbol: 'kN', perNewton: 1e-3, decimals: largest >= 1e6 ? 0 : 1 };
  if (largest >= 1e3) return { symbol: 'kN', perNewton: 1e-3, decimals: 2 };
  return { symbol: 'N', perNewton: 1, decimals: 1 };
}

export function forceText(force: number, { symbol, perNewton, decimals }: ForceUnit, signed = false): string {
  return `${textOfSigned(force * perNewton, decimals, signed)}\u00a0${symbol}`;
}

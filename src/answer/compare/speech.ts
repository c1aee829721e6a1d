/** Numbers rounded for speech: the fewest digits that still say the same. */

/** `12 seconds` → `12 s`; under one second it says so. */
export function spokenSeconds(seconds: number): string {
  const size = Math.abs(seconds);
  return size < 0.5 ? 'less than 1 s' : `${Math.round(size)} s`;
}

/** A share as whole per cent from 1 % on, one decimal below. */
export function spokenShare(share: number): string {
  const percent = Math.abs(share) * 100;
  if (percent < 0.05) return 'less than 0.1 %';
  return `${percent < 0.95 ? percent.toFixed(1) : Math.round(percent)} %`;
}

/** Kilometres to the nearest whole one. */
export function spokenAltitude(metres: number): string {
  return metres < 500 ? 'less than 1 km' : `about ${Math.round(metres / 1000)} km`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** A length of time as a film maker reads it: `38.4 s`, `2 min 5 s`. */
export function secondsText(seconds: number): string {
  if (seconds < 60) return `${Number(seconds.toFixed(1))}\u00a0s`;
  const all = Math.round(seconds);
  const rest = all % 60;
  return `${Math.floor(all / 60)}\u00a0min${rest === 0 ? '' : ` ${rest}\u00a0s`}`;
}

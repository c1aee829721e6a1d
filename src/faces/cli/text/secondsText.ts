/** A length of time as a film maker reads it: `38.4 s`, `2 min 5 s`. */
export function secondsText(seconds: number): string {
  if (seconds < 60) return `${Number(seconds.toFixed(1))}\u00a0s`;
  const all = Math.round(seconds);
  const rest = all % 60;
  return `${Math.floor(all / 60)}\u00a0min${rest === 0 ? '' : ` ${rest}\u00a0s`}`;
}

/** A place in a film: `1:05`. */
export function clockText(seconds: number): string {
  const all = Math.floor(seconds);
  const [h, m, s] = [Math.floor(all / 3600), Math.floor(all / 60) % 60, all % 60];
  const two = (value: number): string => String(value).padStart(2, '0');
  return h > 0 ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
}

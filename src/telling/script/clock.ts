/** `0:42`, `3:05`, `1:02:30`, to the nearest second. @param seconds [s] */
export function clock(seconds: number): string {
  return placeInFilm(Math.round(seconds));
}

/** The same of a place in a film: the second that has begun. @param isLong with hours, even where there are none */
export function placeInFilm(seconds: number, isLong = seconds >= 3600): string {
  const all = Math.floor(seconds);
  const [hours, minutes, rest] = [Math.floor(all / 3600), Math.floor(all / 60), all % 60];
  return isLong ? `${hours}:${two(minutes % 60)}:${two(rest)}` : `${minutes}:${two(rest)}`;
}

const two = (value: number): string => String(value).padStart(2, '0');

/** How a movement starts and ends: share of the way by share of the time. */

export type Ease =
  /** At one speed, also in the first and the last frame. */
  | 'even'
  /** At one speed, with a short parabola at either end. */
  | 'soft ends'
  /** Faster towards the middle throughout. */
  | 'smooth';

export const EASES: readonly Ease[] = ['even', 'soft ends', 'smooth'];

/** [s] each soft end of a movement */
export const SOFT_END = 0.4;

/**
 * Share of the way at share `time` of the time, 0 to 1.
 *
 *   soft ends: speed v = 1/(1 − e); s = v t²/(2e) up to t = e, then v (t − e/2), and the first part mirrored at the end
 *   smooth:    s = t² (3 − 2t)
 *
 * @param softEnd e, length of a soft end as a share of the whole time; at most half of it
 */
export function eased(time: number, ease: Ease, softEnd: number): number {
  if (time <= 0) return 0;
  if (time >= 1) return 1;
  switch (ease) {
    case 'even':
      return time;
    case 'smooth':
      return time * time * (3 - 2 * time);
    case 'soft ends':
      return softEnds(time, Math.min(softEnd, 0.5));
  }
}

function softEnds(time: number, end: number): number {
  if (end <= 0) return time;
  const speed = 1 / (1 - end);
  if (time < end) return (speed * time * time) / (2 * end);
  const left = 1 - time;
  if (left < end) return 1 - (speed * left * left) / (2 * end);
  return speed * (time - end / 2);
}

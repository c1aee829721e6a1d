import type { Tint } from '../look/flowRamps.ts';

/** Distance in the log of pressure within which an isobar would run into the air's own edge: 0.09 decades. */
const NEAR_AMBIENT = 0.09;

/** Whether a line of equal value would run into the edge of the air; only pressure goes over into that of the air. */
export function nearAmbient(value: number, ambient: number, tint: Tint): boolean {
  return tint === 'pressure' && ambient > 0 && Math.abs(Math.log10(value / ambient)) < NEAR_AMBIENT;
}

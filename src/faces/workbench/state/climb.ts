/** The play button: runs the climb from the altitude shown, and stops it. */

import { signal } from '@preact/signals';
import { altitude, passAltitude, setAltitude } from './altitude.ts';
import { climbAltitude, climbSteps, timeOfAltitude } from './climbProfile.ts';
import { reducedMotion } from './view.ts';

export const climbing = signal(false);

/** Time from pad to vacuum [s]. */
export const climbSeconds = signal(24);
export const climbChoices = [6, 12, 24, 48] as const;

let stopRunning: (() => void) | null = null;

export function toggleClimb(): void {
  if (climbing.value) stopClimb();
  else startClimb();
}

/** Stops where the climb is; the altitude then is a whole tenth of a kilometre. */
export function stopClimb(): void {
  stopRunning?.();
  stopRunning = null;
  if (!climbing.value) return;
  climbing.value = false;
  setAltitude(altitude.value);
}

function startClimb(): void {
  climbing.value = true;
  stopRunning = reducedMotion.value ? runInSteps() : runSmoothly();
}

function runSmoothly(): () => void {
  const duration = climbSeconds.value;
  const from = timeOfAltitude(altitude.value, duration);
  let start: number | null = null;
  let frame = requestAnimationFrame(function step(now) {
    start ??= now;
    const time = from + (now - start) / 1000;
    passAltitude(climbAltitude(time, duration));
    if (time >= duration) return stopClimb();
    frame = requestAnimationFrame(step);
  });
  return () => cancelAnimationFrame(frame);
}

function runInSteps(): () => void {
  const here = altitude.value;
  let next = Number.isFinite(here) ? climbSteps.findIndex((step) => step > here) : 0;
  const timer = setInterval(step, 1000);
  function step() {
    const to = climbSteps[next];
    if (to === undefined) return stopClimb();
    passAltitude(to);
    next += 1;
    if (next === climbSteps.length) stopClimb();
  }
  step();
  return () => clearInterval(timer);
}

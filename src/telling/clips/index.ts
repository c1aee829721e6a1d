/** Figures over time: clips as pure functions of the frame number, and a meter for flashes. */

export { climbCut } from './climbCut.ts';
export { type Clip, clipOf, type Movement } from './clip.ts';
export { type ClipTiming, LONGEST_CLIP, timedFrames, USUAL_TIMING } from './clipTiming.ts';
export { type FlashMeter, type FlashVerdict, flashMeter } from './flashMeter.ts';
export { FRAME_RATES, type FrameRate, frameRateOf, secondsOfFrame } from './frameRate.ts';
export type { ClimbOptions, ClipOptions } from './options.ts';

/** Figures over time: clips as pure functions of the frame number, and a meter for flashes. */

export { type Clip, clipOf, type Movement } from './clip.ts';
export { type ClipFigure, type ClipKind, type ClipRequest, clipFigures, movementOf } from './clipKinds.ts';
export { type ClipTiming, LONGEST_CLIP, timedFrames, USUAL_TIMING } from './clipTiming.ts';
export { EASES, type Ease } from './ease.ts';
export { type FlashMeter, flashMeter } from './flashMeter.ts';
export type { FlashVerdict } from './flashVerdict.ts';
export { FRAME_RATES, type FrameRate, frameRateOf, secondsOfFrame } from './frameRate.ts';
export { type NamedClip, namedClips } from './namedClips.ts';
export { HIGHEST_OF_CLIP, notesOnWords, wordsOfClip } from './wordsOfClip.ts';

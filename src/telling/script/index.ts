/** A script with its numbers resolved, flagged, recorded (docs/script.md). */

export { clock, placeInFilm } from './clock.ts';
export { type HandNumber, handNumbers } from './handNumbers.ts';
export type * from './model.ts';
export { numbersTold } from './numbersTold.ts';
export { readScriptOf, sayable, tellScript } from './openScript.ts';
export { type ReadingScript, readingPage, readingView } from './readingView.ts';
export { type MovedNumber, movedSince, type NumbersRecord, readRecord, recordOf } from './record.ts';
export { resolvedMarkdown } from './resolvedMarkdown.ts';
export { expressionsOf, linesOf, resolvedNumbersIn, resolveScript } from './resolveScript.ts';
export { failingLines, type Judged, saidFlags } from './saidFlags.ts';
export type { AnswerLine, AnswerScene, ScriptAnswer } from './scriptAnswer.ts';
export { type FlagParts, scriptFlags } from './scriptFlags.ts';
export { type ScriptFound, type ScriptInHand, scriptFound } from './wholeAnswer.ts';

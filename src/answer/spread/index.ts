export { type DrawOptions, drawAsks } from './drawAsks.ts';
export type { Drawn, DrawnAlternative, DrawnAsk, Unknown } from './model.ts';
export { eachDraw, type Matter, mattersMost, type Share, shareOf, spanOf } from './shares.ts';
export { unknownInputs } from './unknowns.ts';

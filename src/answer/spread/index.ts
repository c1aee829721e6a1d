export { type DrawOptions, drawAsks } from './drawAsks.ts';
export { followed, plainNumbers } from './followed.ts';
export type { Drawn, DrawnAlternative, DrawnAsk, DrawnNumbers, Unknown } from './model.ts';
export { eachDraw, type Matter, mattersMost, type Share, shareOf, spanOf } from './shares.ts';
export { unknownInputs } from './unknowns.ts';

/** Results into words and pictures: figures as scenes, scenes as SVG, numbers as text. */
export { checkCaptions } from './captions/checkCaptions.ts';
export { chaptersToList, chaptersToWebVtt, cuesToSubRip, cuesToWebVtt } from './captions/files.ts';
export { makeChapters, type SceneTimes } from './captions/makeChapters.ts';
export { makeCues } from './captions/makeCues.ts';
export type * from './captions/model.ts';
export { CAPTION_RULES, type CaptionRules } from './captions/rules.ts';
export { CAUTION_SHORT } from './caution.ts';
export {
  type Clip,
  type ClipRequest,
  type ClipTiming,
  clipFigures,
  clipOf,
  FRAME_RATES,
  flashMeter,
  frameRateOf,
  movementOf,
  USUAL_TIMING,
} from './clips/index.ts';
export { cutMarkdown } from './cut/cutMarkdown.ts';
export type * from './cut/model.ts';
export { proposeCut } from './cut/proposeCut.ts';
export { pressureAlongWall } from './figures/figureAlongWall.ts';
export { figureAscent } from './figures/figureAscent.ts';
export { cutView } from './figures/figureCutView.ts';
export { figureMap } from './figures/figureMap.ts';
export { sizeOutlines } from './figures/figureOutlines.ts';
export { impulseOverAltitude, thrustOverAltitude } from './figures/figureOverAltitude.ts';
export { figureSweep } from './figures/figureSweep.ts';
export { temperaturesAlongWall } from './figures/figureTemperatures.ts';
export type { Altitude, FigureOptions } from './figures/options.ts';

export { type PackageFigure, packageFigures } from './figures/packageFigures.ts';
export type * from './film/model.ts';
export { readFilm } from './film/readFilm.ts';
export { themeCss } from './look/themeCss.ts';
export { COLOURS, type ColourToken, type Theme } from './look/tokens.ts';
export { numbersCsv } from './numbersTable.ts';
export type { Scene, SceneNode } from './scene/scene.ts';
export { type SvgOptions, sceneToSvg } from './scene/svg.ts';
export type * from './time/model.ts';
export { saidWords } from './time/saidWords.ts';
export { pacesOf, timeScript } from './time/timeScript.ts';

/** Results into words and pictures: figures as scenes, scenes as SVG, numbers as text. */
export { CAUTION_SHORT } from './caution.ts';
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
export { themeCss } from './look/themeCss.ts';
export { COLOURS, type ColourToken, type Theme } from './look/tokens.ts';
export { numbersCsv } from './numbersTable.ts';
export type { Scene, SceneNode } from './scene/scene.ts';
export { type SvgOptions, sceneToSvg } from './scene/svg.ts';

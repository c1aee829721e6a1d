/** Figures of a package drawn, each as SVG and PNG; those that need no sentence can be drawn while sentences are judged. */

import { setImmediate } from 'node:timers/promises';
import type { StudyAnswer } from '../../answer/model.ts';
import { drawnStyles } from '../../telling/figures/drawnEngines.ts';
import { type FigureSubject, figureKinds } from '../../telling/figures/figureKinds.ts';
import type { FigureKind } from '../../telling/figures/kind.ts';
import {
  type PackageFigure,
  type PackageFigures,
  packageFigures,
} from '../../telling/figures/packageFigures.ts';
import type { FigureFormat } from '../../telling/look/formats.ts';
import { sceneToSvg } from '../../telling/scene/svg.ts';
import type { PictureMakers } from './pictureMakers.ts';

export interface DrawnFigure {
  readonly figure: PackageFigure;
  readonly svg: string;
  readonly png: Promise<Buffer>;
}

export interface DrawnFigures {
  readonly drawn: readonly DrawnFigure[];
  readonly tables: PackageFigures['tables'];
}

/** The pictures are asked for, not waited for; between two figures others have their turn. */
async function drawFigures(
  groups: Iterable<PackageFigures>,
  { caution }: Pick<StudyAnswer, 'caution'>,
  makers: PictureMakers,
  signal?: AbortSignal,
): Promise<DrawnFigures> {
  const drawn: DrawnFigure[] = [];
  const tables: PackageFigures['tables'][number][] = [];
  for (const group of groups) {
    signal?.throwIfAborted();
    for (const figure of group.figures) {
      const { scene } = figure;
      const svg = sceneToSvg(scene);
      const words = { Title: scene.title, Description: scene.description, Disclaimer: caution };
      const png = makers.make(svg, scene.width, words);
      // Told when it is waited for, which after a cancel is never.
      png.catch(() => undefined);
      drawn.push({ figure, svg, png });
    }
    tables.push(...group.tables);
    await setImmediate();
  }
  return { drawn, tables };
}

export interface DrawSetting {
  readonly answer: StudyAnswer;
  readonly shapes: readonly FigureFormat[];
  readonly makers: PictureMakers;
  readonly signal?: AbortSignal;
}

/** All that need no sentence. */
export const drawnWithout = (setting: DrawSetting, subject: Omit<FigureSubject, 'sentences'>) =>
  drawnOf(setting, figureKinds(subject));

/** The cards of the sentences. */
export const drawnCards = (
  setting: DrawSetting,
  { answer, curves, sentences = [] }: Pick<FigureSubject, 'answer' | 'curves' | 'sentences'>,
) =>
  drawnOf(
    setting,
    figureKinds({ answer, curves, sentences }).filter(({ name }) => name.startsWith('sentence-')),
  );

const drawnOf = ({ answer, shapes, makers, signal }: DrawSetting, kinds: readonly FigureKind[]) =>
  drawFigures(packageFigures(kinds, shapes, drawnStyles(answer)), answer, makers, signal);

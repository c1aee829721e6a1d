/** The figures that go into a package, each in every shape, with the table of its numbers. */

import type { ConditionRow } from '../../answer/model.ts';
import { csvOf } from '../csvCell.ts';
import type { FigureFormat } from '../look/formats.ts';
import type { Scene } from '../scene/scene.ts';
import { type FigureSubject, figureKinds } from './figureKinds.ts';
import type { FigureOptions } from './options.ts';

export interface PackageFigure {
  /** File name without its ending. */ readonly name: string;
  readonly scene: Scene;
  /** True for those that stand in the page; the others are the same in another shape, or stand there as text. */
  readonly inPage: boolean;
  /** File name without its ending of the table of its numbers. */ readonly table?: string;
}

export interface FigureTableFile {
  /** File name without its ending. */ readonly name: string;
  readonly csv: string;
}

export interface PackageFigures {
  readonly figures: readonly PackageFigure[];
  readonly tables: readonly FigureTableFile[];
}

export type Curves = Readonly<Record<string, readonly ConditionRow[]>>;

/** As it stands in the names of files. */
export const shapeWord = (size: FigureFormat): string => size.replace(':', 'x');

/** The page says these in words and tables of its own. */
const SAID_IN_PAGE = /^(sentence|need|worth)-?/;

export function packageFigures(
  subject: FigureSubject,
  shapes: readonly FigureFormat[],
  styles?: FigureOptions['styles'],
): PackageFigures {
  const figures: PackageFigure[] = [];
  const tables: FigureTableFile[] = [];
  for (const kind of figureKinds(subject)) {
    const optionsFor = (size: FigureFormat): FigureOptions => ({
      size,
      theme: size === 'print' ? 'print' : 'light',
      ...(styles === undefined ? {} : { styles }),
    });
    for (const size of shapes) {
      const scene = kind.draw(optionsFor(size));
      if (scene === null) continue;
      const inPage = size === shapes[0] && !SAID_IN_PAGE.test(kind.name);
      figures.push({ name: `${kind.name}-${shapeWord(size)}`, scene, inPage, table: kind.name });
      if (size === shapes[0]) tables.push({ name: kind.name, csv: kind.csv(optionsFor(size)) });
    }
  }
  return { figures, tables };
}

/** Title and description of each figure, for those who put it into a page of their own. */
export function altTexts(figures: readonly PackageFigure[]): string {
  return csvOf([
    ['figure', 'title', 'alt text'],
    ...figures.map(({ name, scene }) => [name, scene.title, scene.description]),
  ]);
}

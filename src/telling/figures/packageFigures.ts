/** The figures that go into a package, each in every shape, with the table of its numbers. */

import type { ConditionRow } from '../../answer/model.ts';
import { csvOf } from '../csvCell.ts';
import type { FigureFormat } from '../look/formats.ts';
import type { Scene } from '../scene/scene.ts';
import type { FigureKind } from './kind.ts';
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

/** A group for each kind of figure, drawn when it is taken. */
export function* packageFigures(
  kinds: readonly FigureKind[],
  shapes: readonly FigureFormat[],
  styles?: FigureOptions['styles'],
): Generator<PackageFigures> {
  for (const kind of kinds) {
    const optionsFor = (size: FigureFormat): FigureOptions => ({
      size,
      theme: size === 'print' ? 'print' : 'light',
      ...(styles === undefined ? {} : { styles }),
    });
    const figures = shapes.flatMap((size, i): readonly PackageFigure[] => {
      const scene = kind.draw(optionsFor(size));
      if (scene === null) return [];
      const inPage = i === 0 && !SAID_IN_PAGE.test(kind.name);
      return [{ name: `${kind.name}-${shapeWord(size)}`, scene, inPage, table: kind.name }];
    });
    const [first] = shapes;
    if (first === undefined || figures.length === 0) continue;
    yield { figures, tables: [{ name: kind.name, csv: kind.csv(optionsFor(first)) }] };
  }
}

/** Title and description of each figure, for those who put it into a page of their own. */
export function altTexts(figures: readonly PackageFigure[]): string {
  return csvOf([
    ['figure', 'title', 'alt text'],
    ...figures.map(({ name, scene }) => [name, scene.title, scene.description]),
  ]);
}

/** Models of what is drawn that are none of the engines’ own: pages in docs/methods. */
export function modelsDrawn(figures: readonly PackageFigure[]): readonly string[] {
  return figures.some(({ name }) => name.startsWith('flow-')) ? ['flow-field'] : [];
}

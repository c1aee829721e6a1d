/** A kind of figure: how it is drawn, and the table of what it draws. */

import type { Scene } from '../scene/scene.ts';
import type { FigureOptions } from './options.ts';

export interface FigureKind {
  /** As asked for, and as the file is called. */ readonly name: string;
  /** One line: what it shows. */ readonly about: string;
  /** It changes with the altitude, and shows this one [m] unless told. */ readonly altitude?:
    | number
    | 'vacuum';
  /** Null where the study has nothing to draw in it. */
  readonly draw: (options: FigureOptions) => Scene | null;
  /** Comma-separated values of what is drawn; the same numbers in the same order in every shape. */
  readonly csv: (options: FigureOptions) => string;
}

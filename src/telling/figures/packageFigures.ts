/** The figures that go into a package: name of the file, and the scene. */

import type { ConditionRow, StudyAnswer } from '../../answer/model.ts';
import type { FigureFormat } from '../look/formats.ts';
import type { Scene } from '../scene/scene.ts';
import { pressureAlongWall } from './figureAlongWall.ts';
import { figureAscent } from './figureAscent.ts';
import { cutView } from './figureCutView.ts';
import { sizeOutlines } from './figureOutlines.ts';
import { impulseOverAltitude, thrustOverAltitude } from './figureOverAltitude.ts';
import { temperaturesAlongWall } from './figureTemperatures.ts';
import type { FigureOptions } from './options.ts';

export interface PackageFigure {
  /** File name without its ending. */ readonly name: string;
  readonly scene: Scene;
  /** True for those that stand in the page; the others are the same in another shape. */ readonly inPage: boolean;
  /** File name without its ending of the table of its numbers. */ readonly table?: string;
}

export type Curves = Readonly<Record<string, readonly ConditionRow[]>>;

export const shapes: readonly FigureFormat[] = ['16:9', '9:16', '1:1'];

export function packageFigures(answer: StudyAnswer, curves: Curves): readonly PackageFigure[] {
  const kinds: readonly [string, (options: FigureOptions) => Scene | null, Partial<FigureOptions>][] = [
    ['specific-impulse', (options) => impulseOverAltitude(answer, options), {}],
    ['thrust', (options) => thrustOverAltitude(answer, options), {}],
    ['cut-at-sea-level', (options) => cutView(answer, options), { altitude: 0 }],
    ['cut-in-vacuum', (options) => cutView(answer, options), { altitude: 'vacuum' }],
    ['pressure-along-wall', (options) => pressureAlongWall(answer, options), { altitude: 0 }],
    ['temperatures-along-wall', (options) => temperaturesAlongWall(answer, options), {}],
    ...answer.vehicles.map((vehicle): [string, (options: FigureOptions) => Scene | null, object] => [
      `ascent-${vehicle.id}`,
      (options) => figureAscent(vehicle, answer, options),
      {},
    ]),
    ['outlines', (options) => sizeOutlines(answer, options), {}],
  ];
  return kinds.flatMap(([name, draw, own]) =>
    shapes.flatMap((size) => {
      const scene = draw({ size, theme: 'light', curves, ...own });
      if (scene === null) return [];
      return [{ name: `${name}-${size.replace(':', 'x')}`, scene, inPage: size === '16:9' }];
    }),
  );
}

/** The sweeps and maps of a study as they go into a package: pictures in every shape, and a table each. */

import type { Sweep, SweepMap } from '../../answer/sweeps/model.ts';
import type { Scene } from '../scene/scene.ts';
import { mapCsv, sweepCsv } from '../sweepTable.ts';
import { figureMap } from './figureMap.ts';
import { figureSweep } from './figureSweep.ts';
import type { FigureOptions } from './options.ts';
import { type PackageFigure, shapes } from './packageFigures.ts';

/** What was found of a study's sweeps and maps. */
export interface Swept {
  readonly sweeps: readonly Sweep[];
  readonly maps: readonly SweepMap[];
}

export const NOTHING_SWEPT: Swept = { sweeps: [], maps: [] };

export interface SweptTable {
  /** File name without its ending. */ readonly name: string;
  readonly csv: string;
}

export function sweptFigures(
  { sweeps, maps }: Swept,
  styles: FigureOptions['styles'],
): readonly PackageFigure[] {
  const kinds: readonly [string, (options: FigureOptions) => Scene][] = [
    ...sweeps.map((sweep): [string, (options: FigureOptions) => Scene] => [
      sweepName(sweep),
      (options) => figureSweep(sweep, options),
    ]),
    ...maps.map((map): [string, (options: FigureOptions) => Scene] => [
      mapName(map),
      (options) => figureMap(map, options),
    ]),
  ];
  return kinds.flatMap(([name, draw]) =>
    shapes.map((size) => ({
      name: `${name}-${size.replace(':', 'x')}`,
      scene: draw({ size, theme: 'light', ...(styles === undefined ? {} : { styles }) }),
      inPage: size === '16:9',
      table: name,
    })),
  );
}

export function sweptTables({ sweeps, maps }: Swept): readonly SweptTable[] {
  return [
    ...sweeps.map((sweep) => ({ name: sweepName(sweep), csv: sweepCsv(sweep) })),
    ...maps.map((map) => ({ name: mapName(map), csv: mapCsv(map) })),
  ];
}

const sweepName = ({ request }: Sweep): string => `sweep-${request.id ?? 'sweep'}`;
const mapName = ({ request }: SweepMap): string => `map-${request.id ?? 'map'}`;

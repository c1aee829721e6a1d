/** Where along its wall the gas of an engine may let go: a hatched band from the earliest to the latest criterion. */

import type { RowSeparation } from '../../answer/model.ts';
import type { Box } from '../scene/box.ts';
import { plainText } from '../scene/safeText.ts';
import { group, type SceneNode } from '../scene/scene.ts';
import { conditionAt, rowsOf } from './conditions.ts';
import type { DrawnEngine } from './drawnEngines.ts';
import type { FigureOptions } from './options.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { hatchOf } from './sweepCurves.ts';

export interface LettingGo {
  readonly drawn: DrawnEngine;
  readonly separation: RowSeparation;
}

/** Engines of which some criterion says that the gas lets go at this pressure of the air [Pa]. */
export function lettingGo(
  engines: readonly DrawnEngine[],
  ambient: number,
  options: FigureOptions,
): readonly LettingGo[] {
  return engines.flatMap((drawn) => {
    const { separation } = conditionAt(rowsOf(drawn.engine, options), ambient);
    return separation === undefined || separation.lettingGo === 0 ? [] : [{ drawn, separation }];
  });
}

/** At least as wide as a line, so that criteria that agree are seen. */
export function separationBands(
  all: readonly LettingGo[],
  plot: Box,
  x: (axial: number) => number,
  { line }: PanelStyle,
): readonly SceneNode[] {
  return all.map(({ drawn: { style }, separation: { earliest, latest } }) => {
    const [from, to] = [x(earliest.axial), x(latest.axial)];
    return group('separation', [
      {
        kind: 'rect',
        x: from,
        y: plot.y,
        width: Math.max(to - from, line.leader),
        height: plot.height,
        fill: hatchOf(style.colour, style.hatchAngle, line),
        stroke: style.colour,
        strokeWidth: line.grid / 2,
      },
    ]);
  });
}

/** For the foot; empty where no gas lets go. */
export function separationBandWords(all: readonly LettingGo[]): readonly string[] {
  return all.map(
    ({ drawn: { engine }, separation: { lettingGo: some, counted } }) =>
      `Hatched: where the gas leaves the wall of ${plainText(engine.name)}, by ${some} of ${counted} criteria.`,
  );
}

/** Pressure along the wall, injector face to lip, on a logarithmic scale, with the air outside. */

import type { StudyAnswer } from '../../answer/model.ts';
import { layoutOf } from '../look/formats.ts';
import { formatPressure } from '../numbers/formatNumber.ts';
import type { Box } from '../scene/box.ts';
import type { Scene, SceneNode } from '../scene/scene.ts';
import { ambientAt, conditionAt, rowsOf } from './conditions.ts';
import { type DrawnEngine, drawnEngines } from './drawnEngines.ts';
import { footOf, lipPressure, wallFinding, whereWords } from './findings.ts';
import { frame } from './frame.ts';
import { measuredWords, seriesFor } from './measuredMarks.ts';
import type { FigureOptions } from './options.ts';
import { lettingGo, separationBandWords } from './separationBands.ts';
import { endWord } from './wallLabels.ts';
import { isOnWall, wallPanel } from './wallPanel.ts';

/** What stands still while the altitude moves, where the figure is a part of a clip. */
export interface StillWall {
  readonly title: string;
  readonly subtitle: string;
  /** In the foot, of what is hatched. */ readonly hatched: string;
  /** [Pa] lowest on the scale */ readonly low: number;
  /** What stands above the plot, and the room that it takes [px]. */ readonly above: {
    readonly height: number;
    readonly nodesAt: (x: number, y: number) => readonly SceneNode[];
  };
}

/** [Pa] the lowest on any wall at the altitude of the options */
export function lowestOnWalls(answer: StudyAnswer, options: FigureOptions): number {
  const ambient = ambientAt(options.altitude ?? 0);
  const engines = drawnEngines(answer, 4).engines.map((one) => withWallHere(one, ambient, options));
  const pressures = engines.flatMap(({ engine }) => engine.wall.map(({ pressure }) => pressure));
  return Math.min(...pressures.filter((pressure) => pressure > 0));
}

export function pressureAlongWall(answer: StudyAnswer, options: FigureOptions, still?: StillWall): Scene {
  const layout = layoutOf(options.size);
  const { engines: drawn, leftOut } = drawnEngines(answer, 4);
  const altitude = options.altitude ?? 0;
  const ambient = ambientAt(altitude);
  const engines = drawn.map((one) => withWallHere(one, ambient, options));
  const measured = seriesFor(options.measured, engines, 'wall.pressure', ['wall.axial']);
  const onPlug = engines.some(({ engine }) => engine.contour.plug !== undefined);
  const loose = lettingGo(engines, ambient, options);
  const title = options.title ?? still?.title ?? wallFinding(engines);
  const around = frame(
    layout,
    {
      title,
      subtitle:
        still?.subtitle ??
        `Pressure on the wall from the injector face to the lip, the gas filling the nozzle${onPlug ? `; on a plug, ${whereWords(altitude).replace(/^(At|In)/, (word: string) => word.toLowerCase())}` : ''}`,
      foot: footOf(
        answer,
        engines,
        leftOut,
        [
          ...(still === undefined ? separationBandWords(loose) : [still.hatched]),
          ...measuredWords(measured, isOnWall(engines)),
        ],
        ['losses', 'nozzle-thrust', 'nozzle-separation'],
      ),
    },
    options,
  );
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: describe(answer, engines, ambient),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [
      ...wallPanel(engines, ambient, lowered(around.content, still?.above.height ?? 0), layout, {
        measured,
        loose,
        low: still?.low ?? null,
      }),
      ...around.nodes,
      ...(still?.above.nodesAt(around.content.x, around.content.y) ?? []),
    ],
  };
}

const lowered = (box: Box, above: number): Box => ({ ...box, y: box.y + above, height: box.height - above });

/** An engine whose plug feels the air, with the pressure on its wall as it is here: the first of each line across its gas. */
function withWallHere(drawn: DrawnEngine, ambient: number, options: FigureOptions): DrawnEngine {
  const { engine } = drawn;
  if (engine.contour.plug === undefined) return drawn;
  const { field } = conditionAt(rowsOf(engine, options), ambient);
  if (field === undefined) return drawn;
  const ahead = engine.wall.filter((_, i) => engine.contour.plug?.wall[i]?.part !== 'nozzle');
  const end = engine.wall[engine.wall.length - 1]!;
  const along = field.map(([onWall]) => ({ ...end, ...onWall!, wallPressure: onWall!.pressure }));
  return { ...drawn, engine: { ...engine, wall: [...ahead, ...along] } };
}

function describe(answer: StudyAnswer, engines: readonly DrawnEngine[], ambient: number): string {
  const parts = engines.map(
    ({ engine }) =>
      `${engine.name}: ${formatPressure(engine.chamber.pressure)} in the chamber, ${formatPressure(lipPressure(engine))} on the wall at the ${endWord(engine)}.`,
  );
  return `Pressure on a logarithmic scale over the distance from the throat. Air outside ${formatPressure(ambient)}. ${parts.join(' ')} ${answer.caution}`;
}

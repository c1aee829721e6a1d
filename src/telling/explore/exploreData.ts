/** What the explorable page moves: pictures, numbers and spans at every stop from the pad to vacuum. */

import type { ConditionRow, EngineAnswer, StudyAnswer } from '../../answer/model.ts';
import { caseWords } from '../../answer/separationWords.ts';
import { cutView } from '../figures/figureCutView.ts';
import { impulseOverAltitude, thrustOverAltitude } from '../figures/figureOverAltitude.ts';
import type { FigureOptions } from '../figures/options.ts';
import type { Curves } from '../figures/packageFigures.ts';
import { formatAltitude, formatPressure, formatValue } from '../numbers/formatNumber.ts';
import { plainText } from '../scene/safeText.ts';
import type { Scene } from '../scene/scene.ts';
import { sceneToSvg } from '../scene/svg.ts';
import { type Frames, framesOf } from './frames.ts';

/** Quantities of the table that follow the altitude. */
export const LIVE = ['specificImpulse', 'thrust', 'thrustIfFull', 'exitPressure'] as const;

export interface ExploreData {
  /** `12 km, 0.19 bar` */ readonly stops: readonly string[];
  readonly figures: Readonly<Record<string, Frames>>;
  /** Cells of the table, engine by engine: the flow, then {@link LIVE}. */
  readonly rows: readonly (readonly string[])[];
  /** By `stop cell`: 95 % of what is not known. */ readonly spans: Readonly<Record<string, string>>;
}

export const CELLS = LIVE.length + 1;

/** @param step of the rows of the curves that are shown: 1 all, 2 every other one */
export function exploreData(answer: StudyAnswer, curves: Curves, step: number): ExploreData {
  const engines = Object.values(answer.engines);
  const all = curves[engines[0]!.id]!;
  const shown = [...all.keys()].filter((i) => i % step === 0 || i === all.length - 1);
  const draw = (of: (answer: StudyAnswer, options: FigureOptions) => Scene, prefix: string): Frames =>
    framesOf(
      shown.map((i) => {
        const altitude = all[i]!.altitude ?? 'vacuum';
        const scene = of(answer, { size: '1:1', theme: 'light', curves, altitude });
        return sceneToSvg(scene, { colours: 'variables', idPrefix: prefix, fixedSize: false });
      }),
    );
  const rows = shown.map((i) => engines.map(({ id }) => curves[id]![i]!));
  const spans: Record<string, string> = {};
  rows.forEach((row, stop) => {
    row.forEach((at, engine) => {
      LIVE.forEach((name, cell) => {
        const band = bandAt(engines[engine]!, at, name);
        if (band !== null) spans[`${stop} ${engine * CELLS + cell + 1}`] = band;
      });
    });
  });
  return {
    stops: rows.map(([first]) => stopWords(first!)),
    figures: {
      cut: draw(cutView, 'cut'),
      impulse: draw(impulseOverAltitude, 'impulse'),
      thrust: draw(thrustOverAltitude, 'thrust'),
    },
    rows: rows.map((row) => row.flatMap((at, i) => cellsOf(engines[i]!, at))),
    spans,
  };
}

function stopWords({ altitude, ambientPressure }: ConditionRow): string {
  const place = altitude === null ? 'vacuum' : altitude === 0 ? 'pad' : formatAltitude(altitude);
  return `${place}, ${formatPressure(ambientPressure)}`;
}

function cellsOf(engine: EngineAnswer, row: ConditionRow): readonly string[] {
  return [
    flowWords(engine, row),
    ...LIVE.map((name) => {
      const value = row[name];
      return value === null ? 'no number' : formatValue(name, value);
    }),
  ];
}

function flowWords(engine: EngineAnswer, { separation, flow }: ConditionRow): string {
  if (separation !== undefined) return caseWords[separation.case];
  if (flow.state !== 'full') return flow.state;
  return engine.contour.plug === undefined ? 'fills the nozzle' : 'stays on the plug';
}

/** The answer has spans at its own altitudes and in vacuum. */
function bandAt(engine: EngineAnswer, row: ConditionRow, name: string): string | null {
  const at = engine.altitudes.findIndex(({ altitude }) => altitude === row.altitude);
  const path = row.altitude === null ? `vacuum.${name}` : `altitudes[${at}].${name}`;
  const band = engine.bands[path];
  if (band === undefined) return null;
  return `${formatValue(name, band.low)} to ${formatValue(name, band.high)} (${plainText(band.from)})`;
}

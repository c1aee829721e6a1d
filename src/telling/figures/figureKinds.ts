/** Every figure that a study has, each with its name: those of the engines, of vehicles, sweeps, needs and sentences. */

import type { FlowField } from '../../answer/flow/index.ts';
import type { MeasuredSeries } from '../../answer/measured/model.ts';
import type { ConditionRow, StudyAnswer } from '../../answer/model.ts';
import { type Need, needWords } from '../../answer/needs/index.ts';
import type { CheckedSentence } from '../../answer/sentences/model.ts';
import type { VehicleWorth, WorthTable } from '../../answer/worth/index.ts';
import { mapCsv, sweepCsv } from '../sweepTable.ts';
import { pressureAlongWall } from './figureAlongWall.ts';
import { figureAscent } from './figureAscent.ts';
import { cutView } from './figureCutView.ts';
import { exchangeFigureRows, figureExchange } from './figureExchange.ts';
import { figureFlightLosses, flightLossRows } from './figureFlightLosses.ts';
import { figureHeat, heatRows } from './figureHeat.ts';
import { figureLosses, lossRows } from './figureLosses.ts';
import { figureMap } from './figureMap.ts';
import { sizeOutlines } from './figureOutlines.ts';
import { impulseOverAltitude, thrustOverAltitude } from './figureOverAltitude.ts';
import { figurePush, pushRows } from './figurePush.ts';
import { figureSweep } from './figureSweep.ts';
import { figureCsv } from './figureTable.ts';
import { temperaturesAlongWall } from './figureTemperatures.ts';
import { figureVerdict, verdictRows } from './figureVerdict.ts';
import { figureWorth, worthFigureRows } from './figureWorth.ts';
import { flowKinds } from './flowKinds.ts';
import type { FigureKind } from './kind.ts';
import type { FigureOptions } from './options.ts';
import { NOTHING_SWEPT, type Swept } from './sweptFigures.ts';
import {
  ascentRows,
  cutRows,
  outlineRows,
  overAltitudeRows,
  temperatureRows,
  wallRows,
} from './tableRows.ts';

/** What was found of a study; what is absent has no figures. */
export interface FigureSubject {
  readonly answer: StudyAnswer;
  /** Rows over altitude by engine id, finer than in the answer. */
  readonly curves: Readonly<Record<string, readonly ConditionRow[]>>;
  readonly swept?: Swept;
  readonly sentences?: readonly CheckedSentence[];
  readonly worth?: WorthTable | null;
  readonly vehicleWorths?: readonly VehicleWorth[];
  readonly needs?: readonly Need[];
  /** Whole flows that are there. */ readonly flows?: readonly FlowField[];
  /** Names of their figures that are wanted; absent: all. */ readonly flowFigures?: readonly string[];
  /** Measured points beside what is computed. */ readonly measured?: readonly MeasuredSeries[];
}

export function figureKinds(subject: FigureSubject): readonly FigureKind[] {
  const kinds = [
    ...engineKinds(subject),
    ...flowKinds(subject.answer, subject.flows ?? [], subject.flowFigures),
    ...vehicleKinds(subject),
    ...askedKinds(subject),
  ];
  const { curves, measured } = subject;
  return kinds.map((kind) => {
    const given = (options: FigureOptions): FigureOptions => ({
      curves,
      ...(measured === undefined ? {} : { measured }),
      ...(kind.altitude === undefined ? {} : { altitude: kind.altitude }),
      ...options,
    });
    return {
      ...kind,
      draw: (options) => kind.draw(given(options)),
      csv: (options) => kind.csv(given(options)),
    };
  });
}

function engineKinds({ answer, worth }: FigureSubject): readonly FigureKind[] {
  if (Object.keys(answer.engines).length === 0) return [];
  return [
    {
      name: 'specific-impulse',
      about: 'specific impulse from the pad to vacuum',
      draw: (options) => impulseOverAltitude(answer, options),
      csv: (options) => figureCsv(overAltitudeRows(answer, 'specificImpulse', options)),
    },
    {
      name: 'thrust',
      about: 'thrust from the pad to vacuum',
      draw: (options) => thrustOverAltitude(answer, options),
      csv: (options) => figureCsv(overAltitudeRows(answer, 'thrust', options)),
    },
    ...(['sea-level', 'vacuum'] as const).map(
      (where): FigureKind => ({
        name: where === 'vacuum' ? 'cut-in-vacuum' : 'cut-at-sea-level',
        about: `engines cut open, pressure as colour, ${where === 'vacuum' ? 'in vacuum' : 'at sea level'} or where asked`,
        altitude: where === 'vacuum' ? 'vacuum' : 0,
        draw: (options) => cutView(answer, options),
        csv: (options) => figureCsv(cutRows(answer, options)),
      }),
    ),
    ...(['mach', 'temperature'] as const).map(
      (tint): FigureKind => ({
        name: `cut-${tint === 'mach' ? 'mach-number' : tint}`,
        about: `engines cut open, ${tint === 'mach' ? 'Mach number' : 'temperature'} as colour, in vacuum or where asked`,
        altitude: 'vacuum',
        draw: (options) => cutView(answer, { tint, ...options }),
        csv: (options) => figureCsv(cutRows(answer, options)),
      }),
    ),
    {
      name: 'push',
      about: 'where the push acts: an arrow a surface, and the running sum',
      altitude: 0,
      draw: (options) => figurePush(answer, options),
      csv: (options) => figureCsv(pushRows(answer, options)),
    },
    {
      name: 'pressure-along-wall',
      about: 'pressure on the wall from chamber to lip, with the air outside',
      altitude: 0,
      draw: (options) => pressureAlongWall(answer, options),
      csv: () => figureCsv(wallRows(answer)),
    },
    {
      name: 'heat-along-wall',
      about: 'heat flux along the hottest wall by both models',
      draw: (options) => figureHeat(answer, options),
      csv: () => figureCsv(heatRows(answer)),
    },
    {
      name: 'temperatures-along-wall',
      about: 'gas, both faces of the wall and coolant of a cooled engine',
      draw: (options) => temperaturesAlongWall(answer, options),
      csv: () => figureCsv(temperatureRows(answer)),
    },
    {
      name: 'losses',
      about: 'from the ideal to the delivered specific impulse, item by item',
      draw: (options) => figureLosses(answer, options),
      csv: () => figureCsv(lossRows(answer)),
    },
    {
      name: 'outlines',
      about: 'outlines to one scale beside a person',
      draw: (options) => sizeOutlines(answer, options),
      csv: () => figureCsv(outlineRows(answer)),
    },
    ...(worth == null
      ? []
      : [
          {
            name: 'worth',
            about: 'what the second engine gains and what it costs, with bands',
            draw: (options: FigureOptions) => figureWorth(worth, answer, options),
            csv: () => figureCsv(worthFigureRows(worth, answer)),
          },
        ]),
  ];
}

function vehicleKinds({ answer, vehicleWorths = [] }: FigureSubject): readonly FigureKind[] {
  return [
    ...answer.vehicles.flatMap((vehicle): readonly FigureKind[] => [
      {
        name: `ascent-${vehicle.id}`,
        about: `${vehicle.name} on its way up`,
        draw: (options) => figureAscent(vehicle, answer, options),
        csv: () => figureCsv(ascentRows(vehicle)),
      },
      {
        name: `velocity-losses-${vehicle.id}`,
        about: `where the velocity of ${vehicle.name} went`,
        draw: (options) => figureFlightLosses(vehicle, answer, options),
        csv: () => figureCsv(flightLossRows(vehicle)),
      },
    ]),
    ...vehicleWorths.map(
      (worth): FigureKind => ({
        name: `exchange-rates-${worth.vehicle}`,
        about: `what a little more of one thing is worth to ${worth.name}`,
        draw: (options) => figureExchange(worth, answer, options),
        csv: () => figureCsv(exchangeFigureRows(worth)),
      }),
    ),
  ];
}

/** What the study itself asks for: sweeps, maps, needs, sentences. */
function askedKinds({
  swept = NOTHING_SWEPT,
  needs = [],
  sentences = [],
}: FigureSubject): readonly FigureKind[] {
  return [
    ...swept.sweeps.map(
      (sweep): FigureKind => ({
        name: `sweep-${sweep.request.id ?? 'sweep'}`,
        about: sweep.request.title ?? 'curves over one input',
        draw: (options) => figureSweep(sweep, options),
        csv: () => sweepCsv(sweep),
      }),
    ),
    ...swept.maps.map(
      (map): FigureKind => ({
        name: `map-${map.request.id ?? 'map'}`,
        about: map.request.title ?? 'one number over two inputs',
        draw: (options) => figureMap(map, options),
        csv: () => mapCsv(map),
      }),
    ),
    ...needs.map(
      (need): FigureKind => ({
        name: `need-${need.request.id ?? 'need'}`,
        about: need.request.title ?? `what it would take: ${need.request.so}`,
        draw: (options) => figureSweep(need.sweep, { title: needTitle(need), ...options }),
        csv: () => sweepCsv(need.sweep),
      }),
    ),
    ...sentences.map(
      (sentence): FigureKind => ({
        name: `sentence-${sentence.id}`,
        about: sentence.say,
        draw: (options) => figureVerdict(sentence, options),
        csv: () => figureCsv(verdictRows(sentence)),
      }),
    ),
  ];
}

/** The question if it has one, and the first of what was found, in short. */
function needTitle(need: Need): string {
  const { title } = need.request;
  const found = (needWords(need)[0] ?? '').replace(' with all else that is not known', '');
  if (title !== null) return `${title.replace(/[.?!]$/, '')}? ${found.split(': ')[0]!.replace(/\.?$/, '.')}`;
  return found
    .replace(/^It is so where (.*?): /, 'Where $1, ')
    .replace(
      /the ([a-z ]+) of (.+?)(?: in vacuum)? is (at least|at most) the \1 of /,
      'the $1 of $2 is $3 that of ',
    );
}

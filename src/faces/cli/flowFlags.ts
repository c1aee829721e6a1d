/** What the options of `plumeline flow` ask for. */

import { extname } from 'node:path';
import {
  FINENESSES,
  type Fineness,
  FLOW_BITS,
  type FlowBits,
  type FlowPlace,
  SHOWN,
  type Shown,
  type TimedChoices,
} from '../../answer/flow/index.ts';
import { airAtGeometricAltitude } from '../../physics/air/index.ts';
import { parseQuantity } from '../../study/index.ts';
import { quote } from '../../study/report.ts';
import type { OverFlow } from '../../telling/figures/flowPanel.ts';
import { USUAL_STREAMLINES } from '../../telling/figures/flowStreamlines.ts';
import type { FigureOptions } from '../../telling/figures/options.ts';
import { BadInput } from './badInput.ts';
import { choiceFrom } from './choiceFlag.ts';
import { altitudeList, ambientList } from './conditionLists.ts';
import { timedFrom } from './flowTimeFlags.ts';
import { themeFrom, widthFrom } from './pictureFlags.ts';
import { figureSizeFrom } from './sizeFlag.ts';
import { bad } from './sweepFlags.ts';

export interface FlowFlags {
  readonly engine?: string;
  readonly altitude?: string;
  readonly ambient?: string;
  readonly flightSpeed?: string;
  readonly fineness?: string;
  readonly show?: string;
  readonly streamlines?: string | true;
  readonly out?: string;
  readonly size?: string;
  readonly theme?: string;
  readonly png?: string;
  readonly fonts?: true;
  readonly event?: string;
  readonly ramp?: string;
  readonly until?: string;
  readonly frames?: string;
  readonly floats?: string;
  readonly threads?: string;
  readonly fresh?: true;
  readonly json?: true;
}

export interface FlowChoices {
  readonly places: readonly FlowPlace[];
  readonly fineness: Fineness;
  readonly shown: Shown;
  readonly out: string | null;
  readonly options: FigureOptions;
  /** What lies over the field. */ readonly over: OverFlow;
  /** [px] of a PNG; null: as it is laid out */ readonly width: number | null;
  /** Fonts inside an SVG. */ readonly fonts: boolean;
  readonly bits: FlowBits;
  /** That take each step together; absent: as many as the machine has cores, within bounds. */ readonly threads?: number;
  /** Of a flow through time; null: at rest. */ readonly timed: Pick<
    TimedChoices,
    'event' | 'ramp' | 'until' | 'frames'
  > | null;
  /** Nothing is taken from the cache. */ readonly fresh: boolean;
}

/** From the pad to where a first stage hands over. [m] */
const USUAL = [0, 5_000, 10_000, 15_000, 20_000, 30_000];
/** Where an event is shown unless said otherwise. [m] */
const PAD = [0];

/** @throws BadInput with what to mend */
export function flowChoices(flags: FlowFlags): FlowChoices {
  const { altitude, ambient, fineness, show, streamlines, out, size, theme, png, floats, threads, fresh } =
    flags;
  const usual = flags.event === undefined ? USUAL : PAD;
  const at = altitude === undefined ? (ambient === undefined ? usual : []) : placesFrom(altitude);
  const pressures = ambient === undefined ? [] : ambientList(ambient);
  const flight = flags.flightSpeed === undefined ? {} : { flightSpeed: speedFrom(flags.flightSpeed) };
  const places = [
    ...at.map(
      (z): FlowPlace => ({
        altitude: z,
        ambientPressure: z === null ? 0 : airAtGeometricAltitude(z).pressure,
        ...flight,
      }),
    ),
    ...pressures.map((ambientPressure): FlowPlace => ({ altitude: null, ambientPressure, ...flight })),
  ].sort((a, b) => b.ambientPressure - a.ambientPressure);
  const ending = endingOf(out);
  if (out !== undefined && ending !== '' && (places.length > 1 || flags.event !== undefined))
    throw bad(
      'out-one',
      '--out names one picture for several places or moments.',
      'Name a folder, or ask at one altitude and without an event.',
    );
  return {
    places,
    fineness: choiceFrom(fineness ?? 'normal', FINENESSES, '--fineness'),
    shown: choiceFrom(show ?? 'pressure', SHOWN, '--show'),
    out: out ?? null,
    options: {
      size: figureSizeFrom(size ?? '16:9'),
      theme: themeFrom(theme, size),
    },
    over: streamlines === undefined ? {} : { streamlines: countOf(streamlines) },
    width: widthFrom(png, ending),
    fonts: flags.fonts === true,
    bits: bitsFrom(floats),
    ...(threads === undefined ? {} : { threads: threadsFrom(threads, floats) }),
    timed: timedFrom(flags, places.length),
    fresh: fresh === true,
  };
}

/** [m/s] Faster, the air at a shock is too hot for a gas of one cp/cv (ours, no source). */
const FASTEST = 2000;

function speedFrom(text: string): number {
  const parsed = parseQuantity(text, 'speed');
  if (!parsed.ok) throw new BadInput([{ ...parsed.problem, what: `--flight-speed: ${parsed.problem.what}` }]);
  const { value } = parsed.value;
  if (value >= 0 && value <= FASTEST) return value;
  throw bad(
    'flight-speed',
    `--flight-speed: ${quote(text)} is outside 0 m/s to ${FASTEST} m/s.`,
    'Give the speed of the vehicle through the air, its nozzle last: "300 m/s".',
  );
}

function bitsFrom(floats = '32'): FlowBits {
  const known = choiceFrom(floats, FLOW_BITS.map(String), '--floats');
  return FLOW_BITS.find((each) => String(each) === known)!;
}

const MOST_THREADS = 16;

function threadsFrom(asked: string, floats: string | undefined): number {
  const count = Number(asked);
  if (floats === 'reference' && count > 1)
    throw bad(
      'threads-of-reference',
      `--threads: the reference takes its steps in one thread, not in ${quote(asked)}.`,
      'Leave --threads out, or --floats reference.',
    );
  if (Number.isInteger(count) && count >= 1 && count <= MOST_THREADS) return count;
  throw bad(
    'threads-count',
    `--threads: ${quote(asked)} is no number of threads.`,
    `Give a whole number from 1 to ${MOST_THREADS}, or none.`,
  );
}

const MOST_STREAMLINES = 40;

function countOf(asked: string | true): number {
  if (asked === true) return USUAL_STREAMLINES;
  const count = Number(asked);
  if (Number.isInteger(count) && count >= 1 && count <= MOST_STREAMLINES) return count;
  throw bad(
    'streamlines-count',
    `--streamlines: ${quote(asked)} is no number of lines.`,
    `Give a whole number from 1 to ${MOST_STREAMLINES}, or none.`,
  );
}

/** Small letters; empty: a folder, or no picture at all. */
function endingOf(out: string | undefined): string {
  const ending = extname(out ?? '').toLowerCase();
  if (['.svg', '.png', ''].includes(ending)) return ending;
  throw bad(
    'out-ending',
    `--out: ${quote(out!)} does not end in .svg or .png and is no folder.`,
    'Name a picture, or a folder for several.',
  );
}

function placesFrom(text: string): readonly (number | null)[] {
  return text
    .split(',')
    .flatMap((part): readonly (number | null)[] => (part.trim() === 'vacuum' ? [null] : altitudeList(part)));
}

/** The difference of two engines with its own band: what they share is drawn once for both and cancels. */

import type { Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import type { AskedAmbient, Told } from '../asked/model.ts';
import { plainAsk } from '../asked/plainAsk.ts';
import { type DisplayUnit, quantity } from '../catalogue.ts';
import { unitFor } from '../display.ts';
import { type DrawOptions, drawAsks } from '../spread/index.ts';
import { choicesOf } from './alternatives.ts';
import { ambientWords } from './askWords.ts';
import { type Band, bandOf } from './bandOf.ts';
import { drawnAsks, type Row } from './drawnAsks.ts';
import { plain, spanWords, withUnit } from './spanWords.ts';

export interface AskedDifference {
  /** Name in the catalogue. */ readonly quantity: string;
  readonly ambient: AskedAmbient | null;
}

export interface DifferenceBand extends AskedDifference {
  /** Of other less base at the study's middle values [SI] */ readonly value: number;
  /** [SI] 95 % of the draws lie between them, by every published model that stands beside another */
  readonly low: number;
  readonly high: number;
  /** Its sign is open. */ readonly tooClose: boolean;
  /** `at the pad: between 0.5 and 4 s more`, `in vacuum: too close to call (1 s less to 2 s more)`, `in vacuum: the same` */
  readonly words: string;
}

/** Ids of the engines; differences are other less base. */
export interface ComparedPair {
  readonly base: string;
  readonly other: string;
}

/** In the order asked; null where an engine has no number there. */
export async function differenceBands(
  study: Study,
  crew: Crew,
  { base, other }: ComparedPair,
  wanted: readonly AskedDifference[],
  options: DrawOptions = {},
): Promise<readonly (DifferenceBand | null)[]> {
  const asks = wanted.flatMap(({ quantity: name, ambient }) =>
    [base, other].map((engine) => plainAsk(engine, name, ambient)),
  );
  const drawn = drawnAsks(await drawAsks(study, asks, crew, options), study);
  return wanted.map((asked, i) => {
    const places = [2 * i, 2 * i + 1];
    const difference = (row: Row): number | null => {
      const [a, b] = places.map((place) => row[place] ?? null);
      return a === null || a === undefined || b === null || b === undefined ? null : b - a;
    };
    const value = difference(drawn.middle.map((told) => (told.ok ? told.value : null)));
    const band = bandOf(drawn, choicesOf({ places }, drawn), { places }, difference);
    const size = Math.max(...places.map((place) => sizeOf(drawn.middle[place])));
    return value === null || band === null ? null : told(asked, value, band, size);
  });
}

/** The same of one quantity at one place. */
export async function differenceBand(
  study: Study,
  crew: Crew,
  pair: ComparedPair,
  asked: AskedDifference,
  options: DrawOptions = {},
): Promise<DifferenceBand | null> {
  const [band] = await differenceBands(study, crew, pair, [asked], options);
  return band ?? null;
}

const sizeOf = (told: Told | undefined): number => (told?.ok === true ? Math.abs(told.value) : 0);

function told(asked: AskedDifference, value: number, band: Band, size: number): DifferenceBand {
  const judged = judgedDifference(asked.quantity, value, band, size);
  const where = asked.ambient === null ? '' : `${ambientWords(asked.ambient)}: `;
  return { ...asked, ...judged, words: `${where}${judged.words}` };
}

/** Of the numbers themselves: a smaller difference is left of rounding. */
const ROUNDING = 1e-9;

/**
 * Whether the sign of a difference is sure, and how much it is in words.
 * @param name of the quantity, in the catalogue @param size of the numbers whose difference it is [SI]
 */
export function judgedDifference(
  name: string,
  value: number,
  band: Band,
  size: number,
): Pick<DifferenceBand, 'value' | 'low' | 'high' | 'tooClose' | 'words'> {
  const low = Math.min(band.low, value);
  const high = Math.max(band.high, value);
  if (Math.max(-low, high) <= ROUNDING * size) {
    return { value: 0, low: 0, high: 0, tooClose: true, words: 'the same' };
  }
  const tooClose = low <= 0 && high >= 0;
  const unit = unitFor(quantity(name), [low, high]);
  const words = tooClose ? `too close to call${openWords(low, high, unit)}` : sureWords(low, high, unit);
  return { value, low, high, tooClose, words };
}

function sureWords(low: number, high: number, unit: DisplayUnit): string {
  return low > 0 ? `${spanWords(low, high, unit).words} more` : `${spanWords(-high, -low, unit).words} less`;
}

function openWords(low: number, high: number, unit: DisplayUnit): string {
  const span = spanWords(low, high, unit);
  const [down, up] = [-span.low, span.high].map((end) =>
    plain(Math.abs(Number((end * unit.perSI).toPrecision(3)))),
  );
  return ` (from ${withUnit(down!, unit)} less to ${withUnit(up!, unit)} more)`;
}

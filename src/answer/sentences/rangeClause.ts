/** What is true of a test over a range: where it comes closest, where it fails, where the highest value lies. */

import { capital } from '../../study/capital.ts';
import type { Owner } from '../../study/owners.ts';
import { findQuantity } from '../catalogue.ts';
import { showStated } from '../display.ts';
import type {
  ComparedSides,
  CompiledTest,
  Decision,
  RangePlace,
  TestedRange,
  Witness,
} from '../expression/model.ts';
import { settableInputs } from '../inputs/index.ts';
import type { EngineInputEntry } from '../inputs/model.ts';
import { altitudeWords, askWords, type OwnersById, thatOfWords, timeWords } from './askWords.ts';
import { type Band, bandOf } from './bandOf.ts';
import { shareMore, type Teller } from './clause.ts';
import { readerAt } from './drawnAsks.ts';
import { movingWords } from './expressionWords.ts';
import { moreWords } from './ratioWords.ts';
import type { PlacedTest } from './shareOf.ts';
import { unitOfNumber } from './sideUnit.ts';
import { spanWords } from './spanWords.ts';

/** Null where the decision tells of no place. */
export function rangeClause(placed: PlacedTest, decision: Decision, teller: Teller): string | null {
  const [witness] = decision.witnesses;
  const [side] = decision.sides;
  const range = witness === undefined ? undefined : placed.test.ranges[witness.range];
  if (witness === undefined || side === undefined || range === undefined) return null;
  if (witness.is === 'place of the value') return placeOfValue(range, placed, teller);
  const told: Told = { witness, side, range, placed, teller };
  return TRENDS.has(range.kind) ? trendClause(told) : everyClause(told, decision.sides.length === 1);
}

interface Told {
  readonly witness: Witness;
  readonly side: ComparedSides;
  readonly range: TestedRange;
  readonly placed: PlacedTest;
  readonly teller: Teller;
}

const TRENDS: ReadonlySet<TestedRange['kind']> = new Set([
  'rises',
  'falls',
  'does not rise',
  'does not fall',
  'constant',
]);

function trendClause({ witness, side, range, placed, teller }: Told): string {
  const name = capital(sideName(side, 'left', placed.test, teller.engines));
  if (witness.is !== 'counterexample') {
    const verb = range.kind === 'constant' ? 'is constant' : range.kind;
    return `${name} ${verb} throughout: ${rangeWords(range, teller.engines)}.`;
  }
  if (range.kind === 'constant') {
    const ends = [side.left, side.right].map((value) =>
      value === null ? '' : valueWords(side, value, placed.test),
    );
    return `${name} is not constant: it goes from ${ends.join(' to ')}.`;
  }
  const up = range.kind === 'rises' || range.kind === 'does not fall';
  if (witness.around === undefined)
    return `${name} ends ${up ? 'no higher' : 'no lower'} than it begins: ${rangeWords(range, teller.engines)}.`;
  const other = up ? 'falls' : 'rises';
  return `${name} ${other} ${stretchWords(witness, range, teller.engines)}.`;
}

function everyClause({ witness, side, range, placed, teller }: Told, alone: boolean): string {
  const at = placeIn(range, witness.place, teller.engines);
  const bare = side.names.left.fixed && side.names.right.fixed;
  const here = alone && !bare ? sidesWords(side, placed, teller) : '';
  const [a, b] = [capital(at), here === '' ? '' : `: there ${here}`];
  switch (witness.is) {
    case 'counterexample':
      return `It is not so ${stretchWords(witness, range, teller.engines)}; ${here === '' ? `clearest ${at}` : `at the worst, ${at}, ${here}`}.`;
    case 'example':
      return `It is so ${stretchWords(witness, range, teller.engines)}; clearest ${at}${b}.`;
    default:
      return range.kind === 'every'
        ? `It is so throughout (${rangeWords(range, teller.engines)}). The closest call is ${at}${b}.`
        : `It is so nowhere (${rangeWords(range, teller.engines)}). ${a} it comes closest${b}.`;
  }
}

/** `the thrust of Alder P is between 1 and 2 % more than that of Alder B`, at the place that decides in each draw. */
function sidesWords(side: ComparedSides, placed: PlacedTest, teller: Teller): string {
  const { engines } = teller;
  const { left, right } = side.names;
  const name = sideName(side, 'left', placed.test, engines);
  if (left.fixed || right.fixed) {
    const moving = left.fixed ? 'right' : 'left';
    const band = decidedBand(placed, teller, (sides) => sides[moving]);
    const unit = band && unitFor(side, moving, band, placed.test);
    if (band === null || unit === null) return 'it is decided';
    return `${sideName(side, moving, placed.test, engines)} is ${spanWords(band.low, band.high, unit).words}`;
  }
  const band = decidedBand(placed, teller, (sides) => shareMore(sides.left, sides.right));
  if (band === null) return 'it is decided';
  const other = right.ask === null ? undefined : placed.test.asks[right.ask];
  const same = left.quantity !== null && left.quantity === right.quantity && other !== undefined;
  const mine = left.ask === null ? undefined : placed.test.asks[left.ask];
  // One engine against itself: what is set on it tells the two apart.
  const twin = same && mine !== undefined && mine.engine === other.engine;
  if (twin) {
    return `${askWords(mine, engines)} is ${moreWords(band.low, band.high).words} ${thatOfWords(other, engines)}`;
  }
  const beside = same ? thatOfWords(other, engines, false) : sideName(side, 'right', placed.test, engines);
  return `${name} is ${moreWords(band.low, band.high).words} ${beside}`;
}

/** Draws beyond so many tell nothing more of a band in words. */
const DRAWS_LOOKED_AT = 256;

function decidedBand(
  placed: PlacedTest,
  { drawn, choices }: Teller,
  of: (sides: ComparedSides) => number | null,
): Band | null {
  const own = readerAt(placed.places);
  return bandOf(drawn, choices, { places: placed.places, most: DRAWS_LOOKED_AT }, (all) => {
    const [side] = placed.test.sides(own(all));
    return side === undefined ? null : of(side);
  });
}

function placeOfValue(range: TestedRange, placed: PlacedTest, teller: Teller): string | null {
  const band = decidedBand(placed, teller, (side) => side.left);
  const word = range.kind === 'highest' ? 'highest' : 'lowest';
  if (band === null) return `The ${word} value lies in vacuum.`;
  const quantity = quantityOfRange(range, teller.engines);
  const unit = unitOfNumber(quantity, range.dimension, [], [band.low, band.high]);
  return `The ${word} value lies at ${variableWords(range, teller.engines)} ${spanWords(band.low, band.high, unit).words} (${rangeWords(range, teller.engines)}).`;
}

function unitFor(
  side: ComparedSides,
  which: 'left' | 'right',
  band: Band,
  test: CompiledTest,
): ReturnType<typeof unitOfNumber> {
  const madeOf = test.asks.map(({ quantity }) => quantity);
  return unitOfNumber(side.names[which].quantity, side.dimension, madeOf, [band.low, band.high]);
}

const valueWords = (side: ComparedSides, value: number, test: CompiledTest): string =>
  spanWords(value, value, unitFor(side, 'left', { low: value, high: value }, test)).words;

function sideName(
  { names }: ComparedSides,
  which: 'left' | 'right',
  { asks }: CompiledTest,
  engines: OwnersById,
): string {
  const { ask, expression } = names[which];
  const found = ask === null ? undefined : asks[ask];
  return found === undefined ? movingWords(expression, asks, engines) : askWords(found, engines, false);
}

/** `between 3 km and 9 km`, `from 20 km to vacuum`, `at 5 km` */
function stretchWords({ place, around }: Witness, range: TestedRange, engines: OwnersById): string {
  if (around === undefined || around.from === around.to) return placeIn(range, place, engines);
  const [from, to] = [around.from, around.to].map((end) => bareplace(range, end, engines));
  if (range.of === 'input') return `with ${variableWords(range, engines)} from ${from} to ${to}`;
  return `${range.of === 'number' ? `for ${range.variable} ` : ''}from ${from} to ${to}`;
}

/** What moves: the label of the input, or the sign that the test gave it. */
function variableWords({ of, input, variable }: TestedRange, engines: OwnersById): string {
  if (of === 'input') return inputEntry(input ?? '', [...engines.values()])?.label ?? variable;
  return VARIABLES[of] ?? variable;
}

const VARIABLES: Readonly<Partial<Record<TestedRange['of'], string>>> = {
  altitude: 'an altitude of',
  pressure: 'an outside pressure of',
  time: 'a time since lift-off of',
  throttle: 'a throttle of',
  areaRatio: 'area ratio',
  distance: 'a distance from the throat of',
};

/** e.g. `tested at 17 values of area ratio from 5 to 40` */
function rangeWords({ of, input, words }: TestedRange, engines: OwnersById): string {
  const label = of === 'input' ? inputEntry(input ?? '', [...engines.values()])?.label : undefined;
  return label === undefined || input === null ? words : words.replace(input, label);
}

/** A place of a range, e.g. `at 5 km`, `in vacuum`, `at 60 % throttle`. */
export function placeIn(range: TestedRange, place: RangePlace, engines: OwnersById): string {
  if (place === 'vacuum') return 'in vacuum';
  if (range.of === 'altitude') return altitudeWords(rounded(place));
  if (range.of === 'pressure') return `in ${bareplace(range, place, engines)} outside`;
  if (range.of === 'time') return timeWords(rounded(place));
  if (range.of === 'throttle') return `at ${bareplace(range, place, engines)} throttle`;
  if (range.of === 'areaRatio') return `at area ratio ${bareplace(range, place, engines)}`;
  if (range.of === 'distance') return `${bareplace(range, place, engines)} behind the throat`;
  if (range.of === 'input')
    return `with ${variableWords(range, engines)} ${bareplace(range, place, engines)}`;
  return `for ${range.variable} = ${bareplace(range, place, engines)}`;
}

function bareplace(range: TestedRange, place: RangePlace, engines: OwnersById): string {
  if (place === 'vacuum') return 'vacuum';
  const quantity = quantityOfRange(range, engines);
  if (range.of === 'altitude' && place === 0) return 'the pad';
  return quantity === null ? String(rounded(place)) : showStated(quantity, rounded(place)).text;
}

const rounded = (value: number): number => Number(value.toPrecision(2));

function quantityOfRange({ of, input }: TestedRange, engines: OwnersById): string | null {
  switch (of) {
    case 'altitude':
      return 'altitude';
    case 'pressure':
      return 'ambientPressure';
    case 'time':
      return 'flight.points.time';
    case 'throttle':
      return 'separation.throttle.share';
    case 'areaRatio':
      return 'areaRatio';
    case 'distance':
      return 'separation.place.axial';
    case 'input':
      return inputQuantity(input ?? '', [...engines.values()]);
    default:
      return null;
  }
}

function inputQuantity(input: string, engines: readonly Owner[]): string | null {
  const entry = inputEntry(input, engines);
  return entry !== null && findQuantity(entry.quantity) !== undefined ? entry.quantity : null;
}

function inputEntry(input: string, engines: readonly Owner[]): EngineInputEntry | null {
  for (const engine of engines) {
    // Of an engine below a vehicle: `bell.nozzle.areaRatio`.
    const entry = settableInputs(engine).find(
      ({ name }) => name === input || `${engine.id}.${name}` === input,
    );
    if (entry !== undefined) return entry;
  }
  return null;
}

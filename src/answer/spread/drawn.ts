/** From what was told at some points to draws over all that is not known. */

import { normalQuantile } from '../../numerics/normalQuantile.ts';
import { randomStream } from '../../numerics/randomStream.ts';
import { remembered } from '../../numerics/remembered.ts';
import { MOST_SOBOL_DIMENSIONS } from '../../numerics/sobol.ts';
import { addTermsInto } from '../../numerics/termSums.ts';
import type { Told } from '../asked/model.ts';
import { modelError } from './distribution.ts';
import { type DrawCounts, type DrawPlaces, drawPlaces, nearest, placeOf } from './drawPlaces.ts';
import { type Fitted, fittedTo, moverOver, valueFittedTo } from './fitted.ts';
import type { Drawn, DrawnAlternative, DrawnAsk, Unknown } from './model.ts';
import { type AskNumbers, askNumbers } from './numbersAt.ts';
import { alone, overPlaces } from './overPlaces.ts';
import { eachDrawItself, type Surfaces, surfacesOver, type ValuesAtPoints } from './surfaces.ts';
import { tooManyUnknowns, type UnknownInput } from './unknowns.ts';

/** Points where the engines were solved, inputs from −1 to 1, and what was told there. */
export interface SolvedPoints {
  readonly places: readonly Float64Array[];
  /** How many of the last ones only test. */ readonly heldOut: number;
  readonly told: readonly (readonly Told[])[];
}

/**
 * @param middle what was told of each ask at the study's middle values
 * @param toldInDraws where the engines were solved for each draw: what was told there, in the order of the draws
 */
export function drawnFrom(
  inputs: readonly UnknownInput[],
  middle: readonly Told[],
  { places, heldOut, told }: SolvedPoints,
  counts: DrawCounts,
  provisional: boolean,
  toldInDraws: readonly (readonly Told[])[] | null = null,
): Drawn {
  const unknowns = [
    ...inputs.map(({ unknown }) => unknown),
    ...modelUnknowns([...told, ...(toldInDraws ?? [])]),
  ];
  if (unknowns.length > MOST_SOBOL_DIMENSIONS) throw tooManyUnknowns(unknowns.length, MOST_SOBOL_DIMENSIONS);
  const surfaces = surfacesOver(places, heldOut);
  const numbers = middle.map((_, ask) => askNumbers(told, ask));
  const fits = numbers.map((each) => fittedTo(surfaces, unknowns, each));
  const draws = drawPlaces(inputs, unknowns.length, counts);
  const drawn = drawAll(
    middle,
    toldInDraws === null ? numbers : middle.map((_, ask) => askNumbers(toldInDraws, ask)),
    unknowns,
    draws,
    toldInDraws === null
      ? {
          surfaces,
          fits,
          heldOut,
          placeToldFor: (draw) => nearest(places, draws.places[draw]!),
          seed: counts.seed,
        }
      : {
          surfaces: eachDrawItself(),
          fits: null,
          heldOut: 0,
          placeToldFor: (draw) => draw,
          seed: counts.seed,
        },
  );

  const over: Drawn['over'] = (some) => overPlaces(surfaces, fits, unknowns.length, some);
  return {
    ...drawn,
    count: draws.count,
    blocks: counts.blocks,
    seed: counts.seed,
    unknowns,
    method: toldInDraws !== null || places.length === 1 ? 'exact' : 'surface',
    solved: places.length + (toldInDraws?.length ?? 0),
    provisional,
    placeOf: (unit) => ({
      inputs: placeOf(inputs, unit),
      deviations: Float64Array.from({ length: unknowns.length }, (_, i) =>
        i < inputs.length ? 0 : modelError(unit[i]!),
      ),
    }),
    hangsOn(which) {
      const models = new Set(which.flatMap((ask) => fits[ask]!.scatter.map(({ unknown }) => unknown)));
      return (unknown) => unknown < inputs.length || models.has(unknown);
    },
    at(place, which) {
      const numberOf = over(alone(place));
      return which.map((ask) => {
        const [value] = numberOf(ask);
        return value === undefined || Number.isNaN(value) ? null : value;
      });
    },
    over,
  };
}

/** How a draw finds its numbers. */
interface Source {
  readonly surfaces: Surfaces;
  /** The asks over these surfaces, where they are fitted already. */ readonly fits: readonly Fitted[] | null;
  readonly heldOut: number;
  /** Place in what was told that says whether there is a value in a draw. */
  placeToldFor(this: void, draw: number): number;
  readonly seed: number;
}

function drawAll(
  middle: readonly Told[],
  numbers: readonly AskNumbers[],
  unknowns: readonly Unknown[],
  draws: DrawPlaces,
  source: Source,
): Pick<Drawn, 'asks' | 'alternatives'> {
  const fits = source.fits ?? numbers.map((each) => fittedTo(source.surfaces, unknowns, each));
  const others = alternativesOf(numbers).map(({ of, by, values }) => ({
    of,
    by,
    fits: values.map((instead, ask) =>
      instead === null ? null : { ...fits[ask]!, ...valueFittedTo(source.surfaces, instead) },
    ),
  }));
  const lists = [fits, ...others.map((each) => each.fits)];
  // One ask after the other, so that those with the same errors of the models stand together.
  const all = fits.flatMap((_, ask) =>
    lists.flatMap((list): Drawing[] => {
      const fitted = list[ask] ?? null;
      return fitted === null ? [] : [{ fitted, drawn: emptyDraws(draws.count, fitted, middle[ask]!) }];
    }),
  );
  drawInto(all, draws, source);
  const drawnOf = new Map(all.map(({ fitted, drawn }) => [fitted, drawn]));
  const asks = fits.map((fitted) => drawnOf.get(fitted)!);
  const alternatives = others.map(
    ({ of, by, fits: own }): DrawnAlternative => ({
      of,
      by,
      asks: own.map((fitted, ask) => (fitted === null ? asks[ask]! : drawnOf.get(fitted)!)),
    }),
  );
  return { asks, alternatives };
}

function modelUnknowns(told: readonly (readonly Told[])[]): readonly Unknown[] {
  const sources = new Map<string, string>();
  for (const one of told.flat()) {
    for (const { name, source } of one.ok ? one.scatter : []) sources.set(name, source);
  }
  return [...sources].map(([name, source]) => ({ kind: 'model', name, source }));
}

interface Drawing {
  readonly fitted: Fitted;
  readonly drawn: DrawnAsk;
}

const NO_MISSES = new Float64Array(0);

function emptyDraws(count: number, { value, toldAt }: Fitted, middle: Told): DrawnAsk {
  const never = value === null;
  const absent = never ? new Uint8Array(count).fill(1) : toldAt === null ? null : new Uint8Array(count);
  return {
    values: new Float64Array(count),
    absent,
    surfaceError: value?.error ?? 0,
    surfaceMisses: value?.misses ?? NO_MISSES,
    middle,
  };
}

function drawInto(
  all: readonly Drawing[],
  draws: DrawPlaces,
  { surfaces, heldOut, placeToldFor, seed }: Source,
): void {
  const { count, places, deviations } = draws;
  const there = surfaces.over(places);
  const missed = missesDrawn(count, heldOut, seed);
  const partly = all.some(({ fitted }) => fitted.toldAt !== null);
  const near = partly ? places.map((_, draw) => placeToldFor(draw)) : [];
  const moved = new Float64Array(count);
  const moveInto = moverOver(deviations, there, count);
  let movedBy: Fitted['scatter'] | null = null;
  for (const { fitted, drawn } of all) {
    const { values } = drawn;
    const { value, toldAt } = fitted;
    if (value === null) continue;
    // The errors of the models move a number alike under each alternative.
    if (fitted.scatter !== movedBy) {
      moveInto(fitted, moved);
      movedBy = fitted.scatter;
    }
    there.fill(values, value);
    for (let draw = 0; draw < count; draw++) values[draw] = values[draw]! + moved[draw]!;
    // What the surfaces miss together at the points held out, they miss together in a draw: it cancels in differences.
    addTermsInto(values, missed, value.misses);
    if (toldAt !== null) dropUntold(drawn, (draw) => toldAt[near[draw]!]!);
  }
}

/** Takes the values of the draws away in which the number is not told. */
function dropUntold({ values, absent }: DrawnAsk, isTold: (draw: number) => boolean): void {
  for (let draw = 0; draw < values.length; draw++) {
    if (isTold(draw)) continue;
    values[draw] = 0;
    absent![draw] = 1;
  }
}

/** Standard normal numbers, by draw, then by point held out; they hang on no study. */
const missesDrawn = remembered((count: number, heldOut: number, seed: number): Float64Array => {
  const chance = randomStream(seed);
  return Float64Array.from({ length: count * heldOut }, () => normalQuantile(chance()));
});

/** By each model of each family: its values for the asks that it touches, null for the others. */
function alternativesOf(numbers: readonly AskNumbers[]): readonly {
  readonly of: string;
  readonly by: string;
  readonly values: readonly (ValuesAtPoints | null)[];
}[] {
  const families = new Map<string, Set<string>>();
  for (const { alternatives } of numbers) {
    for (const [of, by] of alternatives) {
      families.set(of, new Set([...(families.get(of) ?? []), ...by.keys()]));
    }
  }
  return [...families].flatMap(([of, models]) =>
    [...models].map((by) => ({
      of,
      by,
      values: numbers.map(({ alternatives }) => alternatives.get(of)?.get(by) ?? null),
    })),
  );
}

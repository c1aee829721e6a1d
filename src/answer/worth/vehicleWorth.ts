/** What the other engine is worth to a vehicle, and what else would buy the same. */

import { ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import { listed } from '../compare/speech.ts';
import { showIn } from '../display.ts';
import { type ExchangeTable, exchangeTable, type Lever } from '../exchange/index.ts';
import type { StudyAnswer } from '../model.ts';
import type { EngineSolution } from '../solution.ts';

export interface VehicleWorth {
  readonly vehicle: string;
  readonly name: string;
  /** What it carries, and what it would with the other engine; one sentence each. */ readonly words: readonly string[];
  readonly exchange: ExchangeTable;
  /** [kg] that each engine of the first stage may weigh more before the gain is gone; null where nothing is gained or compared. */
  readonly breakEven: number | null;
}

/** Of the vehicles that fly to an orbit. @throws what keeps a vehicle from flying a little heavier or lighter than it is */
export function vehicleWorths(
  study: Study,
  answer: StudyAnswer,
  solutions: ReadonlyMap<string, EngineSolution>,
): readonly VehicleWorth[] {
  const solutionOf = (engine: string): EngineSolution => {
    const found = solutions.get(engine);
    if (found !== undefined) return found;
    throw new ProblemError({
      code: 'engine-failed',
      what: `The engine ${engine} could not be computed.`,
      mend: 'See what plumeline solve says of it.',
    });
  };
  return study.vehicles.flatMap((vehicle) => {
    const told = answer.vehicles.find(({ id }) => id === vehicle.id);
    if (told === undefined || told.own === null || vehicle.goal.is !== 'orbit') return [];
    const exchange = exchangeTable(vehicle, solutionOf);
    if (exchange === null) return [];
    const gained = told.exchanged?.payload === undefined ? null : told.exchanged.payload - exchange.payload;
    const dry = exchange.rates.find(({ lever }) => lever === 'dryMass')!;
    const breakEven =
      gained === null || gained <= 0 || dry.payload >= 0
        ? null
        : gained / -dry.payload / vehicle.stages[0]!.count.value;
    const other = told.comparison?.other;
    const otherName = study.engines.find(({ id }) => id === other)?.name ?? other ?? '';
    return [
      {
        vehicle: vehicle.id,
        name: vehicle.name,
        words: [
          told.words,
          ...(told.comparison === undefined ? [] : [told.comparison.words]),
          ...(breakEven === null
            ? []
            : [
                `Each ${otherName} may weigh ${kilograms(breakEven)} more than ${vehicle.stages[0]!.engineMass === 'estimated' ? 'it is taken to weigh' : 'the engine in its place'} before that gain is gone, all else as it is.`,
              ]),
          ...(gained === null || gained <= 0 ? [] : [insteadWords(gained, exchange)]),
        ],
        exchange,
        breakEven,
      },
    ];
  });
}

const DIGITS = 2;
const kilograms = (value: number): string => showIn({ symbol: 'kg', perSI: 1 }, value, DIGITS).text;

const amountIn = (symbol: string, value: number): string => showIn({ symbol, perSI: 1 }, value, DIGITS).text;

/** A lever moved by so much, in words. */
const MOVED: Readonly<Record<Lever, (amount: number, stage: string) => string>> = {
  specificImpulse: (amount, stage) => `${amountIn('s', amount)} of specific impulse of the ${stage} stage`,
  dryMass: (amount, stage) => `${kilograms(-amount)} less dry mass of the ${stage} stage`,
  thrust: (amount, stage) => `${amountIn('%', amount)} more thrust of the ${stage} stage`,
  propellant: (amount, stage) => `${amountIn('%', amount)} more propellant in the ${stage} stage`,
};

/** What else would carry as much, one lever at a time, by the rates: for small changes. */
function insteadWords(gained: number, { rates }: ExchangeTable): string {
  const ways = rates
    .filter(
      ({ stage, lever, payload }) => payload !== 0 && (stage === 'first' || lever === 'specificImpulse'),
    )
    .map(({ stage, lever, payload }) => MOVED[lever](gained / payload, stage));
  return `By the exchange rates, each of these alone would carry as much: ${listed(ways)}. The rates are slopes at what the study has: for larger changes fly them.`;
}

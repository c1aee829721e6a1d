/** An answer with its numbers' bands over all that is not known, and its differences judged by their own bands. */

import type { Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import { type Ask, askKey } from '../asked/model.ts';
import { tell } from '../asked/tell.ts';
import { listed } from '../compare/speech.ts';
import type { ComparedQuantity, Comparison, EngineAnswer, ShortAnswer, StudyAnswer } from '../model.ts';
import { choicesOf } from '../sentences/alternatives.ts';
import { bandOf, type Band as Ends } from '../sentences/bandOf.ts';
import { judgedDifference } from '../sentences/differenceBand.ts';
import { type DrawnAsks, drawnAsks, type Row } from '../sentences/drawnAsks.ts';
import type { SolvedStudy } from '../solve.ts';
import { type Drawn, type DrawOptions, drawAsks } from '../spread/index.ts';
import { bandedNumbers, comparedAsks } from './bandedNumbers.ts';

type Band = EngineAnswer['bands'][string];

/**
 * @param solved the answer and the engines behind it, at the study’s middle values
 * @throws what the drawing throws, see {@link drawAsks}
 */
export async function withDrawnBands(
  study: Study,
  { answer, solutions }: SolvedStudy,
  crew: Crew,
  options: DrawOptions = {},
): Promise<StudyAnswer> {
  const wanted = Object.values(answer.engines).map((engine) => ({ engine, numbers: bandedNumbers(engine) }));
  const compared = answer.comparison === null ? [] : comparedAsks(answer.comparison);
  const places = new Map<string, number>();
  const asks: Ask[] = [];
  const placeOf = (ask: Ask): number => {
    const key = askKey(ask);
    const known = places.get(key);
    if (known !== undefined) return known;
    places.set(key, asks.length);
    return asks.push(ask) - 1;
  };
  const numbers = wanted.map(({ engine, numbers: own }) => ({
    engine,
    own: own.map((number) => ({ ...number, place: placeOf(number.ask) })),
  }));
  const sides = compared.map(({ row, base, other }) => ({ row, base: placeOf(base), other: placeOf(other) }));
  const middle = asks.map((ask) => tell(solutions.get(ask.engine ?? '')!, ask));
  const drawn = await drawAsks(study, asks, crew, { middle, ...options });
  const draws = drawnAsks(drawn, study);

  const engines = Object.fromEntries(
    numbers.map(({ engine, own }) => {
      const bands: Record<string, Band> = {};
      for (const { path, value, place } of own) {
        const ends = endsOf(draws, [place], (row) => row[place] ?? null);
        if (ends !== null && spreads(ends, value)) bands[path] = { ...ends, from: fromWords(drawn) };
      }
      return [engine.id, { ...engine, bands }];
    }),
  );
  if (answer.comparison === null) return { ...answer, engines };
  const differences = new Map(
    sides.map(({ row, base, other }) => [
      row,
      endsOf(draws, [base, other], (row) => {
        const [left, right] = [row[base] ?? null, row[other] ?? null];
        return left === null || right === null ? null : right - left;
      }),
    ]),
  );
  const comparison = judged(answer.comparison, differences);
  return { ...answer, engines, comparison, shortAnswer: comparison.answer };
}

/** The widest over the draws and, where several models stand beside each other, over the draws under each. */
function endsOf(
  drawn: DrawnAsks,
  places: readonly number[],
  number: (row: Row) => number | null,
): Ends | null {
  return bandOf(drawn, choicesOf({ places }, drawn), { places }, number);
}

/** A difference is held against the numbers it is one of: what is left of rounding is no spread. */
const sizeOf = ({ base, other }: ComparedQuantity): number =>
  Math.max(Math.abs(base ?? 0), Math.abs(other ?? 0));

function spreads({ low, high }: Ends, value: number): boolean {
  return high - low > 1e-9 * Math.abs(value);
}

function fromWords({ unknowns, alternatives, count }: Drawn): string {
  const inputs = unknowns.filter((each) => each.kind === 'input').length;
  const models = unknowns.flatMap((each) => (each.kind === 'model' ? [each.name] : []));
  const parts = [
    ...(inputs === 0 ? [] : [`the stated spread of ${inputs === 1 ? 'one input' : `${inputs} inputs`}`]),
    ...(models.length === 0 ? [] : [`published scatter of ${listed(models)}`]),
  ];
  const beside = [...new Set(alternatives.map(({ of }) => of))];
  const widest = beside.length === 0 ? '' : `, at its widest over each ${listed(beside)}`;
  return `95 % of ${count} draws over ${listed(parts)}${widest}`;
}

function judged(comparison: Comparison, differences: ReadonlyMap<number, Ends | null>): Comparison {
  const quantities = comparison.quantities.map((row, i): ComparedQuantity => {
    const band = differences.get(i) ?? null;
    if (band === null || row.difference === null || !spreads(band, sizeOf(row))) return row;
    const { low, high, tooClose, words } = judgedDifference(row.quantity, row.difference, band, sizeOf(row));
    return { ...row, band: { low, high }, ...(tooClose && { words }) };
  });
  return { ...comparison, quantities, answer: withCloseCalls(comparison.answer, quantities) };
}

/** The short answer names leads at the pad and in vacuum; where such a lead may be none, it says so. */
function withCloseCalls(answer: ShortAnswer, quantities: readonly ComparedQuantity[]): ShortAnswer {
  const close = [
    {
      where: 'at the pad',
      row: quantities.find((q) => q.quantity === 'specificImpulse' && q.altitude === 0),
    },
    { where: 'in vacuum', row: quantities.find((q) => q.quantity === 'vacuum.specificImpulse') },
  ].flatMap(({ where, row }) => {
    if (row?.band === undefined || row.difference === null) return [];
    const { tooClose, words } = judgedDifference(row.quantity, row.difference, row.band, sizeOf(row));
    return tooClose ? [{ where, words }] : [];
  });
  if (close.length === 0) return answer;
  return {
    verdict: `${answer.verdict}; too close to call ${listed(close.map(({ where }) => where))}`,
    text: `${answer.text} With what is not known, ${listed(close.map(({ where, words }) => `${where} it is ${words}`))}.`,
  };
}

/** Gain and price of a pair: every number of both asked at once, drawn together, so that what they share cancels. */

import { ProblemError } from '../../numerics/problem.ts';
import type { Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import type { AskedAmbient } from '../asked/model.ts';
import { plainAsk } from '../asked/plainAsk.ts';
import { quantity } from '../catalogue.ts';
import { choicesOf } from '../sentences/alternatives.ts';
import { ambientWords } from '../sentences/askWords.ts';
import { bandOf } from '../sentences/bandOf.ts';
import { judgedDifference } from '../sentences/differenceBand.ts';
import { type DrawnAsks, drawnAsks, type Row } from '../sentences/drawnAsks.ts';
import { type DrawOptions, drawAsks } from '../spread/index.ts';
import type { WorthRow, WorthSide, WorthTable, WorthValue } from './model.ts';

const VACUUM: AskedAmbient = { kind: 'vacuum' };
const PAD: AskedAmbient = { kind: 'altitude', altitude: 0 };

type Line = readonly [group: WorthRow['group'], quantity: string, ambient: AskedAmbient | null];

/** In the order of the table. Chamber alone first, then with what the cycle throws overboard. */
const lines: readonly Line[] = [
  ['gain', 'specificImpulse', PAD],
  ['gain', 'specificImpulse', VACUUM],
  ['gain', 'cycle.specificImpulse', PAD],
  ['gain', 'cycle.specificImpulse', VACUUM],
  ['gain', 'thrust', PAD],
  ['gain', 'thrust', VACUUM],
  ['price', 'mass.engine', null],
  ['price', 'contour.totalLength', null],
  ['price', 'exit.diameter', null],
  ['price', 'heat.wettedArea', null],
  ['price', 'heat.throatEdge', null],
  ['price', 'heat.total', null],
  ['price', 'cooling.margin', null],
  ['price', 'cycle.pressureMargin', null],
];

/** Sizes that two engines may have in common. */
const sizes: readonly Line[] = [
  ['price', 'throat.area', null],
  ['price', 'exit.area', null],
  ['gain', 'thrust', VACUUM],
  ['gain', 'thrust', PAD],
];
/** Equal but for rounding and for what an iteration leaves. */
const SAME = 1e-4;

/** @throws ProblemError where the study has no two engines; what the drawing throws */
export async function worthTable(study: Study, crew: Crew, options: DrawOptions = {}): Promise<WorthTable> {
  const { base, other } = pairOf(study);
  const bound = study.engines.find(({ nozzle }) => nozzle.kind === 'adapting')?.id ?? null;
  const all = [...lines, ...sizes];
  const engines = bound === null ? [base, other] : [base, other, bound];
  const asks = all.flatMap(([, name, ambient]) => engines.map((engine) => plainAsk(engine, name, ambient)));
  const drawn = drawnAsks(await drawAsks(study, asks, crew, options), study);
  const placesOf = (line: number): readonly number[] =>
    engines.map((_, side) => line * engines.length + side);
  return {
    base,
    other,
    bound,
    basis: sizes.flatMap((line, i) => {
      const [one, two] = placesOf(lines.length + i).map((place) => drawn.middle[place]!);
      const same = one?.ok && two?.ok && Math.abs(two.value / one.value - 1) < SAME;
      return same ? [`same ${labelOf(line)}`] : [];
    }),
    rows: lines.flatMap((line, i) => rowOf(line, placesOf(i), drawn)),
    drawn: `95 % of ${drawn.count} draws over all that is not known.`,
  };
}

function pairOf({ engines, compare }: Study): { readonly base: string; readonly other: string } {
  const base = compare?.base ?? engines[0]?.id;
  const other = compare?.other ?? engines[1]?.id;
  if (base !== undefined && other !== undefined) return { base, other };
  throw new ProblemError({
    code: 'worth-needs-two',
    what: 'The study has one engine; whether it is worth it is a question of two.',
    mend: 'Add the engine to compare with, and name both under compare.',
  });
}

const labelOf = ([, name, ambient]: Line): string =>
  ambient === null ? quantity(name).label : `${quantity(name).label} ${ambientWords(ambient)}`;

/** Nothing where neither has such a number: the study says nothing of cooling or cycle. */
function rowOf(
  [group, name, ambient]: Line,
  places: readonly number[],
  drawn: DrawnAsks,
): readonly WorthRow[] {
  const [base, other, bound] = places.map((place) => sideOf(place, drawn));
  if (base!.found === null && other!.found === null) return [];
  return [
    {
      group,
      quantity: name,
      label: quantity(name).label,
      where: ambient === null ? '' : ambientWords(ambient),
      base: base!,
      other: other!,
      bound: group === 'gain' ? (bound ?? null) : null,
      difference: differenceOf(name, places, drawn),
    },
  ];
}

function sideOf(place: number, drawn: DrawnAsks): WorthSide {
  const told = drawn.middle[place]!;
  if (!told.ok) return { found: null, why: told.problem.what };
  return { found: banded(told.value, [place], drawn, (row) => row[place] ?? null), why: null };
}

function banded(
  value: number,
  places: readonly number[],
  drawn: DrawnAsks,
  number: (row: Row) => number | null,
): WorthValue {
  const band = bandOf(drawn, choicesOf({ places }, drawn), { places }, number);
  if (band === null || band.high - band.low <= 1e-9 * Math.abs(value))
    return { value, low: null, high: null };
  return { value, low: Math.min(band.low, value), high: Math.max(band.high, value) };
}

function differenceOf(name: string, places: readonly number[], drawn: DrawnAsks): WorthRow['difference'] {
  const [one, two] = places as readonly [number, number];
  const [base, other] = [drawn.middle[one]!, drawn.middle[two]!];
  if (!base.ok || !other.ok) return null;
  const value = other.value - base.value;
  const { low, high } = banded(value, [one, two], drawn, (row) => {
    const [a, b] = [row[one] ?? null, row[two] ?? null];
    return a === null || b === null ? null : b - a;
  });
  const size = Math.max(Math.abs(base.value), Math.abs(other.value));
  return judgedDifference(name, value, { low: low ?? value, high: high ?? value }, size);
}

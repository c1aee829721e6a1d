/** Measured points held against what the models give at the same places. */

import { type Problem, ProblemError } from '../../numerics/problem.ts';
import type { MeasuredColumn, MeasuredInput, MeasuredTable } from '../../study/measured/model.ts';
import type { Study } from '../../study/model.ts';
import { sweptKindOf } from '../../study/sweepForm.ts';
import { quantityKinds } from '../../study/unitTable.ts';
import type { Crew } from '../asked/crew.ts';
import type { Ask, Told } from '../asked/model.ts';
import { resolveQuantity } from '../asked/resolveQuantity.ts';
import { type CatalogueEntry, findQuantity } from '../catalogue.ts';
import { exponentsOf } from '../expression/dimensions.ts';
import type { MeasuredPoint, MeasuredSeries } from './model.ts';
import { residualsOf } from './residualsOf.ts';

/** A set of measured points with the table that was read of its file. */
export interface MeasuredSet {
  readonly input: MeasuredInput;
  readonly table: MeasuredTable;
}

/** One series a column. @throws ProblemError where a column names nothing that is computed, or has a unit of another kind */
export async function holdMeasured(
  study: Study,
  sets: readonly MeasuredSet[],
  crew: Crew,
): Promise<readonly MeasuredSeries[]> {
  const series: MeasuredSeries[] = [];
  for (const { input, table } of sets) {
    requirePlace(input, table.place, study);
    for (const column of table.columns) series.push(await seriesOf(study, input, table.place, column, crew));
  }
  return series;
}

async function seriesOf(
  study: Study,
  input: MeasuredInput,
  place: MeasuredColumn,
  column: MeasuredColumn,
  crew: Crew,
): Promise<MeasuredSeries> {
  const entry = entryOf(input, column);
  const rows = column.values.flatMap((value, i) => {
    const at = place.values[i] ?? null;
    return value === null || at === null ? [] : [{ at, value, plusMinus: column.plusMinus[i] ?? null }];
  });
  const asks = rows.map(({ at }) => askAt(input, place.name, at, entry.name));
  const [told = []] = asks.length === 0 ? [] : await crew.tell(asks, [{}]);
  const points = rows.map((row, i) => pointOf(row, told[i]!));
  return {
    id: input.id,
    title: input.title,
    engine: input.of,
    engineName: [...study.engines, ...study.vehicles].find(({ id }) => id === input.of)?.name ?? input.of,
    quantity: entry.name,
    place: place.name,
    source: input.source,
    points,
    ...residualsOf(points),
  };
}

const fail = (input: MeasuredInput, problem: Omit<Problem, 'where'>): ProblemError =>
  new ProblemError({
    ...problem,
    what: `${input.file}: ${problem.what}`,
    where: `${input.file} (${input.path})`,
  });

const differs = (one: readonly number[], other: readonly number[]): boolean =>
  one.some((exponent, i) => exponent !== other[i]);

/** The place must be something that can be moved, or a distance along the wall, in a unit of its kind. */
function requirePlace(
  input: MeasuredInput,
  { name, dimension, unit }: MeasuredColumn,
  { vehicles }: Study,
): void {
  const kinds = name === 'wall.axial' ? (['length'] as const) : sweptKindOf(name)?.kinds;
  const flies = vehicles.some(({ id }) => id === input.of);
  if (kinds === undefined || (name === 'time') !== flies)
    throw fail(input, {
      code: 'measured-place',
      what: `The first column, “${name}”, is no place at which ${flies ? 'a vehicle' : 'an engine'} could be computed.`,
      mend: flies
        ? 'Begin with time since lift-off.'
        : 'Begin with altitude, ambientPressure, throttle, wall.axial (distance from the throat), or an input such as nozzle.areaRatio.',
    });
  if (kinds.every((kind) => differs(quantityKinds[kind].dimension, dimension)))
    throw fail(input, {
      code: 'measured-dimension',
      what: `“${name}” is given in “${unit}”, which is another kind of quantity.`,
      mend: 'Write its unit in square brackets behind its name.',
    });
}

function entryOf(input: MeasuredInput, { name, dimension, unit }: MeasuredColumn): CatalogueEntry {
  const found = findQuantity(name);
  const resolved = found === undefined ? resolveQuantity(name, true) : { ok: true as const, value: found };
  if (!resolved.ok) throw fail(input, resolved.problem);
  const expected = exponentsOf(resolved.value.dimension);
  if (expected === null || differs(expected, dimension))
    throw fail(input, {
      code: 'measured-dimension',
      what: `“${name}” is given in “${unit === '' ? 'plain numbers' : unit}”, which is another kind of quantity than ${resolved.value.label}.`,
      mend: `Give it in ${resolved.value.unit.symbol === '' ? 'plain numbers' : resolved.value.unit.symbol}, the unit in square brackets behind its name.`,
    });
  return resolved.value;
}

function askAt(input: MeasuredInput, place: string, at: number, quantity: string): Ask {
  const { place: needs } = findQuantity(quantity)!;
  const given = input.at;
  const around =
    given === null ? null : given.kind === 'vacuum' ? given : surroundings(given.kind, given.value);
  const ask: Ask = { engine: input.of, quantity, ambient: around, throttle: null, station: null, inputs: [] };
  switch (place) {
    case 'altitude':
      return { ...ask, ambient: surroundings('altitude', at) };
    case 'ambientPressure':
      return { ...ask, ambient: surroundings('pressure', at) };
    case 'time':
      return { ...ask, ambient: null, time: at };
    case 'throttle':
      return { ...ask, throttle: at };
    case 'wall.axial':
      return {
        ...ask,
        ambient: needs === 'altitude' ? around : null,
        station: { kind: 'distance', distance: at },
      };
    default:
      return { ...ask, inputs: [{ input: place, value: at }] };
  }
}

const surroundings = (kind: 'altitude' | 'pressure', value: number): Ask['ambient'] =>
  kind === 'altitude'
    ? { kind, altitude: value }
    : value === 0
      ? { kind: 'vacuum' }
      : { kind, pressure: value };

function pointOf(row: Pick<MeasuredPoint, 'at' | 'value' | 'plusMinus'>, told: Told): MeasuredPoint {
  if (!told.ok) {
    const none = { computed: null, low: null, high: null, residual: null, share: null, agrees: null };
    return { ...row, ...none, problem: told.problem };
  }
  const { value: computed, scatter } = told;
  // Errors of different models are independent: their half bands add as squares (GUM, JCGM 100:2008, 5.1.2).
  const half = (end: (low: number, high: number) => number): number =>
    Math.sqrt(scatter.reduce((sum, { low, high }) => sum + end(low - computed, high - computed) ** 2, 0));
  const low = computed - half((a, b) => Math.min(a, b, 0));
  const high = computed + half((a, b) => Math.max(a, b, 0));
  const residual = row.value - computed;
  const model = residual < 0 ? computed - low : high - computed;
  const both = Math.hypot(row.plusMinus ?? 0, model);
  return {
    ...row,
    computed,
    low,
    high,
    residual,
    share: computed === 0 ? null : residual / Math.abs(computed),
    agrees: both === 0 ? null : Math.abs(residual) <= both,
    problem: null,
  };
}

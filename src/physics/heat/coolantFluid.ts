/**
 * A coolant's state by pressure and enthalpy, from its table: four-point Lagrange interpolation in ln p and in u (of the
 * viscosity its logarithm), where
 * h = lowest(p) + (highest(p) − lowest(p)) u^power. Below the critical pressure liquid only, up to its boiling point.
 */

import { ProblemError } from '../../numerics/problem.ts';
import type { CoolantRecord, CoolantTable } from './coolantRecords.ts';

export interface CoolantState {
  readonly pressure: number;
  readonly enthalpy: number;
  readonly temperature: number;
  readonly density: number;
  /** c_p [J/(kg K)] */ readonly heatCapacity: number;
  readonly viscosity: number;
  readonly conductivity: number;
}

export interface CoolantFluid {
  readonly record: CoolantRecord;
  /** @throws ProblemError `coolant-…` outside the table */
  stateAt(pressure: number, enthalpy: number): CoolantState;
  /** [J/kg] @throws ProblemError as above */
  enthalpyAt(pressure: number, temperature: number): number;
  /** [J/kg] of the boiling liquid; null above the critical pressure, where nothing boils. */
  boilingEnthalpy(pressure: number): number | null;
  /** [J/kg] at the table's hottest state */ highestEnthalpy(pressure: number): number;
  /** [J/kg] at the table's coldest state */ lowestEnthalpy(pressure: number): number;
  /** [K] of the coldest and hottest state at a pressure */
  temperatureSpan(pressure: number): { readonly low: number; readonly high: number };
}

interface Weights {
  readonly first: number;
  readonly of: readonly [number, number, number, number];
}

export function coolantFluid(record: CoolantRecord): CoolantFluid {
  const rungs = { liquid: record.liquid.pressure.map(Math.log), dense: record.dense.pressure.map(Math.log) };
  const lnViscosity = {
    liquid: record.liquid.viscosity.map(Math.log),
    dense: record.dense.viscosity.map(Math.log),
  };

  function place(pressure: number): { kind: 'liquid' | 'dense'; table: CoolantTable; rows: Weights } {
    const kind = pressure < record.criticalPressure ? 'liquid' : 'dense';
    const table = record[kind];
    const [least, most] = [table.pressure[0]!, table.pressure.at(-1)!];
    if (!(pressure >= least * (1 - 1e-9) && pressure <= most * (1 + 1e-9))) {
      throw outsidePressure(record, pressure, kind);
    }
    return { kind, table, rows: unevenWeights(rungs[kind], Math.log(pressure)) };
  }

  function ends(table: CoolantTable, rows: Weights): { low: number; high: number } {
    return { low: along(table.lowest, rows), high: along(table.highest, rows) };
  }

  function stateAt(pressure: number, enthalpy: number): CoolantState {
    const { kind, table, rows } = place(pressure);
    const { low, high } = ends(table, rows);
    const share = (enthalpy - low) / (high - low);
    if (!(share >= -1e-6 && share <= 1 + 1e-6)) throw outsideEnthalpy(record, share > 0.5, pressure);
    const columns = evenWeights(table.columns, Math.max(share, 0) ** (1 / table.power));
    const of = (values: readonly number[]): number => across(values, table.columns, rows, columns);
    return {
      pressure,
      enthalpy,
      temperature: of(table.temperature),
      density: of(table.density),
      heatCapacity: of(table.heatCapacity),
      viscosity: Math.exp(of(lnViscosity[kind])),
      conductivity: of(table.conductivity),
    };
  }

  function temperatureSpan(pressure: number): { low: number; high: number } {
    const { table, rows } = place(pressure);
    const at = (u: number): number =>
      across(table.temperature, table.columns, rows, evenWeights(table.columns, u));
    return { low: at(0), high: at(1) };
  }

  return {
    record,
    stateAt,
    temperatureSpan,
    enthalpyAt(pressure, temperature) {
      const { table, rows } = place(pressure);
      const span = temperatureSpan(pressure);
      if (!(temperature >= span.low - 1e-3 && temperature <= span.high + 1e-3)) {
        throw outsideTemperature(record, temperature, pressure, span);
      }
      let [a, b] = [0, 1];
      for (let i = 0; i < 50; i++) {
        const u = (a + b) / 2;
        if (across(table.temperature, table.columns, rows, evenWeights(table.columns, u)) > temperature)
          b = u;
        else a = u;
      }
      const { low, high } = ends(table, rows);
      return low + (high - low) * ((a + b) / 2) ** table.power;
    },
    boilingEnthalpy(pressure) {
      if (pressure >= record.criticalPressure) return null;
      const { table, rows } = place(pressure);
      return along(table.highest, rows);
    },
    highestEnthalpy(pressure) {
      const { table, rows } = place(pressure);
      return along(table.highest, rows);
    },
    lowestEnthalpy(pressure) {
      const { table, rows } = place(pressure);
      return ends(table, rows).low;
    },
  };
}

/** Lagrange weights of the four nodes round a value on an uneven ladder. */
function unevenWeights(ladder: readonly number[], value: number): Weights {
  let cell = 0;
  while (cell < ladder.length - 2 && ladder[cell + 1]! < value) cell += 1;
  const first = Math.min(Math.max(cell - 1, 0), ladder.length - 4);
  const x = [ladder[first]!, ladder[first + 1]!, ladder[first + 2]!, ladder[first + 3]!];
  const of = x.map((xi, i) => {
    let weight = 1;
    for (let j = 0; j < 4; j++) if (j !== i) weight *= (value - x[j]!) / (xi - x[j]!);
    return weight;
  });
  return { first, of: of as unknown as Weights['of'] };
}

/** The same on `count` nodes evenly from 0 to 1. */
function evenWeights(count: number, u: number): Weights {
  const at = u * (count - 1);
  const first = Math.min(Math.max(Math.floor(at) - 1, 0), count - 4);
  const t = at - first;
  return {
    first,
    of: [
      (-(t - 1) * (t - 2) * (t - 3)) / 6,
      (t * (t - 2) * (t - 3)) / 2,
      (-t * (t - 1) * (t - 3)) / 2,
      (t * (t - 1) * (t - 2)) / 6,
    ],
  };
}

function along(values: readonly number[], { first, of }: Weights): number {
  return (
    of[0] * values[first]! +
    of[1] * values[first + 1]! +
    of[2] * values[first + 2]! +
    of[3] * values[first + 3]!
  );
}

function across(values: readonly number[], columns: number, rows: Weights, of: Weights): number {
  let sum = 0;
  for (let i = 0; i < 4; i++) {
    const start = (rows.first + i) * columns;
    sum += rows.of[i]! * along(values, { first: start + of.first, of: of.of });
  }
  return sum;
}

const bar = (pressure: number): string => `${(pressure / 1e5).toPrecision(3)} bar`;

function outsidePressure(record: CoolantRecord, pressure: number, kind: 'liquid' | 'dense'): ProblemError {
  const { name, criticalPressure, liquid, dense } = record;
  const near = pressure > liquid.pressure.at(-1)! && pressure < dense.pressure[0]!;
  return new ProblemError({
    code: near ? 'coolant-near-critical' : 'coolant-pressure-outside-table',
    what: near
      ? `At ${bar(pressure)} the coolant ${name} is too near its critical pressure of ${bar(criticalPressure)}.`
      : `The coolant ${name} is not tabulated at ${bar(pressure)}.`,
    why: near
      ? 'there its properties change so fast that no correlation holds, and coolers avoid it'
      : `the table reaches from ${bar(liquid.pressure[0]!)} to ${bar(dense.pressure.at(-1)!)}`,
    mend:
      kind === 'liquid' || near
        ? `Give an inlet pressure that stays above ${bar(dense.pressure[0]!)} to the end of the channels, or below ${bar(liquid.pressure.at(-1)!)} from their beginning on.`
        : 'Give a lower inlet pressure.',
    where: 'cooling.inlet.pressure',
    facts: { pressure, criticalPressure },
  });
}

function outsideEnthalpy({ name, hottest }: CoolantRecord, hot: boolean, pressure: number): ProblemError {
  return new ProblemError({
    code: hot ? 'coolant-too-hot' : 'coolant-too-cold',
    what: hot
      ? `The coolant ${name} would boil, or leave its table at ${hottest} K, at ${bar(pressure)}.`
      : `The coolant ${name} would be frozen at ${bar(pressure)}.`,
    mend: hot ? 'Give more coolant, a smaller area to cool, or a film.' : 'Give a warmer inlet.',
    where: hot ? 'cooling.share' : 'cooling.inlet.temperature',
    facts: { pressure },
  });
}

function outsideTemperature(
  { name }: CoolantRecord,
  temperature: number,
  pressure: number,
  { low, high }: { readonly low: number; readonly high: number },
): ProblemError {
  return new ProblemError({
    code: temperature > high ? 'coolant-too-hot' : 'coolant-too-cold',
    what: `The coolant ${name} is no liquid, or not tabulated, at ${temperature.toPrecision(4)} K and ${bar(pressure)}.`,
    mend: `Give an inlet temperature from ${Math.ceil(low)} to ${Math.floor(high)} K, where it is known at that pressure, or another pressure.`,
    where: 'cooling.inlet.temperature',
    facts: { temperature, pressure, low, high },
  });
}

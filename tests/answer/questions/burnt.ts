/**
 * One-dimensional expansions by Cantera at the very chambers of some starters, out of tests/reference/question-reference.json
 * (scripts/reference/make_question_reference.py): nothing between rows.
 */
import { readFileSync } from 'node:fs';

const G0 = 9.80665;
const SEA_LEVEL = 101_325;

interface Place {
  readonly pressure: number;
  readonly velocity: number;
  readonly mach: number;
  readonly areaRatio: number;
}
interface Case {
  readonly fuel: string;
  readonly ratio: number;
  readonly chamberPressure: number;
  readonly characteristicVelocity: number;
  readonly throat: { readonly pressure: number; readonly velocity: number };
  readonly exits: readonly {
    readonly areaRatio: number;
    readonly pressure: number;
    readonly specificImpulseVacuum: number;
  }[];
  readonly places: readonly Place[];
}

export interface Burnt {
  readonly case: Case;
  /** In vacuum behind an area ratio [s]. */ impulse(areaRatio: number): number;
  /** Air’s push back, as specific impulse [s]. */ airOn(areaRatio: number, pressure?: number): number;
  /** Mean pressure at an area ratio [Pa]. */ pressure(areaRatio: number): number;
  /** F/(p₀ A_t) in vacuum behind an area ratio. */ coefficient(areaRatio: number): number;
  /** The same of the throat alone: (ṁ u + p A)/(p₀ A_t) there. */ readonly throatCoefficient: number;
  /** Where the pressure has fallen to this one [Pa]. */ at(pressure: number): Place;
}

/** Oxygen with a fuel. @param ratio by mass @param bar of the chamber */
export function burnt(fuel: string, ratio: number, bar: number): Burnt {
  const table = JSON.parse(
    readFileSync(new URL('../../reference/question-reference.json', import.meta.url), 'utf8'),
  ) as { readonly cases: readonly Case[] };
  const found = wanted(
    table.cases.find(
      (one) =>
        one.fuel === fuel && one.ratio === ratio && Math.abs(one.chamberPressure / 1e5 - bar) < 1e-6 * bar,
    ),
  );
  const { characteristicVelocity, chamberPressure, exits, throat, places } = found;
  const exit = (areaRatio: number) => wanted(exits.find((one) => one.areaRatio === areaRatio));
  return {
    case: found,
    impulse: (e) => exit(e).specificImpulseVacuum,
    airOn: (e, pressure = SEA_LEVEL) => (pressure * e * characteristicVelocity) / (chamberPressure * G0),
    pressure: (e) => exit(e).pressure,
    coefficient: (e) => (exit(e).specificImpulseVacuum * G0) / characteristicVelocity,
    throatCoefficient: throat.velocity / characteristicVelocity + throat.pressure / chamberPressure,
    at: (pressure) => wanted(places.find((one) => Math.abs(one.pressure / pressure - 1) < 1e-6)),
  };
}

function wanted<T>(one: T | undefined): T {
  if (one === undefined) throw new Error('not in tests/reference/question-reference.json');
  return one;
}

/**
 * Ideal expansion of burnt gases by Cantera 3.2.0 (a general-purpose library for chemical kinetics and thermodynamics, BSD
 * licence), out of tests/reference/gas-reference.json; between its rows by parabolas, in the logarithms of pressure and area.
 */
import { readFileSync } from 'node:fs';

interface Row {
  readonly characteristicVelocity: number;
  readonly pressure: readonly number[];
  readonly temperature: readonly number[];
  readonly specificImpulseMatched: readonly number[];
  readonly specificImpulseVacuum: readonly number[];
  readonly molarMass: readonly number[];
}
interface Table {
  readonly mixtures: readonly {
    readonly oxidiser: string;
    readonly fuel: string;
    readonly cases: readonly {
      readonly ratio: number;
      readonly chamberPressure: number;
      readonly shifting: Row;
    }[];
  }[];
}

const AREA_RATIOS = [5, 10, 20, 40, 80, 150, 300];
const G0 = 9.80665;
const GAS_CONSTANT = 8.314462618;

let table: Table | null = null;
function read(): Table {
  table ??= JSON.parse(
    readFileSync(new URL('../../reference/gas-reference.json', import.meta.url), 'utf8'),
  ) as Table;
  return table;
}

/** Everything over the chamber’s own values: [–], [m/s], [K], [kg/mol]. */
export interface IdealExpansion {
  readonly characteristicVelocity: number;
  /** Vacuum specific impulse behind an area ratio, 5 to 300 [s] */ impulseVacuum(areaRatio: number): number;
  /** Speed at an area ratio [m/s] */ speed(areaRatio: number): number;
  /** p/p₀ at an area ratio */ pressureShare(areaRatio: number): number;
  /** Area ratio at which the pressure has fallen to this share. */ areaRatioAt(share: number): number;
  /** ρ/ρ_throat at an area ratio */ densityShare(areaRatio: number): number;
  /** Vacuum specific impulse of the throat alone [s] */ readonly impulseOfThroat: number;
}

/** @param ratio oxidiser over fuel by mass @param pressure of the chamber [bar] */
export function cantera(oxidiser: string, fuel: string, ratio: number, pressure: number): IdealExpansion {
  const mixture = read().mixtures.find((one) => one.oxidiser === oxidiser && one.fuel === fuel);
  if (mixture === undefined) throw new Error(`no reference for ${oxidiser} and ${fuel}`);
  const ratios = [...new Set(mixture.cases.map((one) => one.ratio))].sort((a, b) => a - b);
  const pressures = [...new Set(mixture.cases.map((one) => one.chamberPressure))].sort((a, b) => a - b);
  /** A number of the rows at this mixture and pressure. */
  const of = (read: (row: Row) => number): number =>
    parabola(
      pressures.map(Math.log),
      (j) =>
        parabola(
          ratios,
          (i) => {
            const row = mixture.cases.find(
              (one) => one.ratio === ratios[i] && one.chamberPressure === pressures[j],
            )!;
            return read(row.shifting);
          },
          ratio,
        ),
      Math.log(pressure * 1e5),
    );
  const overArea = (at: (row: Row, station: number) => number, areaRatio: number): number =>
    parabola(AREA_RATIOS.map(Math.log), (k) => of((row) => at(row, k)), Math.log(areaRatio));
  const logShare = (row: Row, k: number): number => Math.log(row.pressure[k + 2]! / row.pressure[0]!);
  const density = (row: Row, station: number): number =>
    (row.pressure[station]! * row.molarMass[station]!) / (GAS_CONSTANT * row.temperature[station]!);
  return {
    characteristicVelocity: of((row) => row.characteristicVelocity),
    impulseVacuum: (e) => overArea((row, k) => row.specificImpulseVacuum[k]!, e),
    speed: (e) => G0 * overArea((row, k) => row.specificImpulseMatched[k]!, e),
    pressureShare: (e) => Math.exp(overArea(logShare, e)),
    areaRatioAt: (share) =>
      Math.exp(
        parabola(
          AREA_RATIOS.map((_, k) => of((row) => logShare(row, k))),
          (k) => Math.log(AREA_RATIOS[k]!),
          Math.log(share),
        ),
      ),
    densityShare: (e) => Math.exp(overArea((row, k) => Math.log(density(row, k + 2) / density(row, 1)), e)),
    // Mass flux there is p₀/c*: speed = flux / density.
    impulseOfThroat: of((row) => {
      const flux = row.pressure[0]! / row.characteristicVelocity;
      const speed = flux / density(row, 1);
      return (speed + row.pressure[1]! / flux) / G0;
    }),
  };
}

/** Through the three points nearest to the place that have a value (Lagrange); some rows end where soot or ice would form. */
function parabola(xs: readonly number[], value: (i: number) => number, x: number): number {
  const near = xs
    .map((at, i) => ({ at, y: value(i) }))
    .filter(({ y }) => Number.isFinite(y))
    .sort((a, b) => Math.abs(a.at - x) - Math.abs(b.at - x))
    .slice(0, 3);
  return near.reduce(
    (sum, one) =>
      sum +
      near.reduce(
        (part, other) => (other === one ? part : (part * (x - other.at)) / (one.at - other.at)),
        one.y,
      ),
    0,
  );
}

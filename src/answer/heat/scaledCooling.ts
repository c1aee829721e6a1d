/**
 * How the margins move with thrust and with chamber pressure, the shape held.
 *
 *   n = d ln(margin)/d ln(thrust) or d ln(margin)/d ln(p₀), over a step of ten per cent
 *
 * More thrust at the same pressure: all lengths grow as F^½, h_g shrinks as D^−0.2. More pressure at the same thrust: h_g grows as
 * p^0.8, lengths shrink as p^−½. Walls and lands keep their thickness; channels grow and shrink with the lengths, those at or
 * below 1 mm not narrower; the coolant's pressures and its stated loss grow with p₀.
 */

import type { HotPoint, HotSide } from '../../physics/heat/index.ts';
import { type CoolingSetup, type EngineCooling, engineCooling } from './engineCooling.ts';

export interface Exponents {
  /** Null: a margin of nothing has no power. */ readonly heatMargin: number | null;
  readonly wallMargin: number | null;
}

const STEP = 1.1;

export function withThrust(cooling: EngineCooling): Exponents {
  return exponents(cooling, scaled(cooling.setup, Math.sqrt(STEP), 1));
}

export function withPressure(cooling: EngineCooling): Exponents {
  return exponents(cooling, scaled(cooling.setup, 1 / Math.sqrt(STEP), STEP));
}

function exponents(before: EngineCooling, setup: CoolingSetup): Exponents {
  const after = engineCooling(setup);
  const of = (key: keyof Exponents): number | null =>
    before[key] > 0 && after[key] > 0 ? Math.log(after[key] / before[key]) / Math.log(STEP) : null;
  return { heatMargin: of('heatMargin'), wallMargin: of('wallMargin') };
}

function scaled(setup: CoolingSetup, length: number, pressure: number): CoolingSetup {
  const flow = length * length * pressure;
  const { supply, film, by } = setup;
  return {
    ...setup,
    sides: setup.sides.map(
      (side): HotSide => ({
        ...side,
        points: side.points.map((point) => scaledPoint(point, length, pressure)),
      }),
    ),
    supply: { ...supply, massFlow: supply.massFlow * flow },
    film: film && { ...film, massFlow: film.massFlow * flow },
    width: Math.max(setup.width * length, Math.min(setup.width, 1e-3)),
    inletPressure: setup.inletPressure * pressure,
    chamberPressure: setup.chamberPressure * pressure,
    by: 'drop' in by ? { drop: by.drop * pressure } : { depth: by.depth * length },
    skirtRadius: setup.skirtRadius && setup.skirtRadius * length,
  };
}

function scaledPoint(point: HotPoint, length: number, pressure: number): HotPoint {
  const coefficient = pressure ** 0.8 * length ** -0.2;
  return {
    ...point,
    axial: point.axial * length,
    radius: point.radius * length,
    path: point.path * length,
    girth: point.girth * length,
    diameter: point.diameter * length,
    pressure: point.pressure * pressure,
    massFlux: point.massFlux * pressure,
    uncorrected: point.uncorrected * coefficient,
    layerCoefficient: point.layerCoefficient * coefficient,
  };
}

/** The same engine with another share of Bartz's coefficient. */
export function withBartz(setup: CoolingSetup, share: number): EngineCooling {
  return engineCooling({
    ...setup,
    sides: setup.sides.map((side) => ({
      ...side,
      points: side.points.map((point) => ({ ...point, uncorrected: point.uncorrected * share })),
    })),
  });
}

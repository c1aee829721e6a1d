/**
 * The coolant on its way through the channels of one wall, against the gas: from the open end to the injector.
 *
 *   ṁ dh = q b ds,     −dp = (f/D)(ρv²/2) ds + G dv,     G = ρv = ṁ/A     (coolantLoss.ts)
 *
 * At each place the wall's balance is solved (wallBalance.ts). Where the coolant reaches its own limit it is held there, so that the heat
 * that arrives can be told all the same; `spentAt` says where.
 *
 * Not modelled: boiling at the wall below the bulk's boiling point, bends, manifolds, heat along the wall.
 */

import { type ChannelHere, type ChannelShape, channelAt, finFactor } from './channels.ts';
import { type Correlation, nusseltOf, outsideRange } from './coolantCorrelations.ts';
import type { CoolantFluid, CoolantState } from './coolantFluid.ts';
import { sectionAfter, sectionAt } from './coolantLoss.ts';
import type { CoolantLimits } from './coolantRecords.ts';
import type { GasModel, HotPoint } from './gasSide.ts';
import { arriving, type CoolantSide, passing, type WallMetal, wallBalance } from './wallBalance.ts';
import { wallConductivity } from './wallMaterial.ts';

export interface Jacket {
  readonly metal: WallMetal;
  readonly channels: ChannelShape;
  /** [m] girth of the gas's side at the throat */ readonly throatGirth: number;
  readonly correlation: Correlation;
  readonly limits: CoolantLimits;
  /** [m] of the channels' walls */ readonly roughness: number;
}

export interface CoolantFlow {
  readonly fluid: CoolantFluid;
  readonly massFlow: number;
  readonly pressure: number;
  readonly temperature: number;
}

export interface MarchPoint {
  readonly axial: number;
  readonly radius: number;
  /** T_aw [K] */ readonly recovery: number;
  readonly wallHot: number;
  readonly wallCold: number;
  readonly coolant: number;
  /** [Pa] of the coolant */ readonly pressure: number;
  readonly velocity: number;
  /** q [W/m²] */ readonly heatFlux: number;
  readonly radiation: number;
  /** Heat that can pass within the limits over what then arrives [–]; null where the wall cannot get so hot */
  readonly margin: number | null;
}

export interface CoolantMarch {
  /** From injector to the open end, as the wall's points. */ readonly points: readonly MarchPoint[];
  /** [W] */ readonly heat: number;
  /** [W] */ readonly radiation: number;
  /** [W] that it could take within its limits */ readonly capacity: number;
  /** What sets that limit. */ readonly capacityBy: string;
  readonly outlet: CoolantState;
  readonly pressureDrop: number;
  /** Index of the point where the coolant had reached its limit; null: nowhere. */ readonly spentAt:
    | number
    | null;
  /** What left the range of the correlation, in words; null: nothing. */ readonly outside: string | null;
}

interface Bulk {
  pressure: number;
  enthalpy: number;
  path: number;
}

export function coolantMarch(
  points: readonly HotPoint[],
  jacket: Jacket,
  flow: CoolantFlow,
  by: GasModel = 'bartz',
): CoolantMarch {
  const { fluid, massFlow } = flow;
  const start = fluid.enthalpyAt(flow.pressure, flow.temperature);
  const bulk: Bulk = { pressure: flow.pressure, enthalpy: start, path: 0 };
  const found: MarchPoint[] = Array(points.length);
  let [heat, radiation] = [0, 0];
  let spentAt: number | null = null;
  let outside: string | null = null;
  let before: { readonly flux: number; readonly sent: number } | null = null;
  const stream = { fluid, massFlow, roughness: jacket.roughness };
  let section = sectionAt(stream, channelHere(jacket, points.at(-1)!), bulk.pressure, bulk.enthalpy);
  let { state } = section;
  for (let i = points.length - 1; i >= 0; i--) {
    const point = points[i]!;
    const next = points[i + 1];
    const channel = channelHere(jacket, point);
    if (next !== undefined && before !== null) {
      const step = next.path - point.path;
      bulk.path += step;
      const limit = limitOf(fluid, jacket, bulk.pressure);
      bulk.enthalpy = Math.min(bulk.enthalpy + (before.flux * next.girth * step) / massFlow, limit.enthalpy);
      if (bulk.enthalpy === limit.enthalpy) spentAt ??= i;
      section = sectionAfter(stream, section, channel, step, bulk.enthalpy);
      bulk.pressure = section.state.pressure;
      state = fluid.stateAt(
        bulk.pressure,
        Math.min(bulk.enthalpy, limitOf(fluid, jacket, bulk.pressure).enthalpy),
      );
    }
    const side = coolantSide(jacket, fluid, channel, state, massFlow, bulk.path);
    const wall = wallBalance(point, jacket.metal, state.temperature, side.effective, by);
    outside ??= outsideRange(jacket.correlation, {
      reynolds: side.reynolds,
      prandtl: side.prandtl,
      wallOverBulk: wall.coldSide / state.temperature,
      reducedPressure: state.pressure / fluid.record.criticalPressure,
      wall: wall.coldSide,
      hottestKnown: fluid.temperatureSpan(state.pressure).high,
    });
    if (next !== undefined && before !== null) {
      const half = (next.path - point.path) / 2;
      heat += half * (before.flux * next.girth + wall.flux * point.girth);
      radiation += half * (before.sent * next.girth + wall.radiation * point.girth);
    }
    found[i] = {
      axial: point.axial,
      radius: point.radius,
      recovery: point.recovery,
      wallHot: wall.hotSide,
      wallCold: wall.coldSide,
      coolant: state.temperature,
      pressure: state.pressure,
      velocity: section.velocity,
      heatFlux: wall.flux,
      radiation: wall.radiation,
      margin: marginAt(point, jacket, state.temperature, side.effective, by),
    };
    before = { flux: wall.flux, sent: wall.radiation };
  }
  const limit = limitOf(fluid, jacket, bulk.pressure);
  return {
    points: found,
    heat,
    radiation,
    capacity: massFlow * Math.max(limit.enthalpy - start, 0),
    capacityBy: limit.by,
    outlet: state,
    pressureDrop: flow.pressure - bulk.pressure,
    spentAt,
    outside,
  };
}

function channelHere(jacket: Jacket, { girth }: HotPoint): ChannelHere {
  return channelAt(jacket.channels, girth, jacket.throatGirth);
}

function coolantSide(
  { correlation, metal }: Jacket,
  fluid: CoolantFluid,
  channel: ChannelHere,
  bulk: CoolantState,
  massFlow: number,
  path: number,
): { effective: CoolantSide; reynolds: number; prandtl: number } {
  const flux = massFlow / channel.area;
  const reynolds = (flux * channel.diameter) / bulk.viscosity;
  const prandtl = (bulk.viscosity * bulk.heatCapacity) / bulk.conductivity;
  // The search for the wall's temperature goes beyond the coolant's table; an answer that does is told (outsideRange).
  const { high } = fluid.temperatureSpan(bulk.pressure);
  const effective = (cold: number): number => {
    const nusselt = nusseltOf(correlation, {
      reynolds,
      prandtl,
      along: path / channel.diameter,
      bulk,
      wallTemperature: cold,
      wall: () => fluid.stateAt(bulk.pressure, fluid.enthalpyAt(bulk.pressure, Math.min(cold, high))),
    });
    const coefficient = (Math.max(nusselt, LAMINAR_NUSSELT) * bulk.conductivity) / channel.diameter;
    return coefficient * finFactor(channel, coefficient, wallConductivity(metal.material, cold));
  };
  return { effective, reynolds, prandtl };
}

/** Nu of laminar flow at constant flux in a round channel, the least there is (textbook value 4.36). */
const LAMINAR_NUSSELT = 4.36;

/** How hot the coolant may get, as an enthalpy, and by what. */
export function limitOf(
  fluid: CoolantFluid,
  { metal, limits }: Pick<Jacket, 'metal' | 'limits'>,
  pressure: number,
): { readonly enthalpy: number; readonly by: string } {
  const boiling = fluid.boilingEnthalpy(pressure);
  const candidates = [
    ...(limits.bulk ? [{ temperature: limits.bulk.temperature, by: limits.bulk.why }] : []),
    ...(limits.wall ? [{ temperature: limits.wall.temperature, by: limits.wall.why }] : []),
    { temperature: metal.material.limit.temperature, by: 'the wall would be as hot as it may be' },
  ];
  const hottest = fluid.temperatureSpan(pressure).high;
  const least = candidates.reduce((a, b) => (b.temperature < a.temperature ? b : a));
  if (least.temperature >= hottest) {
    return {
      enthalpy: boiling ?? fluid.highestEnthalpy(pressure),
      by: boiling === null ? `its table ends at ${hottest.toPrecision(3)} K` : 'it would boil',
    };
  }
  return { enthalpy: fluid.enthalpyAt(pressure, least.temperature), by: least.by };
}

function marginAt(
  point: HotPoint,
  { metal, limits }: Jacket,
  coolant: number,
  side: CoolantSide,
  by: GasModel,
): number | null {
  const hot = metal.material.limit.temperature;
  const arrives = arriving(point, hot, by);
  if (!(arrives > 0)) return null;
  return passing(metal, coolant, side, hot, limits.wall?.temperature ?? Infinity) / arrives;
}

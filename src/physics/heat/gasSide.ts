/**
 * What the gas does to a wall at each place: Bartz and the integral layer side by side, the temperature a wall without
 * cooling would take, radiation, and total heat.
 *
 *   q = h_g (T_aw − T_w) + q_radiation,     Q = ∫ q b ds
 *
 * The state is that of the wall itself: pressure from the flow field, the rest on the isentrope. Thickness of the stream and
 * hydraulic diameter: streamThickness.ts.
 */

import { boundaryLayer, type LayerGas, type LayerStation } from '../nozzle/losses/index.ts';
import { adiabaticWallTemperature, bartzSigma, bartzUncorrected, type StagnationGas } from './bartz.ts';
import { gasRadiation, type RadiatingGas } from './gasRadiation.ts';
import { hydraulicDiameter, type StreamForm } from './streamThickness.ts';

/** One wall along which the gas runs. */
export interface HotWall {
  /** In plain words: `wall`, `outer wall`, `plug`. */ readonly name: string;
  /** From the injector on, in the direction of the flow. */ readonly stations: readonly LayerStation[];
  /** Which of them lies in the throat. */ readonly throat: number;
  readonly form: StreamForm;
  /** D⁎/r_c [–] of Bartz */ readonly curvature: number;
}

export interface HotGas {
  readonly layer: LayerGas;
  /** [Pa] of the chamber */ readonly chamberPressure: number;
  /** [kg/s] */ readonly massFlow: number;
  readonly radiating: RadiatingGas;
}

export interface HotPoint {
  readonly axial: number;
  readonly radius: number;
  /** [m] along the wall from the injector */ readonly path: number;
  /** [m] across the flow */ readonly girth: number;
  readonly pressure: number;
  /** T of the gas outside the layer [K] */ readonly temperature: number;
  /** T₀/T [–] */ readonly cooling: number;
  /** T₀ [K] */ readonly stagnation: number;
  /** T_aw [K] */ readonly recovery: number;
  /** [kg/(m² s)] */ readonly massFlux: number;
  /** [m] */ readonly diameter: number;
  /** Bartz without σ [W/(m² K)] */ readonly uncorrected: number;
  /** Flux by the integral layer over T_aw − T_w, at the wall's supposed temperature [W/(m² K)] */
  readonly layerCoefficient: number;
  /** Of the radiating gas here. */ readonly radiating: RadiatingGas;
}

export interface HotSide {
  readonly name: string;
  readonly points: readonly HotPoint[];
  readonly throat: number;
}

/** Steps along a wall for heat: no longer than this share of its length. */
const FINEST = 1 / 90;

export function hotSide(wall: HotWall, gas: HotGas): HotSide {
  const { stations, throat } = refined(wall.stations, wall.throat);
  const { points: layerPoints } = boundaryLayer(stations, gas.layer);
  const chamber = gas.layer.edgeAt(gas.chamberPressure);
  const stagnationGas: StagnationGas = {
    viscosity: chamber.viscosity,
    heatCapacity: (chamber.prandtl * chamber.conductivity) / chamber.viscosity,
    prandtl: chamber.prandtl,
    temperature: chamber.temperature,
  };
  let path = 0;
  const points = stations.map((station, i): HotPoint => {
    const edge = gas.layer.edgeAt(station.pressure);
    const before = stations[i - 1];
    if (before !== undefined)
      path += Math.hypot(station.axial - before.axial, station.radius - before.radius);
    const girth = station.girth ?? 2 * Math.PI * station.radius;
    const massFlux = edge.density * edge.velocity;
    const diameter = hydraulicDiameter(wall.form, station.radius, gas.massFlow / massFlux, girth);
    const recovery = adiabaticWallTemperature(edge.temperature, chamber.temperature, edge.prandtl);
    const { heatFlux } = layerPoints[i]!;
    return {
      axial: station.axial,
      radius: station.radius,
      path,
      girth,
      pressure: station.pressure,
      temperature: edge.temperature,
      cooling: chamber.temperature / edge.temperature,
      stagnation: chamber.temperature,
      recovery,
      massFlux,
      diameter,
      uncorrected: bartzUncorrected(stagnationGas, massFlux, diameter, wall.curvature),
      layerCoefficient: heatFlux / (recovery - edge.wallTemperature),
      radiating: gas.radiating,
    };
  });
  return { name: wall.name, points, throat };
}

/** The gas-side models that stand beside each other. */
export type GasModel = 'bartz' | 'layer';

/** h_g [W/(m² K)] */
export function gasCoefficient(point: HotPoint, wallTemperature: number, by: GasModel = 'bartz'): number {
  if (by === 'layer') return point.layerCoefficient;
  return point.uncorrected * bartzSigma(wallTemperature / point.stagnation, point.cooling);
}

/** Radiation into a wall of that temperature [W/m²]. */
export function radiationTo(point: HotPoint, wallTemperature: number): number {
  const { radiating, temperature, pressure, diameter } = point;
  return gasRadiation(radiating, temperature, pressure, diameter, wallTemperature);
}

export interface HeatSum {
  /** All of it [W] */ readonly total: number;
  /** Of it by radiation [W] */ readonly radiation: number;
  /** Greatest flux [W/m²], and where. */ readonly peak: number;
  readonly peakAt: number;
}

/** Heat of one wall that has one temperature all along [W]. */
export function heatOf({ points }: HotSide, wallTemperature: number, by: GasModel = 'bartz'): HeatSum {
  // A gas colder than the wall takes heat from it: the greatest flux may lie below zero.
  let [total, radiation, peak, peakAt] = [0, 0, Number.NEGATIVE_INFINITY, 0];
  let before: { readonly flux: number; readonly sent: number } | null = null;
  points.forEach((point, i) => {
    const sent = radiationTo(point, wallTemperature);
    const flux = gasCoefficient(point, wallTemperature, by) * (point.recovery - wallTemperature) + sent;
    if (flux > peak) [peak, peakAt] = [flux, i];
    const last = points[i - 1];
    if (before !== null && last !== undefined) {
      const half = (point.path - last.path) / 2;
      total += half * (before.flux * last.girth + flux * point.girth);
      radiation += half * (before.sent * last.girth + sent * point.girth);
    }
    before = { flux, sent };
  });
  return { total, radiation, peak, peakAt };
}

/** Wetted area of a wall [m²]. */
export function wettedArea(points: readonly HotPoint[]): number {
  let area = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    area += ((a.girth + b.girth) / 2) * (b.path - a.path);
  }
  return area;
}

/** Long steps cut in equal parts, ln p straight along them. */
function refined(
  stations: readonly LayerStation[],
  throat: number,
): { stations: readonly LayerStation[]; throat: number } {
  const step = (i: number): number =>
    Math.hypot(stations[i]!.axial - stations[i - 1]!.axial, stations[i]!.radius - stations[i - 1]!.radius);
  let length = 0;
  for (let i = 1; i < stations.length; i++) length += step(i);
  const fine: LayerStation[] = [stations[0]!];
  let at = 0;
  for (let i = 1; i < stations.length; i++) {
    const [a, b] = [stations[i - 1]!, stations[i]!];
    const parts = Math.max(Math.ceil(step(i) / (length * FINEST)), 1);
    for (let j = 1; j <= parts; j++) fine.push(j === parts ? b : between(a, b, j / parts));
    if (i === throat) at = fine.length - 1;
  }
  return { stations: fine, throat: at };
}

function between(a: LayerStation, b: LayerStation, share: number): LayerStation {
  const mix = (x: number, y: number): number => x + (y - x) * share;
  return {
    axial: mix(a.axial, b.axial),
    radius: mix(a.radius, b.radius),
    pressure: a.pressure * (b.pressure / a.pressure) ** share,
    ...(a.girth !== undefined && b.girth !== undefined && { girth: mix(a.girth, b.girth) }),
  };
}

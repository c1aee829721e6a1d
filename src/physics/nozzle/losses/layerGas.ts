/**
 * The gas as a wall layer needs it: state and viscosity along the expansion, tabulated once an engine, and the gas
 * between the outer flow and the wall.
 *
 * Where the layer is hotter than the outer flow, the slowed gas has the temperature and molar mass that the expansion
 * itself had at that enthalpy: the chemistry that kept up on the way out keeps up on the way back (the lower pressure
 * neglected). Where it is colder, the composition of the outer flow is held down to the wall.
 */

import { cubicBetween } from '../../../numerics/cubicBetween.ts';
import { MOLAR_GAS_CONSTANT } from '../../constants.ts';
import type { Expansion, FlowState } from '../../gas/flow.ts';
import {
  estimatedTransport,
  type GasTransport,
  type TransportData,
  transportOf,
} from '../../gas/transport.ts';

/** Outer flow at one place, and the gas on the wall beneath it. SI units. */
export interface LayerEdge {
  readonly pressure: number;
  readonly temperature: number;
  readonly density: number;
  readonly velocity: number;
  readonly enthalpy: number;
  /** [kg/mol] */ readonly molarMass: number;
  readonly viscosity: number;
  /** [W/(m K)] */ readonly conductivity: number;
  readonly prandtl: number;
  /** [K] */ readonly wallTemperature: number;
  /** [Pa s], composition of the outer flow at the wall's temperature */ readonly wallViscosity: number;
  /** [J/kg], likewise */ readonly wallEnthalpy: number;
}

export interface LayerGas {
  /** The outer flow at a pressure on the wall [Pa]. */
  edgeAt(pressure: number): LayerEdge;
  /** [Pa] of the subsonic flow where the duct is `areaRatio` times as wide as its throat */
  subsonicPressure(areaRatio: number): number;
  /** [Pa] likewise of the supersonic flow, not below the end of the table */
  supersonicPressure(areaRatio: number): number;
  /** T/M of slowed gas at an enthalpy [J/kg] not below the edge's, over that of the edge [–]. */
  warmth(enthalpy: number, edge: LayerEdge): number;
  /** [K] of the wall on the gas side */ readonly wallTemperature: number;
  /** Largest mole share along the expansion whose viscosity is an estimate from its molar mass [–]. */
  readonly estimated: number;
}

/**
 * Step of the table in ln p. Counted from the chamber, so that the state at a place does not hang on how far the table goes;
 * only the last step, down to the lowest pressure asked for, is another.
 */
const STEP = 0.28;

interface Node {
  readonly lnPressure: number;
  readonly enthalpy: number;
  /** dh/d ln p = p/ρ [J/kg] */ readonly slope: number;
  readonly lnTemperature: number;
  readonly lnMolarMass: number;
  readonly lnViscosity: number;
  readonly lnWallViscosity: number;
  readonly lnConductivity: number;
  readonly prandtl: number;
  /** Mean cp between wall and outer flow, composition held [J/(kg K)]. */ readonly heatCapacity: number;
}

/**
 * @param lowestPressure [Pa] down to which the wall's pressure is asked for
 * @param wallTemperature [K] of the wall on the gas side; no wall is hotter than the chamber
 * @param data constants of the species; null for a gas of unknown composition, whose viscosity is then an estimate
 */
export function layerGas(
  expansion: Expansion,
  lowestPressure: number,
  wallTemperature: number,
  data: TransportData | null,
): LayerGas {
  const { chamber, throat } = expansion;
  const wall = Math.min(wallTemperature, chamber.temperature);
  let estimated = 0;
  const depth = Math.log(chamber.pressure / lowestPressure);
  const cells = Math.max(Math.ceil(depth / STEP), 1);
  const nodes = Array.from({ length: cells + 1 }, (_, i): Node => {
    const pressure = i === cells ? lowestPressure : chamber.pressure * Math.exp(-STEP * i);
    const state = i === 0 ? chamber : expansion.atPressure(pressure);
    const composition = data === null ? null : state.composition();
    const at = (temperature: number): GasTransport =>
      composition === null || data === null
        ? estimatedTransport(state.molarMass, state.gammaFrozen, temperature)
        : transportOf(composition, temperature, data);
    const outer = at(state.temperature);
    const cold = at(wall);
    estimated = Math.max(estimated, outer.estimated);
    return nodeOf(state, outer, cold);
  });

  function edgeAt(pressure: number): LayerEdge {
    const below = Math.min(Math.max(Math.log(chamber.pressure / pressure), 0), depth);
    const i = Math.min(Math.floor(below / STEP), cells - 1);
    const a = nodes[i]!;
    const b = nodes[i + 1]!;
    const step = b.lnPressure - a.lnPressure;
    const t = (-below - (a.lnPressure - nodes[0]!.lnPressure)) / step;
    const enthalpy = cubicBetween(a.enthalpy, a.slope * step, b.enthalpy, b.slope * step, t);
    const temperature = Math.exp(mix(a.lnTemperature, b.lnTemperature, t));
    const molarMass = Math.exp(mix(a.lnMolarMass, b.lnMolarMass, t));
    return {
      pressure,
      temperature,
      density: (pressure * molarMass) / (MOLAR_GAS_CONSTANT * temperature),
      velocity: Math.sqrt(2 * Math.max(chamber.enthalpy - enthalpy, 0)),
      enthalpy,
      molarMass,
      viscosity: Math.exp(mix(a.lnViscosity, b.lnViscosity, t)),
      conductivity: Math.exp(mix(a.lnConductivity, b.lnConductivity, t)),
      prandtl: mix(a.prandtl, b.prandtl, t),
      wallTemperature: wall,
      wallViscosity: Math.exp(mix(a.lnWallViscosity, b.lnWallViscosity, t)),
      wallEnthalpy: enthalpy - mix(a.heatCapacity, b.heatCapacity, t) * (temperature - wall),
    };
  }

  /** Between the throat, where the flux is greatest, and `far`, in ln p. */
  function pressureAt(areaRatio: number, far: number): number {
    let near = Math.log(throat.pressure);
    let away = Math.log(far);
    for (let i = 0; i < 40; i++) {
      const middle = (near + away) / 2;
      const { density, velocity } = edgeAt(Math.exp(middle));
      if (throat.massFlux > areaRatio * density * velocity) away = middle;
      else near = middle;
    }
    return Math.exp((near + away) / 2);
  }

  return {
    edgeAt,
    estimated,
    wallTemperature: wall,
    subsonicPressure: (areaRatio) => pressureAt(areaRatio, chamber.pressure),
    supersonicPressure: (areaRatio) => pressureAt(areaRatio, lowestPressure),
    warmth(enthalpy, edge) {
      let i = 0;
      while (i < cells - 1 && nodes[i + 1]!.enthalpy > enthalpy) i += 1;
      const a = nodes[i]!;
      const b = nodes[i + 1]!;
      const t = (a.enthalpy - enthalpy) / (a.enthalpy - b.enthalpy);
      const ratio = mix(a.lnTemperature - a.lnMolarMass, b.lnTemperature - b.lnMolarMass, t);
      return Math.exp(ratio) / (edge.temperature / edge.molarMass);
    },
  };
}

function nodeOf(state: FlowState, outer: GasTransport, cold: GasTransport): Node {
  return {
    lnPressure: Math.log(state.pressure),
    enthalpy: state.enthalpy,
    slope: state.pressure / state.density,
    lnTemperature: Math.log(state.temperature),
    lnMolarMass: Math.log(state.molarMassGas),
    lnViscosity: Math.log(outer.viscosity),
    lnWallViscosity: Math.log(cold.viscosity),
    lnConductivity: Math.log(outer.conductivity),
    prandtl: outer.prandtl,
    heatCapacity: (outer.heatCapacity + cold.heatCapacity) / 2,
  };
}

function mix(a: number, b: number, t: number): number {
  return a + (b - a) * t;
}

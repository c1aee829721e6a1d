/** What an engine delivers of its ideal specific impulse, and where the rest goes. */

import { attempt } from '../numerics/problem.ts';
import { STANDARD_GRAVITY } from '../physics/constants.ts';
import type { Expansion } from '../physics/gas/flow.ts';
import { thrustCoefficientOf } from '../physics/nozzle/index.ts';
import {
  type Budget,
  COOLANT_GAIN,
  type Efficiency,
  ENERGY_RELEASE_BAND,
  kineticsLoss,
  LAYER_SCATTER,
  type LayerGas,
  layerGas,
  lossBudget,
  type NozzleLossItem,
  USUAL_WALL_TEMPERATURE,
} from '../physics/nozzle/losses/index.ts';
import type { Contour, NozzleModel } from '../physics/nozzle/model.ts';
import type { EngineInput } from '../study/model.ts';
import { statedSpan } from '../study/plainQuantity.ts';
import { dropLag } from './dropLag.ts';
import type { LossBudget, WallLayer } from './model.ts';
import { ERROR_NAMES } from './scatter/model.ts';
import { type EngineLayer, engineLayer } from './wallLayer.ts';
import type { WorkingGas } from './workingGas.ts';

/** Losses of one engine at one size. */
export interface EngineLosses {
  readonly budget: LossBudget;
  /** Thrust lost at any ambient pressure while the nozzle runs full, over p₀ A_t [–]. */
  readonly coefficientLost: number;
  /** Mass flow over that without a wall layer [–]. */ readonly layerDischarge: number;
}

/** All of the losses that does not hang on the size, found once; a function of the wall for the rest. */
export function lossesOf(
  input: EngineInput,
  gas: WorkingGas,
  nozzle: NozzleModel,
): (contour: Contour, hasWall: boolean) => EngineLosses {
  const { expansion } = nozzle;
  const counted = input.losses === 'default';
  const held = heldItem(gas, nozzle);
  const ideal = idealImpulse(expansion, nozzle) + (held?.specificImpulse ?? 0);
  const inField = vacuumImpulse(nozzle);
  const notAlongAxis = withoutRounding(idealImpulse(expansion, nozzle) - inField, inField);
  const flow: NozzleLossItem = {
    name: 'flow not along the axis',
    specificImpulse: notAlongAxis,
    band: same(notAlongAxis / ideal),
    source: 'flow at the lip against parallel flow at the same area ratio',
  };
  const kinetics = counted ? kineticsItem(input, gas, nozzle, ideal) : null;
  const efficiency = efficiencyOf(input);
  let wallGas: LayerGas | null = null;
  const gasAtWall = (): LayerGas => {
    wallGas ??= layerGas(expansion, lowestOnWall(nozzle), USUAL_WALL_TEMPERATURE, gas.transport);
    return wallGas;
  };
  return (contour, hasWall) => {
    const layer = counted && hasWall ? engineLayer(contour, nozzle, gasAtWall()) : null;
    const friction = layer && layerItem(layer, nozzle, contour, inField, ideal);
    const returned =
      layer && friction && input.propellants.kind === 'burnt'
        ? returnedItem(layer, friction, nozzle, contour, ideal)
        : null;
    const drops = counted && hasWall ? dropLag(contour, nozzle, gasAtWall(), ideal) : null;
    const items = [held, flow, friction, returned, kinetics, drops].filter((item) => item !== null);
    const budget: Budget = lossBudget(ideal, items, efficiency);
    const lost = [friction, returned, kinetics, drops].reduce(
      (sum, item) => sum + (item?.specificImpulse ?? 0),
      0,
    );
    const discharge = layer?.discharge ?? 1;
    return {
      budget: { ...budget, layer: layer && layerFigures(layer, gasAtWall()) },
      coefficientLost: coefficientLost(lost, inField, discharge, nozzle),
      layerDischarge: discharge,
    };
  };
}

/** A difference of two equal numbers is rounding, and no loss to print. */
function withoutRounding(difference: number, of: number): number {
  return Math.abs(difference) < 1e-9 * of ? 0 : difference;
}

/** C_F · c* / (g₀ C_D) in vacuum, flowing full [s], before friction, slow chemistry and efficiency. */
function vacuumImpulse(nozzle: NozzleModel): number {
  const { characteristicVelocity } = nozzle.expansion;
  const coefficient = nozzle.at(0).thrustCoefficientIfFull;
  return (coefficient * characteristicVelocity) / (nozzle.dischargeCoefficient * STANDARD_GRAVITY);
}

/** Parallel one-dimensional flow at the area ratio in vacuum [s]. */
function idealImpulse(expansion: Expansion, nozzle: NozzleModel): number {
  const { areaRatio } = nozzle.spec;
  const exit = expansion === nozzle.expansion ? nozzle.exit : expansion.atAreaRatio(areaRatio, 'supersonic');
  const coefficient = thrustCoefficientOf(expansion, exit, areaRatio, 1, 0);
  return (coefficient * expansion.characteristicVelocity) / STANDARD_GRAVITY;
}

/** What the study itself takes away by holding the composition; null where it lets it follow. */
function heldItem({ otherwise, expansion }: WorkingGas, nozzle: NozzleModel): NozzleLossItem | null {
  if (otherwise === null || expansion.chemistry === 'shifting') return null;
  const shifting = attempt(() => idealImpulse(otherwise('shifting'), nozzle));
  if (!shifting.ok) return null;
  const specificImpulse = shifting.value - idealImpulse(expansion, nozzle);
  return {
    name: 'composition held, as the study states',
    specificImpulse,
    band: same(specificImpulse / shifting.value),
    source: 'shifting against held composition, both one-dimensional',
  };
}

function kineticsItem(
  input: EngineInput,
  { otherwise, elements }: WorkingGas,
  nozzle: NozzleModel,
  ideal: number,
): NozzleLossItem | null {
  if (otherwise === null || input.chemistry.kind !== 'shifting') return null;
  const frozen = attempt(() => idealImpulse(otherwise('frozen'), nozzle));
  const gap = frozen.ok ? 1 - frozen.value / idealImpulse(nozzle.expansion, nozzle) : null;
  const { share, low, high, source, error } = kineticsLoss(elements, gap);
  return { name: 'slow chemistry', specificImpulse: share * ideal, band: { low, high }, source, error };
}

function layerItem(
  { thrustLost, discharge }: EngineLayer,
  nozzle: NozzleModel,
  contour: Contour,
  inField: number,
  ideal: number,
): NozzleLossItem {
  const { chamber, characteristicVelocity } = nozzle.expansion;
  const pressureTimesArea = chamber.pressure * Math.PI * contour.throatRadius ** 2;
  const perCoefficient = characteristicVelocity / (nozzle.dischargeCoefficient * STANDARD_GRAVITY);
  // A narrower throat before the same exit passes less gas, which expands further: the push of the exit pressure stays.
  const exitPush = (nozzle.exit.pressure * nozzle.spec.areaRatio) / chamber.pressure;
  const full = inField / perCoefficient;
  const left = full - thrustLost / pressureTimesArea - (1 - discharge) * (full - exitPush);
  const specificImpulse = inField - (left * perCoefficient) / discharge;
  const share = specificImpulse / ideal;
  return {
    name: 'friction on the wall',
    specificImpulse,
    band: { low: share * LAYER_SCATTER.low, high: share * LAYER_SCATTER.high },
    source: LAYER_SCATTER.source,
    error: ERROR_NAMES.friction,
  };
}

/**
 * The heat that the wall takes comes back with the propellant that cools it: the core enters richer by Δh = Q/ṁ,
 *
 *   ΔI/I = Δh (1 − T_e/T_0)/u_e²
 *
 * since at the same pressures the added entropy Δh/T_0 leaves Δh T_e/T_0 in the exhaust. A gain; none where nothing cools,
 * and never more than the published band's top, for a coolant takes up only so much, nor than what friction takes: the heat only
 * goes round, so that no wall makes an engine better than one without walls.
 */
function returnedItem(
  { heatFlow }: EngineLayer,
  friction: NozzleLossItem,
  { expansion, exit }: NozzleModel,
  { throatRadius }: Contour,
  ideal: number,
): NozzleLossItem {
  const massFlow = expansion.throat.massFlux * Math.PI * throatRadius ** 2;
  const work = 1 - exit.temperature / expansion.chamber.temperature;
  const computed = Math.max(((heatFlow / massFlow) * work) / exit.velocity ** 2, 0);
  const most = Math.min(COOLANT_GAIN.high, friction.specificImpulse / ideal);
  const share = -Math.min(computed, most);
  return {
    name: 'heat that the coolant brings back',
    specificImpulse: share * ideal,
    band: { low: -Math.min(LAYER_SCATTER.high * computed, most), high: 0 },
    source: `heat of the wall layer, taken up by a propellant that then burns, no more than friction takes, ${COOLANT_GAIN.source}; 0 where the wall is cooled otherwise or not at all`,
    error: ERROR_NAMES.returned,
  };
}

/** ΔC_F so that (C_F − ΔC_F) c* / (g₀ C_D) is the impulse left [–]; the mass flow has the layer's discharge in it. */
function coefficientLost(lost: number, inField: number, discharge: number, nozzle: NozzleModel): number {
  const perCoefficient =
    nozzle.expansion.characteristicVelocity / (nozzle.dischargeCoefficient * STANDARD_GRAVITY);
  return (inField - (inField - lost) * discharge) / perCoefficient;
}

function layerFigures(layer: EngineLayer, { wallTemperature }: LayerGas): WallLayer {
  return { ...layer, wallTemperature };
}

/** [Pa] down to which the gas on the wall is asked for. */
export function lowestOnWall(nozzle: NozzleModel): number {
  const field = nozzle.wallStations() ?? [];
  const lowest = field.reduce((least, { pressure }) => Math.min(least, pressure), nozzle.exit.pressure);
  return Math.max(0.98 * lowest, nozzle.expansion.lowestPressure);
}

function efficiencyOf({ chamber: { efficiency } }: EngineInput): Efficiency {
  const { value, byDefault } = efficiency;
  if (byDefault && value < 1) {
    return {
      value,
      low: 1 - ENERGY_RELEASE_BAND.high,
      high: 1 - ENERGY_RELEASE_BAND.low,
      source: ENERGY_RELEASE_BAND.source,
    };
  }
  const { low, high } = statedSpan(efficiency) ?? { low: value, high: value };
  return {
    value,
    low,
    high: Math.min(high, 1),
    source: byDefault ? 'nothing is left unburnt' : 'chamber efficiency as stated',
  };
}

function same(share: number): { readonly low: number; readonly high: number } {
  return { low: share, high: share };
}

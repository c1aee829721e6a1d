/** Seeded random cooled walls over the whole stated range, each run and held to laws. Invented designs. */

import { readFileSync } from 'node:fs';
import { attempt } from '../../src/numerics/problem.ts';
import {
  adiabaticWallTemperature,
  bartzUncorrected,
  type CoolantFluid,
  type CoolantLimits,
  type CoolantRecord,
  coolantFluid,
  coolantMarch,
  depthForDrop,
  type HotPoint,
  type WallMaterialRecord,
} from '../../src/physics/heat/index.ts';
import { randomFrom } from './random.ts';

const read = <T>(path: string): T =>
  JSON.parse(readFileSync(new URL(`../../data/${path}`, import.meta.url), 'utf8')) as T;

interface Stock {
  readonly fluids: readonly CoolantFluid[];
  readonly limits: readonly CoolantLimits[];
  readonly walls: readonly WallMaterialRecord[];
}

export function coolingStock(): Stock {
  const { coolants } = read<{ coolants: readonly CoolantLimits[] }>('coolants/index.json');
  return {
    limits: coolants,
    fluids: coolants.map(({ id }) => coolantFluid(read<CoolantRecord>(`coolants/${id}.json`))),
    walls: read<{ walls: readonly WallMaterialRecord[] }>('walls.json').walls,
  };
}

/** Typed errors that nature or the data stand behind. */
export const PHYSICAL_REASONS: Readonly<Record<string, string>> = {
  'coolant-near-critical': 'the coolant would pass beside its critical point, where no correlation holds',
  'coolant-pressure-outside-table': 'below one bar, or above 600 bar, nothing is tabulated',
  'coolant-too-hot': 'it would enter as vapour',
  'coolant-too-cold': 'it would freeze under so much pressure',
  'coolant-pressure-lost': 'it expands so much as it is heated that the channels take all its pressure',
  'coolant-chokes':
    'it expands so much as it is heated that it comes near the speed of sound in the channels',
  'channels-cannot-carry': 'so much coolant does not pass such channels at the wanted loss',
};

export interface CoolingVerdict {
  /** `solved`, the code of the typed error, or `wrong …` when a law is broken. */ readonly outcome: string;
  readonly detail: string;
}

const POINTS = 120;

/** A round wall on a perfect gas of γ = 1.2: chamber, throat, bell. */
function wallOf(throat: number, contraction: number, exit: number, pressure: number): readonly HotPoint[] {
  const gas = { viscosity: 1e-4, heatCapacity: 2400, prandtl: 0.6, temperature: 3400 };
  const massFlux = (radius: number): number => (pressure / 1750) * (throat / radius) ** 2;
  let path = 0;
  return Array.from({ length: POINTS }, (_, i): HotPoint => {
    const s = i / (POINTS - 1);
    const radius =
      s < 0.3
        ? throat * Math.sqrt(contraction)
        : s < 0.45
          ? throat * (1 + (Math.sqrt(contraction) - 1) * ((0.45 - s) / 0.15))
          : throat * (1 + (Math.sqrt(exit) - 1) * ((s - 0.45) / 0.55));
    const supersonic = s > 0.45 ? (throat / radius) ** 0.6 : 1;
    const temperature = 3400 * (s < 0.45 ? 0.98 : 0.91 * supersonic);
    if (i > 0) path += (8 * throat) / POINTS;
    return {
      axial: path,
      radius,
      path,
      girth: 2 * Math.PI * radius,
      pressure: pressure * (s < 0.45 ? 0.95 : 0.56 * (throat / radius) ** 2.4),
      temperature,
      cooling: 3400 / temperature,
      stagnation: 3400,
      recovery: adiabaticWallTemperature(temperature, 3400, 0.6),
      massFlux: massFlux(radius),
      diameter: 2 * radius,
      uncorrected: bartzUncorrected(gas, massFlux(radius), 2 * radius, 2.1),
      layerCoefficient: 1000,
      radiating: { water: 0.5, dioxide: 0.1 },
    };
  });
}

export function runCoolingCase(seed: number, { fluids, limits, walls }: Stock): CoolingVerdict {
  const random = randomFrom(seed);
  const fluid = random.pick(fluids);
  const throat = 10 ** random.between(-2.2, -0.6);
  const pressure = 10 ** random.between(6, 7.4);
  const points = wallOf(throat, random.between(1.6, 6), random.between(3, 60), pressure);
  const share = random.between(0.1, 1);
  const isFeeble = fluid.record.id.endsWith('hydrogen');
  const massFlow = ((pressure * Math.PI * throat ** 2) / 1750) * (isFeeble ? 0.14 : 0.27) * share;
  const drop = pressure * random.between(0.1, 0.5);
  const { criticalPressure, liquid } = fluid.record;
  // As a study's default does: away from the critical pressure.
  const needed = 1.2 * pressure;
  const isNear = needed + drop > 0.92 * criticalPressure && needed < 1.1 * criticalPressure;
  const inlet = drop + (isNear ? 1.1 * criticalPressure : needed);
  const lowest = liquid.temperature[0]!;
  const temperature = Math.max(lowest + 8, 20.3) + random.between(0, 0.25) * fluid.record.criticalTemperature;
  const jacket = {
    metal: { material: random.pick(walls), thickness: random.between(4e-4, 2e-3) },
    throatGirth: 2 * Math.PI * throat,
    correlation: isFeeble ? ('taylor' as const) : ('gnielinski' as const),
    limits: limits.find(({ id }) => id === fluid.record.id)!,
    roughness: 5e-6,
  };
  const shape = { width: Math.max(1e-3, 0.02 * throat), land: random.between(5e-4, 2e-3) };
  const flow = { fluid, massFlow, pressure: inlet, temperature };
  const outcome = attempt(() => {
    const depth = depthForDrop(points, jacket, shape, flow, drop);
    return coolantMarch(points, { ...jacket, channels: { ...shape, depth } }, flow);
  });
  if (!outcome.ok) return { outcome: outcome.problem.code, detail: outcome.problem.what };
  return brokenLaw(outcome.value, flow) ?? { outcome: 'solved', detail: '' };
}

function brokenLaw(
  march: ReturnType<typeof coolantMarch>,
  flow: {
    readonly fluid: CoolantFluid;
    readonly massFlow: number;
    readonly pressure: number;
    readonly temperature: number;
  },
): CoolingVerdict | null {
  const wrong = (what: string): CoolingVerdict => ({
    outcome: `wrong ${what}`,
    detail: JSON.stringify({ ...march, points: march.points[0] }),
  });
  for (const { recovery, wallHot, wallCold, coolant, heatFlux } of march.points) {
    if (![recovery, wallHot, wallCold, coolant, heatFlux].every(Number.isFinite)) return wrong('number');
    if (heatFlux > 0 && !(wallHot >= wallCold - 1e-6 && wallCold >= coolant - 1e-3)) return wrong('order');
  }
  if (!(march.capacity >= 0) || !(march.pressureDrop > 0)) return wrong('sign');
  if (march.spentAt !== null) return null;
  const start = flow.fluid.enthalpyAt(flow.pressure, flow.temperature);
  const taken = flow.massFlow * (march.outlet.enthalpy - start);
  return Math.abs(taken / march.heat - 1) < 0.03 ? null : wrong('balance');
}

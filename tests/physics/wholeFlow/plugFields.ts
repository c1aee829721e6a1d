/** Plugs as fields beside their models by characteristics, for the tests and for the longer campaign. */

import { flowKernel } from '../../../src/physics/euler/index.ts';
import { expandPerfect } from '../../../src/physics/gas/index.ts';
import { type NozzleModel, nozzleModel } from '../../../src/physics/nozzle/index.ts';
import {
  atWall,
  type BlockFlow,
  type PlugFlow,
  plugFlow,
  preparePlug,
  pushesOfPlug,
  ROUND_PLUG,
  settle,
  sizeOfPlug,
  thrustOfPlug,
} from '../../../src/physics/wholeFlow/index.ts';
import { wallPressureOf } from './wallPressureOf.ts';

const GAMMA = 1.2;
const THROAT_RADIUS = 0.1;
const expansion = expandPerfect({ gamma: GAMMA, molarMass: 0.022, temperature: 3500, pressure: 100e5 });
const throatArea = Math.PI * THROAT_RADIUS ** 2;
const unit = expansion.chamber.pressure * throatArea;

/**
 * Of a plane throat whose walls are arcs of R half gaps, over that of a straight sonic line: 1 − (γ + 1)/(90 (1 + R)²), the first
 * term of I. M. Hall, Quart. J. Mech. Appl. Math. 15 (1962), 487, in 1/(1 + R) (from memory).
 */
export const passesByArcs = (arc: number): number => 1 - (GAMMA + 1) / (90 * (1 + arc) ** 2);

export type Form = 'annular' | 'linear';

/**
 * Fields of a plug, at each pressure of the air [Pa] and with so many cells across the ring, every one from the one before; each
 * with what it differs by from the model, as shares.
 */
export function plugIn(
  form: Form,
  areaRatio: number,
  kept: number,
  asked: readonly (readonly [ambient: number, across: number])[],
) {
  const model = nozzleModel({ kind: 'plug', form, areaRatio, kept }, expansion);
  const contour = model.contour!(THROAT_RADIUS, {
    contractionRatio: 3,
    characteristicLength: 1,
    convergingAngle: Math.PI / 6,
  });
  const { wall, width, throatArc, throatGap } = contour.plug!;
  const prepared = preparePlug({
    expansion,
    cowl: contour.wall,
    plug: wall,
    width: width ?? null,
    throatRadius: THROAT_RADIUS,
    kernel: flowKernel(32),
  });
  let from: readonly BlockFlow[] | null = null;
  const found = asked.map(([ambient, across]) => {
    const air = { pressure: ambient, density: ambient / (287 * 260), speed: 0 };
    const plug = plugFlow(prepared, { air }, sizeOfPlug(prepared, 8, across), from);
    const settled = settle(plug.flow, {
      // A wave that began with the mesh is gone when it has crossed some fifty times the cells across.
      least: Math.max(1200, 50 * across),
      most: 6000,
      watch: () => {
        const { stream, basePressure, massFlow } = pushesOfPlug(plug);
        return [thrustOfPlug(plug), basePressure, stream, massFlow];
      },
      still: [5e-4, 1, 5e-4, 5e-4],
    });
    from = settled.averages.blocks();
    const [thrust, , stream, massFlow] = settled.watched.map(({ mean }) => mean);
    const { parts, thrustCoefficient } = model.at(ambient);
    const gas = parts.reduce((sum, part) => sum + (part.surface === 'base' ? 0 : part.coefficient), 0);
    const passes = massFlow! / expansion.throat.massFlux / throatArea;
    return {
      settled,
      /** [Pa] */ basePressure: pushesOfPlug(plug).basePressure,
      /** Gas that comes through over that of a straight sonic line. */ passes,
      /** Thrust coefficient of the gas, base aside; for each kilogram; and of the base over the whole. */
      gas: stream! / unit / gas - 1,
      perMass: stream! / unit / gas / passes - 1,
      base: ((thrust! - stream!) / unit - (thrustCoefficient! - gas)) / thrustCoefficient!,
      whole: thrust! / unit / thrustCoefficient! - 1,
      /** Above and at design the model's wall is the same for any air. */ wall: wallAgainst(
        plug,
        from,
        model,
        form,
      ),
    };
  });
  return { found, arc: throatArc / (throatGap / 2) };
}

/** Of the plug behind the ring: what its pressure pushes, over that by the model, less 1; and its departure in the mean, from a tenth of the length on. */
function wallAgainst({ size }: PlugFlow, blocks: readonly BlockFlow[], model: NozzleModel, form: Form) {
  const { mesh, pressure } = blocks[ROUND_PLUG]!;
  const stations = model.wallStations!()!;
  const modelAt = wallPressureOf(stations);
  const inside = (y: number): number => (form === 'annular' ? y * y : y);
  const [start, end] = [mesh.x[0]!, mesh.x[size.plug]!];
  let [push, pushByModel, departs, rest] = [0, 0, 0, 0];
  for (let i = 0; i < size.plug; i++) {
    const of = (j: number): number => pressure[j * mesh.ni + i]!;
    const here = atWall(of(0), of(1), of(2));
    const x = (mesh.x[i]! + mesh.x[i + 1]!) / 2;
    const byModel = modelAt(x / THROAT_RADIUS);
    const area = inside(mesh.y[i]!) - inside(mesh.y[i + 1]!);
    push += here * area;
    pushByModel += byModel * area;
    if (x < start + 0.1 * (end - start)) continue;
    departs += Math.abs(here - byModel) * area;
    rest += byModel * area;
  }
  return { push: push / pushByModel - 1, departs: departs / rest };
}

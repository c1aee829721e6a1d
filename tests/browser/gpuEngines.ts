/** Engines on the coarse mesh, ready to be stepped. */

import type { Flow, FlowKernel } from '../../src/physics/euler/index.ts';
import { expandPerfect } from '../../src/physics/gas/index.ts';
import { chamberAndNozzleContour, nozzleModel } from '../../src/physics/nozzle/index.ts';
import {
  plugFlow,
  preparePlug,
  prepareRound,
  roundFlow,
  roundSize,
  sizeOfPlug,
  thrustOf,
  thrustOfPlug,
} from '../../src/physics/wholeFlow/index.ts';

export interface EngineFlow {
  readonly flow: Flow;
  readonly thrust: () => number;
}

const expansion = expandPerfect({ gamma: 1.2, molarMass: 0.022, temperature: 3500, pressure: 100e5 });
const throatRadius = 0.1;
const shape = { contractionRatio: 3, characteristicLength: 1, convergingAngle: Math.PI / 6 };
const thick = { pressure: 500_000, density: 500_000 / (287 * 290), speed: 0 };
const air = { pressure: 60_000, density: 60_000 / (287 * 260), speed: 0 };

/** A bell of area ratio 15. @param leavesAt [m] behind the throat where its gas is made to leave the wall, in thick air; null: nowhere, in thin air */
function round(kernel: FlowKernel | null, leavesAt: number | null): EngineFlow {
  const { wall } = chamberAndNozzleContour({ kind: 'bell', areaRatio: 15, length: 0.8 }, throatRadius, shape);
  const prepared = prepareRound({ expansion, wall, throatRadius, kernel });
  const made = roundFlow(
    prepared,
    { air: leavesAt === null ? air : thick, leavesAt },
    roundSize(prepared, 8, 8),
    null,
  );
  return { flow: made.flow, thrust: () => thrustOf(made) };
}

export const bell = (kernel: FlowKernel | null): EngineFlow => round(kernel, null);
export const leftBell = (kernel: FlowKernel | null): EngineFlow => round(kernel, 0.2);

/** Annular, area ratio 12. */
export function plug(kernel: FlowKernel | null): EngineFlow {
  const model = nozzleModel({ kind: 'plug', form: 'annular', areaRatio: 12, kept: 0.4 }, expansion);
  const contour = model.contour!(throatRadius, shape);
  const prepared = preparePlug({
    expansion,
    cowl: contour.wall,
    plug: contour.plug!.wall,
    width: null,
    throatRadius,
    kernel,
  });
  const made = plugFlow(prepared, { air }, sizeOfPlug(prepared, 8, 8), null);
  return { flow: made.flow, thrust: () => thrustOfPlug(made) };
}

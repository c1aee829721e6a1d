import type { Expansion, FlowState } from '../../physics/gas/flow.ts';
import { divergenceFactorOfBell } from '../../physics/nozzle/bellNozzle.ts';
import { bellAnglesOf } from '../../physics/nozzle/bellShape.ts';
import { divergenceFactorOfCone } from '../../physics/nozzle/coneNozzle.ts';
import type { NozzleSpec } from '../../physics/nozzle/index.ts';
import { meanExponent } from '../../physics/nozzle/tabulatedAngles.ts';
import type { EngineInput, Nozzle } from '../../study/model.ts';
import { descriptionOf, specOf } from '../solveEngine.ts';
import type { WorkingGas } from '../workingGas.ts';
import { meanFlow } from './meanFlow.ts';
import type { EngineBasis, MeanExit, MeanFlow } from './model.ts';

/** The flow goes on a little beyond the exit: pressures at the wall of a lip lie below the mean. */
const BEYOND_EXIT = 0.8;

/** @throws ProblemError where the gas does not reach the exit, or the nozzle has no such shape */
export function basisOf(input: EngineInput, gas: WorkingGas): EngineBasis {
  const { expansion } = gas;
  const { chamber, throat } = expansion;
  const spec = specOf(input.nozzle);
  const exit = expansion.atAreaRatio(spec.areaRatio, 'supersonic');
  const shaped = shapedByFormula(spec, expansion, exit);
  const thick = areaRatioInThickAir(input.nozzle);
  const lowest = Math.max(BEYOND_EXIT * exit.pressure, expansion.lowestPressure);
  return {
    input,
    description: descriptionOf(input.nozzle),
    propellants: gas.text,
    chemistry: gas.chemistry,
    chamber: {
      pressure: chamber.pressure,
      temperature: chamber.temperature,
      molarMass: chamber.molarMass,
      isentropicExponent: chamber.isentropicExponent,
      bulkDensity: gas.bulkDensity,
    },
    throat: { pressure: throat.pressure, temperature: throat.temperature },
    characteristicVelocity: expansion.characteristicVelocity,
    flow: flowDownTo(expansion, lowest / chamber.pressure),
    exits: {
      thin: meanExit(expansion, exit),
      thick: thick === null ? null : meanExit(expansion, expansion.atAreaRatio(thick, 'supersonic')),
    },
    divergence: input.losses === 'none' ? 1 : divergenceOf(shaped),
    spec: shaped,
  };
}

/** Nozzles on one gas that end alike have one mean flow. */
function flowDownTo(expansion: Expansion, lowest: number): MeanFlow {
  const known = flows.get(expansion)?.get(lowest);
  if (known !== undefined) return known;
  const flow = meanFlow(expansion, lowest);
  flows.set(expansion, (flows.get(expansion) ?? new Map<number, MeanFlow>()).set(lowest, flow));
  return flow;
}

const flows = new WeakMap<Expansion, Map<number, MeanFlow>>();

function meanExit({ chamber }: Expansion, state: FlowState): MeanExit {
  const { temperature, velocity, mach, areaRatio } = state;
  return { areaRatio, share: state.pressure / chamber.pressure, temperature, velocity, mach };
}

/** The spec with its angles, where wall and divergence follow from it alone; null where the flow shapes them. */
function shapedByFormula(spec: NozzleSpec, expansion: Expansion, exit: FlowState): NozzleSpec | null {
  switch (spec.kind) {
    case 'ideal':
    case 'adapting':
    case 'cone':
      return spec;
    case 'bell':
      return { ...spec, ...bellAnglesOf(spec, meanExponent(expansion, exit)) };
    default:
      return null;
  }
}

function divergenceOf(spec: NozzleSpec | null): number {
  if (spec?.kind === 'cone') return divergenceFactorOfCone(spec.halfAngle);
  if (spec?.kind === 'bell' && spec.lipAngle !== undefined) {
    return divergenceFactorOfBell(spec.length, spec.lipAngle);
  }
  return 1;
}

/** Where a nozzle of two modes ends in thick air; null where it ends at the same place. */
function areaRatioInThickAir(nozzle: Nozzle): number | null {
  switch (nozzle.kind) {
    case 'extendableSkirt':
      return nozzle.shortAreaRatio.value;
    case 'insert':
      return nozzle.insertAreaRatio.value;
    case 'dualBell':
      return nozzle.baseAreaRatio.value;
    default:
      return null;
  }
}

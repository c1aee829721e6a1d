import { requireAmbientPressure } from '../air/ambient.ts';
import type { Expansion } from '../gas/flow.ts';
import type { FlowVerdict, NozzleModel, NozzleSpec, ThrustAt, ThrustPart } from './model.ts';
import { oneDimensionalParts, partsAtAmbient } from './oneDimensionalParts.ts';
import { judgeFlow } from './separation.ts';
import { thrustCoefficientOf } from './thrustCoefficient.ts';
import { type WallFlow, wallFlow } from './wallFlow.ts';

export interface FixedNozzle {
  readonly spec: NozzleSpec;
  readonly divergenceFactor: number;
  /** Whether the thrust is still given where the flow would leave the wall: only for the loss-free ideal. */
  readonly ignoresSeparation: boolean;
  readonly omitted: readonly string[];
  readonly models: readonly string[];
}

/** A nozzle whose exit state does not depend on ambient pressure: ideal, cone, bell. */
export function fixedNozzle(nozzle: FixedNozzle, expansion: Expansion): NozzleModel {
  const { spec, divergenceFactor } = nozzle;
  const exit = expansion.atAreaRatio(spec.areaRatio, 'supersonic');
  // The field costs some milliseconds: found when first asked for, then kept.
  let wall: WallFlow | null = null;
  const flowAtWall = (): WallFlow => {
    wall ??= wallFlow(spec, expansion, exit);
    return wall;
  };
  let inVacuum: readonly ThrustPart[] | null = null;
  const parts = (ambientPressure: number): Pick<ThrustAt, 'parts' | 'partsAbsent'> => {
    if (spec.kind !== 'ideal')
      return { parts: [], partsAbsent: 'The wall is not integrated for this nozzle.' };
    inVacuum ??= oneDimensionalParts(expansion, exit);
    return {
      parts: partsAtAmbient(inVacuum, expansion, spec.areaRatio, ambientPressure),
      partsAbsent: null,
    };
  };
  return {
    spec,
    expansion,
    exit,
    divergenceFactor,
    matchedAmbient: exit.pressure,
    dischargeCoefficient: 1,
    wallStations: () => flowAtWall().stations,
    balance: () => null,
    leaving: () =>
      spec.kind === 'ideal'
        ? { kind: 'parallel', state: exit, radius: Math.sqrt(spec.areaRatio) }
        : flowAtWall().leaving,
    omitted: nozzle.omitted,
    models: nozzle.models,
    at(ambientPressure: number): ThrustAt {
      requireAmbientPressure(ambientPressure);
      const flow = judgeFlow(expansion, flowAtWall().lip, ambientPressure);
      const ifFull = thrustCoefficientOf(expansion, exit, spec.areaRatio, divergenceFactor, ambientPressure);
      const absent = reasonForNoThrust(flow, ambientPressure, nozzle.ignoresSeparation);
      return {
        ambientPressure,
        thrustCoefficientIfFull: ifFull,
        thrustCoefficient: absent === null ? ifFull : null,
        absent,
        ...(absent === null ? parts(ambientPressure) : { parts: [], partsAbsent: absent }),
        boundary: absent === null ? ifFull : null,
        flow,
        exit,
      };
    },
  };
}

/** Why a nozzle of fixed shape has no thrust in this flow; null: it has. */
export function reasonForNoThrust(
  flow: FlowVerdict,
  ambientPressure: number,
  ignoresSeparation: boolean,
): string | null {
  if (flow.state === 'unchoked') return unchokedReason(ambientPressure);
  if (flow.state !== 'separated' || ignoresSeparation) return null;
  return (
    `The flow leaves the wall before the lip (${flow.criterion}: ${kPa(flow.lipPressure)} at the lip, ` +
    `${kPa(flow.separationPressure)} needed), and this model has no thrust of separated flow. ` +
    'Lower the area ratio, raise the chamber pressure, or ask at a lower ambient pressure.'
  );
}

/** Why there is no thrust when the surroundings press harder than the choked throat. */
export function unchokedReason(ambientPressure: number): string {
  return (
    `At ${kPa(ambientPressure)} around it the throat cannot be relied on to choke, and the models know choked flow only. ` +
    'Raise the chamber pressure to at least about twice the ambient pressure.'
  );
}

function kPa(pressure: number): string {
  return `${Number((pressure / 1000).toPrecision(3))} kPa`;
}

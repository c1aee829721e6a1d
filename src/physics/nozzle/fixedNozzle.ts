import { once } from '../../numerics/once.ts';
import { requireAmbientPressure } from '../air/ambient.ts';
import type { Expansion } from '../gas/flow.ts';
import type { FlowVerdict, NozzleModel, NozzleSpec, ThrustAt, ThrustPart } from './model.ts';
import { oneDimensionalParts, partsAtAmbient } from './oneDimensionalParts.ts';
import type { RoundWall } from './roundWall.ts';
import { judgeFlow } from './separation.ts';
import { thrustCoefficientOf } from './thrustCoefficient.ts';
import { meanFlow, type WallFlow, wallFlow } from './wallFlow.ts';

export interface FixedNozzle {
  readonly spec: NozzleSpec;
  /** The wall behind the throat; null: the nozzle has none of its own, its flow is one-dimensional. */
  readonly wall: RoundWall | null;
  /** Divergence factor where no field can be had [–]. */ readonly divergenceWithoutField: number;
  /** The thrust is that of one-dimensional flow, whatever the field: no losses, or no wall. */
  readonly lossless: boolean;
  /** Whether the thrust is still given where the flow would leave the wall: only for the loss-free ideal. */
  readonly ignoresSeparation: boolean;
  readonly omitted: readonly string[];
  readonly models: readonly string[];
}

/** Thrust in vacuum of the nozzle flowing full, over p0 A_t, and what goes with it. */
interface FullThrust {
  readonly divergenceFactor: number;
  readonly dischargeCoefficient: number;
  readonly inVacuum: number;
  readonly boundary: number;
  readonly parts: readonly ThrustPart[];
  readonly partsAbsent: string | null;
}

/** A nozzle whose exit state does not depend on ambient pressure: ideal, cone, bell. */
export function fixedNozzle(nozzle: FixedNozzle, expansion: Expansion): NozzleModel {
  const { spec } = nozzle;
  const { areaRatio } = spec;
  const exit = expansion.atAreaRatio(areaRatio, 'supersonic');
  // The field costs some milliseconds: found when first asked for, then kept.
  const flow = once(
    (): WallFlow =>
      nozzle.wall === null
        ? meanFlow(exit, 'the nozzle has no wall of its own')
        : wallFlow(nozzle.wall, expansion, exit, areaRatio),
  );
  const full = once((): FullThrust => fullThrust(nozzle, expansion, flow));
  return {
    spec,
    expansion,
    exit,
    get divergenceFactor() {
      return full().divergenceFactor;
    },
    matchedAmbient: exit.pressure,
    get dischargeCoefficient() {
      return full().dischargeCoefficient;
    },
    wallStations: () => flow().stations,
    balance: () => flow().thrust?.balance ?? null,
    leaving: () =>
      nozzle.wall === null ? { kind: 'parallel', state: exit, radius: Math.sqrt(areaRatio) } : flow().leaving,
    omitted: nozzle.omitted,
    models: nozzle.models,
    at(ambientPressure: number): ThrustAt {
      requireAmbientPressure(ambientPressure);
      const verdict = judgeFlow(expansion, flow().lip, ambientPressure);
      const back = (areaRatio * ambientPressure) / expansion.chamber.pressure;
      const { inVacuum, boundary, parts, partsAbsent } = full();
      const absent = reasonForNoThrust(verdict, ambientPressure, nozzle.ignoresSeparation);
      const there = absent === null;
      return {
        ambientPressure,
        thrustCoefficientIfFull: inVacuum - back,
        thrustCoefficient: there ? inVacuum - back : null,
        absent,
        parts: there ? partsAtAmbient(parts, expansion, areaRatio, ambientPressure) : [],
        partsAbsent: there ? partsAbsent : absent,
        boundary: there ? boundary - back : null,
        flow: verdict,
        exit,
      };
    },
  };
}

function fullThrust(nozzle: FixedNozzle, expansion: Expansion, flow: () => WallFlow): FullThrust {
  const { areaRatio } = nozzle.spec;
  const exit = expansion.atAreaRatio(areaRatio, 'supersonic');
  const field = nozzle.lossless ? null : flow().thrust;
  if (field !== null) {
    const { divergenceFactor, dischargeCoefficient, parts, boundary } = field;
    const inVacuum = parts.reduce((sum, { coefficient }) => sum + coefficient, 0);
    return { divergenceFactor, dischargeCoefficient, parts, boundary, inVacuum, partsAbsent: null };
  }
  const divergenceFactor = nozzle.lossless ? 1 : nozzle.divergenceWithoutField;
  const inVacuum = thrustCoefficientOf(expansion, exit, areaRatio, divergenceFactor, 0);
  return {
    divergenceFactor,
    dischargeCoefficient: 1,
    inVacuum,
    boundary: inVacuum,
    parts: nozzle.lossless ? oneDimensionalParts(expansion, exit) : [],
    partsAbsent: nozzle.lossless ? null : `There is no flow field to integrate: ${flow().reason}.`,
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

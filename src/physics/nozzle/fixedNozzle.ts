import { once } from '../../numerics/once.ts';
import { requireAmbientPressure } from '../air/ambient.ts';
import type { Expansion } from '../gas/flow.ts';
import type { NozzleModel, NozzleSpec, ThrustAt, ThrustPart } from './model.ts';
import { oneDimensionalParts, partsAtAmbient } from './oneDimensionalParts.ts';
import { axialAtRadius, type RoundWall } from './roundWall.ts';
import { meanStations } from './separation/meanStations.ts';
import type { WallSeparation } from './separation/model.ts';
import type { WallForm } from './separation/sideLoads.ts';
import { thrustAttached, thrustOffDesign } from './separation/thrustOffDesign.ts';
import { wallSeparation } from './separation/wallSeparation.ts';
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
  /** Where the gas shapes the wall: its drawing. */ readonly contour?: NonNullable<NozzleModel['contour']>;
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
  const separation = once((): WallSeparation => {
    const { stations, lip } = flow();
    return wallSeparation({
      expansion,
      stations: stations ?? meanStations(expansion, exit, axialAtRadius(nozzle.wall, areaRatio)),
      form: formOf(spec),
      meanExitPressure: exit.pressure,
      from: lip.from,
    });
  });
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
    separation,
    balance: () => flow().thrust?.balance ?? null,
    leaving: () =>
      nozzle.wall === null ? { kind: 'parallel', state: exit, radius: Math.sqrt(areaRatio) } : flow().leaving,
    ...(nozzle.contour && { contour: nozzle.contour }),
    omitted: nozzle.omitted,
    models: nozzle.models,
    at(ambientPressure: number): ThrustAt {
      requireAmbientPressure(ambientPressure);
      const back = (areaRatio * ambientPressure) / expansion.chamber.pressure;
      const { inVacuum, boundary, parts, partsAbsent } = full();
      const attached = {
        coefficient: inVacuum - back,
        parts: partsAtAmbient(parts, expansion, areaRatio, ambientPressure),
        partsAbsent,
        boundary: boundary - back,
      };
      const thrust = nozzle.ignoresSeparation
        ? thrustAttached(separation(), ambientPressure, attached, expansion)
        : thrustOffDesign(separation(), ambientPressure, attached);
      return { ...thrust, exit };
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

/** What the pattern of separation and one of the criteria ask of the shape. */
function formOf({ kind }: NozzleSpec): WallForm {
  return kind === 'cone' ? 'cone' : kind === 'bell' ? 'thrust-optimised' : 'ideal';
}

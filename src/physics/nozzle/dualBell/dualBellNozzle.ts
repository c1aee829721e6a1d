import { once } from '../../../numerics/once.ts';
import { ProblemError } from '../../../numerics/problem.ts';
import { requireAmbientPressure } from '../../air/ambient.ts';
import type { Expansion, FlowState } from '../../gas/flow.ts';
import { requireAreaRatio } from '../areaRatio.ts';
import { bellNozzle } from '../bellNozzle.ts';
import { withAspiration } from '../changing/aspiration.ts';
import { changingNozzle, modeOf } from '../changing/changingNozzle.ts';
import { chamberAndNozzleContour, contourWith } from '../contour.ts';
import {
  CHAMBER_SURFACE,
  type ChamberShape,
  type Contour,
  type DualBellSpec,
  type LeavingFlow,
  type NozzleLosses,
  type NozzleModel,
  type ThrustAt,
  type ThrustPart,
} from '../model.ts';
import type { WallSeparation } from '../separation/model.ts';
import { thrustOffDesign } from '../separation/thrustOffDesign.ts';
import { wallSeparation } from '../separation/wallSeparation.ts';
import { thrustCoefficientOf } from '../thrustCoefficient.ts';
import { baseBell } from './baseBell.ts';
import { type DualBellField, dualBellField } from './dualBellField.ts';
import { type DualBellThrust, dualBellThrust } from './dualBellThrust.ts';
import { dualBellWall } from './dualBellWall.ts';
import { transitionOf } from './transition.ts';

/**
 * Dual bell: a bell whose wall kinks into a second one at the inflection. In dense air the gas leaves it there and the base
 * alone works; in thin air it follows the extension to the lip.
 *
 *   sea-level mode:  C_F = C_F,base(p_a) − ΔC_F         ΔC_F: suction on the extension, see `aspirationLoss`
 *   altitude mode:   C_F = C_F,whole(0) − ε p_a/p0
 *
 * The base is a bell as any other; the extension is shaped by the flow behind it, see `marchExtension`.
 *
 * @throws ProblemError where the base has no shape, the field cannot be had or no extension has the length asked for
 * Source: G. Hagemann, H. Immich, T. V. Nguyen, G. E. Dumnov, J. Propulsion 14(5), 1998, 620–634 (the two modes).
 */
export function dualBellNozzle(
  spec: DualBellSpec,
  expansion: Expansion,
  losses: NozzleLosses = 'default',
): NozzleModel {
  requireAreaRatio(spec.areaRatio);
  requireBase(spec);
  const exit = expansion.atAreaRatio(spec.areaRatio, 'supersonic');
  const base = bellNozzle(baseBell(spec), expansion, losses);
  const field = dualBellField(spec, expansion, exit);
  const { stations, behindKink } = field;
  // The second computation costs some milliseconds: made when first asked for, then kept.
  const thrust = once(() => dualBellThrust(field, expansion, spec.areaRatio, spec.baseAreaRatio));
  const p0 = expansion.chamber.pressure;
  const separation = once(
    (): WallSeparation =>
      wallSeparation({
        expansion,
        stations,
        form: 'thrust-optimised',
        meanExitPressure: exit.pressure,
        from: 'field',
      }),
  );
  const sea = {
    separation: () => base.separation?.() ?? null,
    wallStations: () => base.wallStations(),
    leaving: (ambientPressure: number) => base.leaving?.(ambientPressure) ?? null,
    at: (ambientPressure: number) =>
      withAspiration(base.at(ambientPressure), 'extension', spec.areaRatio - spec.baseAreaRatio, p0, losses),
  };
  const altitude = {
    separation,
    wallStations: () => stations,
    leaving: (): LeavingFlow | null => {
      const { leaving } = thrust();
      return leaving && { kind: 'line', nodes: leaving, isCharacteristic: false };
    },
    at: (ambientPressure: number) => {
      requireAmbientPressure(ambientPressure);
      return wholeAt({ spec, expansion, exit, thrust, separation, losses }, ambientPressure);
    },
  };
  return changingNozzle(
    {
      spec,
      whole: {
        exit,
        get divergenceFactor() {
          return losses === 'none' ? 1 : thrust().divergenceFactor;
        },
        matchedAmbient: exit.pressure,
        get dischargeCoefficient() {
          return base.dischargeCoefficient;
        },
        wallStations: () => stations,
        balance: () => thrust().balance,
      },
      change: () => ({
        thick: modeOf('sea-level mode', sea, (radius, chamber) =>
          seaLevelContour(spec, field, radius, chamber),
        ),
        thin: modeOf('altitude mode', altitude),
        ...transitionOf({
          ...stations[behindKink]!,
          angle: field.angles[0]!,
          chamberPressure: p0,
          gamma: expansion.throat.isentropicExponent ?? expansion.throat.gammaFrozen,
        }),
        how: 'Where the wall pressure behind the inflection, over that outside, is just what the deciding criterion of separation allows.',
      }),
      contour: (radius, chamber) => contourWith(dualBellWall(spec, field, radius), radius, chamber),
      omitted: [...new Set([...base.omitted, ...OMITTED])],
      models: ['nozzle-dual-bell', ...new Set([...base.models, 'flow-streamtubes'])],
    },
    expansion,
  );
}

const OMITTED: readonly string[] = [
  'The moments of transition and its side forces; the creeping of the separation along the extension shortly before it.',
];

interface Whole {
  readonly spec: DualBellSpec;
  readonly expansion: Expansion;
  readonly exit: FlowState;
  readonly thrust: () => DualBellThrust;
  readonly separation: () => WallSeparation;
  readonly losses: NozzleLosses;
}

/** All of it flowing full, as far as the criteria keep the gas on the wall. */
function wholeAt(
  { spec, expansion, exit, thrust, separation, losses }: Whole,
  ambientPressure: number,
): ThrustAt {
  const ambientShare = ambientPressure / expansion.chamber.pressure;
  const outside = spec.areaRatio * ambientShare;
  const parallel =
    losses === 'none' ? thrustCoefficientOf(expansion, exit, spec.areaRatio, 1, ambientPressure) : null;
  const { surfaces, boundary, parts } = thrust();
  const ifFull = parallel ?? surfaces - outside;
  const found = thrustOffDesign(separation(), ambientPressure, {
    coefficient: ifFull,
    parts: parallel === null ? partsAt(parts, spec, ambientShare) : [],
    partsAbsent:
      parallel === null ? null : 'Without losses the flow counts as parallel, which no wall makes it.',
    boundary: parallel ?? (boundary === null ? null : boundary - outside),
  });
  const isAttached = found.thrustCoefficient === ifFull;
  return {
    ...found,
    exit,
    ...(!isAttached && {
      parts: [],
      partsAbsent:
        found.partsAbsent ??
        'Where the gas leaves the extension, what it pushes is not shared out between base and extension.',
    }),
  };
}

/** Ambient pressure taken off what each surface shows to the front. */
function partsAt(
  parts: readonly ThrustPart[],
  { areaRatio, baseAreaRatio }: DualBellSpec,
  ambientShare: number,
): readonly ThrustPart[] {
  const area: Readonly<Record<string, number>> = {
    [CHAMBER_SURFACE]: 1,
    'nozzle wall': baseAreaRatio - 1,
    extension: areaRatio - baseAreaRatio,
  };
  return parts.map(({ surface, coefficient }) => ({
    surface,
    coefficient: coefficient - area[surface]! * ambientShare,
  }));
}

/** The base as the wall of the gas, the extension as a body behind it. */
function seaLevelContour(
  spec: DualBellSpec,
  field: DualBellField,
  throatRadius: number,
  chamber: ChamberShape,
): Contour {
  const outline = field.stations
    .slice(field.behindKink)
    .map(({ axial, radius }) => ({ axial: throatRadius * axial, radius: throatRadius * radius }));
  return {
    ...chamberAndNozzleContour(baseBell(spec), throatRadius, chamber),
    bodies: [{ name: 'extension', solid: false, outline }],
  };
}

function requireBase({ areaRatio, baseAreaRatio, pressureRise }: DualBellSpec): void {
  requireAreaRatio(baseAreaRatio);
  if (!(baseAreaRatio < areaRatio)) {
    throw new ProblemError({
      code: 'dual-bell-base-not-smaller',
      what: `The base’s area ratio, ${baseAreaRatio}, is not below that of the whole, ${areaRatio}.`,
      mend: 'Give the base a smaller area ratio; a quarter to a half of the whole is a usual choice.',
      where: 'nozzle.baseAreaRatio',
      facts: { areaRatio, baseAreaRatio },
    });
  }
  if (pressureRise >= 0 && pressureRise <= MOST_RISE) return;
  throw new ProblemError({
    code: 'dual-bell-rise-outside-range',
    what: `The wall pressure along the extension rises by ${(100 * pressureRise).toFixed(0)} %; it has to be 0 to 100 %.`,
    why: 'Where it falls along the extension, the separation creeps outwards instead of jumping.',
    mend: 'Give 0 % for a constant pressure, or a rise of some ten per cent.',
    where: 'nozzle.pressureRise',
    facts: { pressureRise },
  });
}
/** Largest rise of the wall pressure along the extension [–]. */
const MOST_RISE = 1;

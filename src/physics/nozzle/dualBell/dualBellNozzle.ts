import { once } from '../../../numerics/once.ts';
import { ProblemError } from '../../../numerics/problem.ts';
import { requireAmbientPressure } from '../../air/ambient.ts';
import type { Expansion, FlowState } from '../../gas/flow.ts';
import { requireAreaRatio } from '../areaRatio.ts';
import { bellAnglesOf } from '../bellShape.ts';
import { withAspiration } from '../changing/aspiration.ts';
import { changingNozzle, modeOf } from '../changing/changingNozzle.ts';
import { chamberAndNozzleContour, contourWith } from '../contour.ts';
import {
  CHAMBER_SURFACE,
  type ChamberShape,
  type Contour,
  type DualBellSpec,
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
import { type DualBellThrust, dualBellThrust, type FullThrust } from './dualBellThrust.ts';
import { dualBellWall } from './dualBellWall.ts';
import { transitionOf } from './transition.ts';

/**
 * Dual bell: a bell whose wall kinks into a second one. In dense air the gas leaves the wall at the kink and the base
 * alone works; in thin air it follows the extension to the lip.
 *
 *   sea-level mode:  C_F = C_F,base(p_a) − ΔC_F         ΔC_F: suction on the extension, see `aspirationLoss`
 *   altitude mode:   C_F = C_F,whole(0) − ε p_a/p0
 *
 * Base and extension are computed as one flow field; the extension is shaped by it, see `marchExtension`.
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
  const baseExit = expansion.atAreaRatio(spec.baseAreaRatio, 'supersonic');
  const field = dualBellField(spec, expansion, exit);
  const { stations, behindKink } = field;
  // The second computation costs some milliseconds: made when first asked for, then kept.
  let kept: DualBellThrust | null = null;
  const thrust = (): DualBellThrust => {
    kept ??= dualBellThrust(field, expansion);
    return kept;
  };
  const wallOf = (which: 'base' | 'whole'): WallSeparation =>
    wallSeparation({
      expansion,
      stations: which === 'base' ? stations.slice(0, behindKink) : stations,
      form: 'thrust-optimised',
      meanExitPressure: (which === 'base' ? baseExit : exit).pressure,
      from: 'field',
    });
  const walls = once(() => ({ base: wallOf('base'), whole: wallOf('whole') }));
  const p0 = expansion.chamber.pressure;

  const fullAt = (ambientPressure: number, which: 'base' | 'whole'): ThrustAt => {
    requireAmbientPressure(ambientPressure);
    const mean = which === 'base' ? baseExit : exit;
    const areaRatio = which === 'base' ? spec.baseAreaRatio : spec.areaRatio;
    const parallel =
      losses === 'none' ? thrustCoefficientOf(expansion, mean, areaRatio, 1, ambientPressure) : null;
    return thrustAt(thrust()[which], {
      ambientPressure,
      p0,
      areaRatio,
      baseAreaRatio: spec.baseAreaRatio,
      mean,
      wall: walls()[which],
      parallel,
    });
  };
  const sea = {
    separation: () => walls().base,
    wallStations: () => stations.slice(0, behindKink),
    leaving: () => ({ kind: 'line' as const, nodes: thrust().base.leaving, isCharacteristic: false }),
    at: (ambientPressure: number) =>
      withAspiration(
        fullAt(ambientPressure, 'base'),
        'extension',
        spec.areaRatio - spec.baseAreaRatio,
        p0,
        losses,
      ),
  };
  const altitude = {
    separation: () => walls().whole,
    wallStations: () => stations,
    leaving: () => ({ kind: 'line' as const, nodes: thrust().whole.leaving, isCharacteristic: false }),
    at: (ambientPressure: number) => fullAt(ambientPressure, 'whole'),
  };
  const whole = {
    exit,
    get divergenceFactor() {
      return losses === 'none' ? 1 : divergenceOf(thrust(), exit, expansion, spec.areaRatio);
    },
    matchedAmbient: exit.pressure,
    get dischargeCoefficient() {
      return losses === 'none' ? 1 : thrust().dischargeCoefficient;
    },
    wallStations: () => stations,
    balance: () => thrust().balance,
  };
  return changingNozzle(
    {
      spec,
      whole,
      change: () => ({
        thick: modeOf('sea-level mode', sea, (radius, chamber) =>
          seaLevelContour(spec, field, radius, chamber),
        ),
        thin: modeOf('altitude mode', altitude),
        ...transitionOf({ ...stations[behindKink]!, chamberPressure: p0 }),
        how: 'Where the wall pressure behind the kink, over that outside, falls to what the deciding criterion of separation allows.',
      }),
      contour: (radius, chamber) =>
        contourWith(dualBellWall(field, bellAnglesOf(baseBell(spec)), radius), radius, chamber),
      omitted: OMITTED,
      models: [
        'nozzle-dual-bell',
        'nozzle-bell',
        'nozzle-thrust',
        'nozzle-separation',
        'flow-characteristics',
      ],
    },
    expansion,
  );
}

const OMITTED: readonly string[] = [
  'Friction and heat lost to the wall.',
  'Gas that has left the wall and jumps back onto it.',
  'The time the chemistry takes.',
  'The moments of transition and its side forces; the creeping of the separation along the extension shortly before it.',
];

interface Placed {
  readonly ambientPressure: number;
  readonly p0: number;
  readonly areaRatio: number;
  readonly baseAreaRatio: number;
  readonly mean: FlowState;
  readonly wall: WallSeparation;
  /** C_F of parallel flow, where the losses of the nozzle are left out; null: of the field. */ readonly parallel:
    | number
    | null;
}

function thrustAt(full: FullThrust, placed: Placed): ThrustAt {
  const { ambientPressure, p0, areaRatio, baseAreaRatio, mean, wall, parallel } = placed;
  const outside = (areaRatio * ambientPressure) / p0;
  const ifFull = parallel ?? full.surfaces - outside;
  const found = thrustOffDesign(wall, ambientPressure, {
    coefficient: ifFull,
    parts: parallel === null ? partsAt(full.parts, placed) : [],
    partsAbsent:
      parallel === null ? null : 'Without losses the flow counts as parallel, which no wall makes it.',
    boundary: parallel ?? (full.boundary === null ? null : full.boundary - outside),
  });
  const offExtension = areaRatio > baseAreaRatio && found.thrustCoefficient !== ifFull;
  return {
    ...found,
    exit: mean,
    ...(offExtension && {
      parts: [],
      partsAbsent:
        found.partsAbsent ??
        'Where the gas leaves the extension, what it pushes is not shared out between base and extension.',
    }),
  };
}

/** Ambient pressure taken off what each surface shows to the front. */
function partsAt(parts: readonly ThrustPart[], placed: Placed): readonly ThrustPart[] {
  const { ambientPressure, p0, areaRatio, baseAreaRatio } = placed;
  const area: Readonly<Record<string, number>> = {
    [CHAMBER_SURFACE]: 1,
    'nozzle wall': baseAreaRatio - 1,
    extension: areaRatio - baseAreaRatio,
  };
  return parts.map(({ surface, coefficient }) => ({
    surface,
    coefficient: coefficient - (area[surface]! * ambientPressure) / p0,
  }));
}

/** λ with which one-dimensional flow of the same mass flow gives the field's thrust in vacuum. */
function divergenceOf(
  { whole, dischargeCoefficient }: DualBellThrust,
  exit: FlowState,
  expansion: Expansion,
  areaRatio: number,
): number {
  const { chamber, throat } = expansion;
  const momentum = (throat.massFlux * exit.velocity) / chamber.pressure;
  return (whole.surfaces / dischargeCoefficient - (exit.pressure * areaRatio) / chamber.pressure) / momentum;
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

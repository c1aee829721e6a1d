import { ProblemError } from '../../../numerics/problem.ts';
import { type SupersonicTable, tableStateAt } from '../../flow/gasTable.ts';
import { completeLine, type March } from '../../flow/lineMarch.ts';
import { CharacteristicNet } from '../../flow/net.ts';
import { NODE } from '../../flow/points.ts';
import type { Expansion, FlowState } from '../../gas/flow.ts';
import { REFERENCE_HALF_ANGLE } from '../bellShape.ts';
import type { DualBellSpec, WallStation } from '../model.ts';
import type { RoundField } from '../roundField.ts';
import { roundWallOf } from '../roundWall.ts';
import { roundField } from '../wallFlow.ts';
import { baseBell } from './baseBell.ts';
import { kinkForLength, marchExtension } from './extension.ts';

/** The flow of a dual bell that flows full, sizes in throat radii. */
export interface DualBellField {
  /** The base, up to its exit plane. */ readonly base: RoundField;
  /** C− lines from the exit plane of the base on. */ readonly net: CharacteristicNet;
  /** Number of the net's line that leaves the wall at the kink, before it turns. */ readonly kinkLine: number;
  /** [rad] */ readonly kink: number;
  /** Wall from throat to lip; two stations at the kink, before and behind it. */
  readonly stations: readonly WallStation[];
  /** Wall angle at each station behind the kink [rad]. */ readonly angles: readonly number[];
  /** Number of the first station behind the kink. */ readonly behindKink: number;
}

/**
 * The flow field by characteristics: the base is a bell with its own field; behind its exit plane the centred expansion at
 * the kink and the extension.
 *
 * @param exit mean state at the whole area ratio
 * @throws ProblemError where the field cannot be had or no extension has the length asked for
 */
export function dualBellField(spec: DualBellSpec, expansion: Expansion, exit: FlowState): DualBellField {
  const found = roundField(roundWallOf(baseBell(spec)), expansion, exit);
  if (!found.ok) throw new ProblemError(found.problem);
  const base = found.value;
  const march = fromExitPlane(base);
  const { net } = march;
  const kinkLine = net.lineCount - 1;
  const end = base.wall.at(-1)!;
  const kink =
    'kink' in spec.shape
      ? spec.shape.kink
      : kinkForLength(march, spec, end.axial + spec.shape.extensionLength * coneBetween(spec));
  if (!marchExtension(march, spec, kink, true)) throw fallsShort(spec, net);
  const behind = wallBehind(net, base.table, kinkLine);
  return {
    base,
    net,
    kinkLine,
    kink,
    stations: [...base.wall, ...behind.stations],
    angles: behind.angles,
    behindKink: base.wall.length,
  };
}

/** Length of the 15° cone from the radius of the base to that of the lip, in throat radii [–]. */
export function coneBetween({ areaRatio, baseAreaRatio }: DualBellSpec): number {
  return (Math.sqrt(areaRatio) - Math.sqrt(baseAreaRatio)) / Math.tan(REFERENCE_HALF_ANGLE);
}

/** C− lines from the nodes of the base's last line, from the axis up; the last one leaves the wall at the kink. */
function fromExitPlane({ lines, table }: RoundField): March {
  const last = lines.lineCount - 1;
  const count = lines.lineLength(last);
  const net = new CharacteristicNet(count * count);
  // The extension's wall feels only what leaves the outer flow: the core need not be followed.
  const march: March = {
    net,
    table,
    symmetry: 'axisymmetric',
    shock: null,
    reachesAxis: true,
    mayEndShort: true,
  };
  for (let k = count - 1; k >= 0; k--) {
    const first = net.openLine(count - k + 1);
    const at = lines.offset(last, k);
    net.nodes.set(lines.nodes.subarray(at, at + NODE), first);
    if (k === count - 1) net.closeLine(1);
    else completeLine(march, first, -1);
  }
  return march;
}

/** Wall nodes behind the kink: the last of the fan's rays, which all leave it, and the extension. */
function wallBehind(
  net: CharacteristicNet,
  table: SupersonicTable,
  kinkLine: number,
): Pick<DualBellField, 'stations' | 'angles'> {
  const kinkAxial = net.nodes[net.offset(kinkLine, 0)]!;
  const stations: WallStation[] = [];
  const angles: number[] = [];
  for (let line = kinkLine + 1; line < net.lineCount; line++) {
    const at = net.offset(line, 0);
    const next = line + 1 < net.lineCount ? net.nodes[net.offset(line + 1, 0)]! : Number.POSITIVE_INFINITY;
    if (next === kinkAxial) continue;
    const { pressure, mach, temperature } = tableStateAt(table, net.nodes[at + 3]!);
    stations.push({ axial: net.nodes[at]!, radius: net.nodes[at + 1]!, pressure, mach, temperature });
    angles.push(net.nodes[at + 2]!);
  }
  return { stations, angles };
}

function fallsShort(spec: DualBellSpec, net: CharacteristicNet): ProblemError {
  const at = net.offset(net.lineCount - 1, 0);
  const reached = net.nodes[at + 1]! ** 2;
  return new ProblemError({
    code: 'dual-bell-kink-too-flat',
    what: `Behind so flat an inflection the extension bends back to the axis at an area ratio of ${reached.toFixed(1)}, before it reaches ${spec.areaRatio}.`,
    why: 'The pressure along the extension is given, so that the gas itself decides how far it opens.',
    mend: 'Make the inflection angle larger, or the area ratio smaller.',
    where: 'nozzle.inflectionAngle',
    facts: { areaRatio: spec.areaRatio, reached },
  });
}

import { ProblemError } from '../../../numerics/problem.ts';
import { type CarriedFlow, flowAcross } from '../../flow/axialFlow.ts';
import { type SupersonicTable, tableStateAt, tabulateSupersonic } from '../../flow/gasTable.ts';
import type { March } from '../../flow/lineMarch.ts';
import type { CharacteristicNet } from '../../flow/net.ts';
import { throatCharacteristic } from '../../flow/startLine.ts';
import { marchAlongWall } from '../../flow/wallMarch.ts';
import type { Expansion, FlowState } from '../../gas/flow.ts';
import { referenceConeLength, THROAT_ARC_UPSTREAM } from '../bellShape.ts';
import type { DualBellSpec, WallStation } from '../model.ts';
import { baseBell, bellWallPoints } from './baseBell.ts';
import { kinkForLength, marchExtension } from './extension.ts';

/** The flow of a dual bell that flows full, sizes in throat radii. */
export interface DualBellField {
  readonly table: SupersonicTable;
  readonly net: CharacteristicNet;
  /** Number of the net's line that leaves the wall at the kink, before it turns. */ readonly kinkLine: number;
  /** [rad] */ readonly kink: number;
  /** Wall from throat to lip; two stations at the kink, before and behind it. */
  readonly stations: readonly WallStation[];
  /** Wall angle at each station [rad]. */ readonly angles: readonly number[];
  /** Number of the first station behind the kink. */ readonly behindKink: number;
  /** What passes the throat, per throat radius squared. */ readonly throat: CarriedFlow;
}

const ACROSS = 24;
const TABLE_CELLS = 96;
/** How far below the mean exit pressure the gas table goes [–]: the axis of a bell expands well past its exit. */
const TABLE_DEPTH = 0.002;

/**
 * The flow field by characteristics: the base bell, the centred expansion at the kink, the extension.
 *
 * @param exit mean state at the whole area ratio
 * @throws ProblemError where the field cannot be had or no extension has the length asked for
 */
export function dualBellField(spec: DualBellSpec, expansion: Expansion, exit: FlowState): DualBellField {
  const { throat } = expansion;
  const table = tabulateSupersonic(expansion, TABLE_DEPTH * exit.pressure, TABLE_CELLS);
  const gas = {
    table,
    gamma: throat.isentropicExponent ?? throat.gammaFrozen,
    criticalSpeed: throat.velocity,
  };
  const start = throatCharacteristic(gas, 1, THROAT_ARC_UPSTREAM, ACROSS);
  const { net } = marchAlongWall(table, 'axisymmetric', start, bellWallPoints(baseBell(spec)));
  const kinkLine = net.lineCount - 1;
  const end = net.offset(kinkLine, net.lineLength(kinkLine) - 1);
  const march: March = {
    net,
    table,
    symmetry: 'axisymmetric',
    shock: null,
    reachesAxis: net.nodes[end + 1] === 0,
  };
  const kink =
    'kink' in spec.shape
      ? spec.shape.kink
      : kinkForLength(march, spec, spec.shape.length * referenceConeLength(spec.areaRatio));
  if (!marchExtension(march, spec, kink, true)) throw fallsShort(spec, net);
  return {
    table,
    net,
    kinkLine,
    kink,
    ...wallOf(net, table, kinkLine),
    throat: flowAcross(start, 0, ACROSS, table, 'axisymmetric'),
  };
}

/** The wall's nodes; of the fan's rays, which all leave the kink, only the first and the last. */
function wallOf(
  net: CharacteristicNet,
  table: SupersonicTable,
  kinkLine: number,
): Pick<DualBellField, 'stations' | 'angles' | 'behindKink'> {
  const kinkAxial = net.nodes[net.offset(kinkLine, 0)]!;
  const stations: WallStation[] = [];
  const angles: number[] = [];
  for (let line = 0; line < net.lineCount; line++) {
    const at = net.offset(line, 0);
    const next = line + 1 < net.lineCount ? net.nodes[net.offset(line + 1, 0)]! : Number.POSITIVE_INFINITY;
    if (line > kinkLine && net.nodes[at]! === kinkAxial && next === kinkAxial) continue;
    const { pressure, mach, temperature } = tableStateAt(table, net.nodes[at + 3]!);
    stations.push({ axial: net.nodes[at]!, radius: net.nodes[at + 1]!, pressure, mach, temperature });
    angles.push(net.nodes[at + 2]!);
  }
  return { stations, angles, behindKink: kinkLine + 1 };
}

function fallsShort(spec: DualBellSpec, net: CharacteristicNet): ProblemError {
  const at = net.offset(net.lineCount - 1, 0);
  const reached = net.nodes[at + 1]! ** 2;
  return new ProblemError({
    code: 'dual-bell-kink-too-flat',
    what: `Behind so flat a kink the extension bends back to the axis at an area ratio of ${reached.toFixed(1)}, before it reaches ${spec.areaRatio}.`,
    why: 'The pressure along the extension is given, so that the gas itself decides how far it opens.',
    mend: 'Make the kink sharper, or the area ratio smaller.',
    where: 'nozzle.inflectionAngle',
    facts: { areaRatio: spec.areaRatio, reached },
  });
}

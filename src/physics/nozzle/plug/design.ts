import { attempt, ProblemError } from '../../../numerics/problem.ts';
import {
  nuAtMach,
  nuAtPressure,
  type SupersonicTable,
  tableStateAt,
  tabulateSupersonic,
} from '../../flow/gasTable.ts';
import { plugInside } from '../../flow/plugInside.ts';
import { plugWall } from '../../flow/plugWall.ts';
import { NODE } from '../../flow/points.ts';
import type { ShapedWallPoint } from '../../flow/turnToAxial.ts';
import type { Expansion, FlowState } from '../../gas/flow.ts';
import type { PlugGeometry, PlugWallPoint } from './geometry.ts';
import { cutWall, towardsTip } from './plugCut.ts';
import type { PlugSpec } from './spec.ts';

/** Rays of the lip's fan, and of the corner's. */
const RAYS = 64;
const INNER_RAYS = 32;
const TABLE_CELLS = 128;
/** How far below the exit pressure the gas table goes [–], as far as the gas allows. */
const TABLE_DEPTHS = [0.05, 0.3, 0.8, 0.98];
/** Mach number at the throat line's first node: as near to sonic as characteristics can begin. */
const THROAT_MACH = 1.005;
/** The same where the flow slows down along the line, as it may in a purely external round throat. */
const THROAT_MACHS = [THROAT_MACH, 1.01, 1.02, 1.03, 1.05, 1.075, 1.1, 1.15, 1.2, 1.3, 1.4, 1.5];
/** Below this there is no room for an inner fan beside a round throat: the lip's fan begins with the throat line. */
const LEAST_INNER_MACH = 1.1;
/** Up to here there may be none. */
const LITTLE_INNER_MACH = 1.4;
/** [rad] turn at the lip that the default does not exceed: 60°. */
const USUAL_TURN = Math.PI / 3;
/** [rad] greatest turn at the lip: 90°, less what keeps the throat line off the radial direction. */
const GREATEST_TURN = (89.9 * Math.PI) / 180;
export const DEFAULT_ASPECT_RATIO = 2;

/**
 * The contour of a plug for its design condition, and the flow at it.
 *
 * Exit uniform and axial at the Mach number of the area ratio; outer fan at the lip (`plugWall`), inner fan at the plug-side
 * corner of the throat (`plugInside`). The turn at the lip is ν_e − ν_i; the throat points ν_e − 2 ν_i towards the axis.
 *
 * @throws ProblemError `plug-turn-too-large`, `inner-mach-too-large`, or where no such flow can be found
 */
export function plugDesign(spec: PlugSpec, expansion: Expansion, exit: FlowState): PlugGeometry {
  const table = plugTable(expansion, exit);
  const nuExit = nuAtPressure(table, exit.pressure);
  const nuLip = lipNu(spec, table, nuExit);
  const symmetry = spec.form === 'annular' ? 'axisymmetric' : 'planar';
  const { lipRadius, width } = plugSize(spec);
  const nuStart = nuAtMach(table, THROAT_MACH);
  const inside = attempt(() =>
    nuLip > nuAtMach(table, LEAST_INNER_MACH)
      ? withInside(table, symmetry, lipRadius, nuLip, nuExit, nuStart)
      : withoutInside(table, symmetry, lipRadius, nuLip, nuExit),
  );
  // Little expansion inside a narrow ring may slow the flow down to sonic again: then it is all outside.
  const outsideOnly = !inside.ok && nuLip < nuAtMach(table, LITTLE_INNER_MACH);
  if (!inside.ok && !outsideOnly) throw new ProblemError(inside.problem);
  const found = inside.ok ? inside.value : withoutInside(table, symmetry, lipRadius, nuLip, nuExit);
  const { wall, cut } = cutWall(found.wall, found.foot, spec.kept);
  const angleAt = found.throatLine.length - NODE;
  return {
    form: spec.form,
    symmetry,
    table,
    areaRatio: spec.areaRatio,
    width,
    areaScale: width === null ? 1 / Math.PI : (2 * width) / Math.PI,
    massFlow: found.massFlow,
    nuThroat: found.nuThroat,
    nuLip: found.nuLip,
    nuExit,
    throatAngle: 0.5 * (found.throatLine[2]! + found.throatLine[angleAt + 2]!),
    lip: { axial: 0, radius: lipRadius },
    throatLine: found.throatLine,
    lipRay: found.lipRay,
    rays: found.rays,
    between: found.between,
    cowl: found.cowl,
    wholeWall: found.wall,
    wall,
    lipRayFoot: found.foot,
    cut,
  };
}

/**
 * Prandtl–Meyer angle at the lip [rad] where the study states none: so that the lip turns the flow by at most 60°.
 *
 *   ν_i = max(0, ν_e − 60°)
 *
 * Own choice: it keeps the throat within 60° of the axis for every gas and area ratio.
 */
export function usualInnerNu(nuExit: number): number {
  return Math.max(0, nuExit - USUAL_TURN);
}

/** Sizes over the throat radius √(A_t/π): lip radius, and width of a linear plug. */
export function plugSize(spec: PlugSpec): { readonly lipRadius: number; readonly width: number | null } {
  if (spec.form === 'annular') return { lipRadius: Math.sqrt(spec.areaRatio), width: null };
  const aspectRatio = spec.aspectRatio ?? DEFAULT_ASPECT_RATIO;
  // Exit area 2 h · W = ε π with W = 2 h · aspect ratio.
  const lipRadius = 0.5 * Math.sqrt((Math.PI * spec.areaRatio) / aspectRatio);
  return { lipRadius, width: 2 * lipRadius * aspectRatio };
}

function plugTable(expansion: Expansion, exit: FlowState): SupersonicTable {
  for (const depth of TABLE_DEPTHS) {
    const lowest = depth * exit.pressure;
    if (lowest > expansion.lowestPressure) return tabulateSupersonic(expansion, lowest, TABLE_CELLS);
  }
  throw new ProblemError({
    code: 'flow-outside-table',
    what: `The exit of the plug lies at the end of what the gas data reach, ${expansion.lowestPressure.toPrecision(3)} Pa.`,
    mend: 'Use a smaller area ratio.',
    where: 'nozzle.areaRatio',
    facts: { exitPressure: exit.pressure, lowestPressure: expansion.lowestPressure },
  });
}

function lipNu(spec: PlugSpec, table: SupersonicTable, nuExit: number): number {
  if (spec.innerMach === undefined) return usualInnerNu(nuExit);
  const exitMach = tableStateAt(table, nuExit).mach;
  if (spec.innerMach >= exitMach - LEAST_STEP) throw innerMachTooLarge(spec.innerMach, exitMach);
  const nuLip = spec.innerMach <= 1 ? 0 : nuAtMach(table, spec.innerMach);
  if (nuExit - nuLip > GREATEST_TURN) {
    throw turnTooLarge(spec, nuExit - nuLip, table, nuExit);
  }
  return nuLip;
}

/** Mach numbers by which exit and lip have to differ. */
const LEAST_STEP = 0.02;

interface Found {
  readonly throatLine: Float64Array;
  readonly lipRay: Float64Array;
  readonly rays: readonly Float64Array[];
  readonly between: readonly Float64Array[];
  readonly cowl: readonly PlugWallPoint[];
  readonly wall: readonly PlugWallPoint[];
  readonly foot: number;
  readonly massFlow: number;
  readonly nuThroat: number;
  readonly nuLip: number;
}

function withInside(
  table: SupersonicTable,
  symmetry: PlugGeometry['symmetry'],
  lipRadius: number,
  nuLip: number,
  nuExit: number,
  nuStart: number,
): Found {
  const outer = plugWall(table, symmetry, lipRadius, nuLip, nuExit, RAYS);
  const inner = plugInside(table, symmetry, outer.firstRay, outer.massFlow, nuStart, INNER_RAYS);
  // The corner itself has the flow before and behind its fan; the wall begins behind it.
  const side = inner.plugSide.slice(1, -1);
  return {
    throatLine: inner.firstRay,
    lipRay: outer.firstRay,
    rays: outer.rays,
    between: inner.between,
    cowl: inner.cowl,
    wall: [...side, ...towardsTip(outer.wall)],
    foot: side.length,
    massFlow: outer.massFlow,
    nuThroat: nuStart,
    nuLip,
  };
}

function withoutInside(
  table: SupersonicTable,
  symmetry: PlugGeometry['symmetry'],
  lipRadius: number,
  nuLip: number,
  nuExit: number,
): Found {
  let last: unknown = null;
  for (const mach of THROAT_MACHS) {
    const nu = Math.max(nuLip, nuAtMach(table, mach));
    try {
      const outer = plugWall(table, symmetry, lipRadius, nu, nuExit, RAYS);
      const at: ShapedWallPoint = { axial: 0, radius: lipRadius, angle: nu - nuExit, nu };
      return {
        throatLine: outer.firstRay,
        lipRay: outer.firstRay,
        rays: outer.rays,
        between: [],
        cowl: [at],
        wall: towardsTip(outer.wall),
        foot: 0,
        massFlow: outer.massFlow,
        nuThroat: nu,
        nuLip: nu,
      };
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      last = error;
    }
  }
  throw last;
}

function turnTooLarge(spec: PlugSpec, turn: number, table: SupersonicTable, nuExit: number): ProblemError {
  const least = tableStateAt(table, nuExit - GREATEST_TURN).mach;
  const usual = tableStateAt(table, usualInnerNu(nuExit)).mach;
  const given = spec.innerMach ?? 1;
  return new ProblemError({
    code: 'plug-turn-too-large',
    what: `With an inner Mach number of ${given} the lip would have to turn the flow by ${((turn * 180) / Math.PI).toFixed(1)}°; it cannot turn it by 90° or more.`,
    why: 'the flow would have to come from further out than straight towards the axis',
    mend: `Expand further before the lip: an innerMach above ${(Math.ceil(least * 100) / 100).toFixed(2)} would do, ${usual.toFixed(2)} turns the flow by 60°; or ask for a smaller area ratio.`,
    where: 'nozzle.innerMach',
    facts: { innerMach: given, turn, least, usual },
  });
}

function innerMachTooLarge(innerMach: number, exitMach: number): ProblemError {
  return new ProblemError({
    code: 'inner-mach-too-large',
    what: `The inner Mach number ${innerMach} is not below the exit's, ${exitMach.toFixed(2)}: nothing is left for the plug to expand.`,
    mend: `Give an innerMach below ${(exitMach - LEAST_STEP).toFixed(2)}, or a larger area ratio.`,
    where: 'nozzle.innerMach',
    facts: { innerMach, exitMach },
  });
}

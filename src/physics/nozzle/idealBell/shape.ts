/**
 * The ideal contour: the wall that turns the flow of a rounded throat to run parallel to the axis, and where it is cut.
 *
 *   arc turn θ_a  →  last C− of the arc, Mach number M_d where it meets the axis  →  wall (turnToAxial), parallel at M_d
 *   cut where r = √ε:  length L(θ_a)
 *
 * Whole: θ_a such that the wall's own lip has the area ratio ε. By design Mach number: θ_a such that M_d is it. By
 * length: θ_a such that the cut lies at the length asked for; the larger θ_a, the shorter the cut nozzle.
 *
 * Sizes in throat radii.
 */

import { ProblemError } from '../../../numerics/problem.ts';
import { flowAcross } from '../../flow/axialFlow.ts';
import { type SupersonicTable, tableStateAt, tabulateSupersonic } from '../../flow/gasTable.ts';
import { NODE } from '../../flow/points.ts';
import { throatCharacteristic } from '../../flow/startLine.ts';
import { type ShapedWallPoint, turnToAxial } from '../../flow/turnToAxial.ts';
import { marchAlongWall } from '../../flow/wallMarch.ts';
import type { Expansion } from '../../gas/flow.ts';
import { referenceConeLength, THROAT_ARC_DOWNSTREAM, THROAT_ARC_UPSTREAM } from '../bellShape.ts';
import type { IdealBellSpec } from '../model.ts';
import { arcPoints } from '../roundWall.ts';
import { findTurn } from './findTurn.ts';

export interface IdealContour {
  /** θ_a [rad] */ readonly turn: number;
  /** M_d [–] */ readonly designMach: number;
  /** Area ratio of the whole contour [–]. */ readonly wholeAreaRatio: number;
  /** Length of the whole contour from the throat [–]. */ readonly wholeLength: number;
  /** From the arc's end to the lip or the cut. */ readonly wall: readonly ShapedWallPoint[];
}

const ACROSS = 24;
const ARC_STEP = Math.PI / 144;
const FEWEST_ON_ARC = 8;
const STEPS = 60;
const TABLE_CELLS = 96;
/** The axis expands to M_d; a whole contour's exit pressure is not far below that of the cut one. */
const TABLE_DEPTH = 1e-4;
/** [rad] range of arc turns tried. */
const TURNS = { least: Math.PI / 90, most: Math.PI / 4 };

/**
 * The contour of a spec.
 * @param exitPressure [Pa] of one-dimensional flow at the area ratio
 * @throws ProblemError `ideal-bell-cannot-be-so`, or where the field cannot be had
 */
export function idealContour(spec: IdealBellSpec, expansion: Expansion, exitPressure: number): IdealContour {
  const deepest = Math.max(TABLE_DEPTH * exitPressure, 1.001 * expansion.lowestPressure);
  const table = tabulateSupersonic(expansion, deepest, TABLE_CELLS);
  const expand = expander(table, expansion);
  const lip = Math.sqrt(spec.areaRatio);
  if (spec.designMach !== undefined) {
    const wanted = spec.designMach;
    const turn = findTurn(
      (t) => expand(t).designMach - wanted,
      TURNS,
      () => noSuchMach(spec, wanted),
    );
    return cutAt(wholeContour(expand(turn), table), lip, spec);
  }
  const whole = findTurn(
    (t) => expand(t).wholeRadius - lip,
    TURNS,
    () => noSuchRatio(spec),
  );
  if (spec.length === undefined) return wholeContour(expand(whole), table);
  const length = spec.length * referenceConeLength(spec.areaRatio);
  const cut = (turn: number): IdealContour => cutAt(wholeContour(expand(turn), table), lip, spec);
  const longest = wholeContour(expand(whole), table).wholeLength;
  if (length >= longest) throw tooLong(spec, longest);
  // Just beyond the whole turn the cut runs quickly upstream along the nearly level end of the wall.
  const turn = findTurn(
    (t) => length - cut(t).wall.at(-1)!.axial,
    { least: whole + 1e-4, most: TURNS.most },
    (problem) => tooShort(spec, problem?.what),
  );
  return cut(turn);
}

interface Expanded {
  readonly turn: number;
  readonly line: Float64Array;
  readonly designMach: number;
  /** Radius of the uniform flow that the line feeds [–]. */ readonly wholeRadius: number;
}

/** The last C− of an arc that turns the wall by so much. */
function expander(table: SupersonicTable, expansion: Expansion): (turn: number) => Expanded {
  const { throat } = expansion;
  const gas = {
    table,
    gamma: throat.isentropicExponent ?? throat.gammaFrozen,
    criticalSpeed: throat.velocity,
  };
  const start = throatCharacteristic(gas, 1, THROAT_ARC_UPSTREAM, ACROSS);
  const { massFlow } = flowAcross(start, 0, ACROSS, table, 'axisymmetric');
  return (turn) => {
    const count = Math.max(FEWEST_ON_ARC, Math.ceil(turn / ARC_STEP));
    const arc = arcPoints({ turn, arcRadius: THROAT_ARC_DOWNSTREAM }, count);
    const { net } = marchAlongWall(table, 'axisymmetric', start, arc);
    const last = net.lineCount - 1;
    const line = net.nodes.slice(net.offset(last, 0), net.offset(last, net.lineLength(last)));
    const axis = tableStateAt(table, line[line.length - NODE + 3]!);
    return {
      turn,
      line,
      designMach: axis.mach,
      wholeRadius: Math.sqrt(massFlow / (Math.PI * axis.density * axis.speed)),
    };
  };
}

function wholeContour({ turn, line, designMach }: Expanded, table: SupersonicTable): IdealContour {
  const wall = turnToAxial(table, 'axisymmetric', line, STEPS);
  const lip = wall.at(-1)!;
  return { turn, designMach, wholeAreaRatio: lip.radius ** 2, wholeLength: lip.axial, wall };
}

/** The contour up to the radius of the lip asked for; the last point between two of the wall's by a cubic in the radius. */
function cutAt(whole: IdealContour, lip: number, spec: IdealBellSpec): IdealContour {
  const { wall } = whole;
  const next = wall.findIndex(({ radius }) => radius >= lip);
  if (next < 0) throw beyondWhole(spec, whole);
  if (next === 0) throw withinArc(spec);
  const from = wall[next - 1]!;
  const to = wall[next]!;
  let share = (lip - from.radius) / (to.radius - from.radius);
  const length = to.axial - from.axial;
  const [m0, m1] = [Math.tan(from.angle) * length, Math.tan(to.angle) * length];
  const radius = (t: number): number => {
    const d = to.radius - from.radius;
    return from.radius + t * (m0 + t * (3 * d - 2 * m0 - m1 + t * (m0 + m1 - 2 * d)));
  };
  for (let i = 0; i < 20; i++) {
    const slope = (radius(share + 1e-6) - radius(share - 1e-6)) / 2e-6;
    if (!(Math.abs(slope) > 1e-12)) break;
    share = Math.min(Math.max(share + (lip - radius(share)) / slope, 0), 1);
  }
  const between = (a: number, b: number): number => a + share * (b - a);
  return {
    ...whole,
    wall: [
      ...wall.slice(0, next),
      {
        axial: between(from.axial, to.axial),
        radius: lip,
        angle: between(from.angle, to.angle),
        nu: between(from.nu, to.nu),
      },
    ],
  };
}

function degrees(radians: number): string {
  return ((radians * 180) / Math.PI).toFixed(0);
}

function refusal(spec: IdealBellSpec, what: string, why: string, mend: string): ProblemError {
  return new ProblemError({
    code: 'ideal-bell-cannot-be-so',
    what,
    why,
    mend,
    where: spec.designMach === undefined ? 'nozzle.length' : 'nozzle.designMach',
    facts: {
      areaRatio: spec.areaRatio,
      ...(spec.length !== undefined && { length: spec.length }),
      ...(spec.designMach !== undefined && { designMach: spec.designMach }),
    },
  });
}

function beyondWhole(spec: IdealBellSpec, { designMach, wholeAreaRatio }: IdealContour): ProblemError {
  return refusal(
    spec,
    `The whole ideal contour for Mach ${designMach.toFixed(2)} ends at an area ratio of ${wholeAreaRatio.toFixed(1)}, short of ${spec.areaRatio}.`,
    'a contour can be cut, not lengthened: behind its lip the flow is parallel already',
    'Give a higher design Mach number or a smaller area ratio.',
  );
}

function withinArc(spec: IdealBellSpec): ProblemError {
  return refusal(
    spec,
    `At an area ratio of ${spec.areaRatio} the lip would lie on the throat arc.`,
    'the contour begins where the arc ends',
    'Give a larger area ratio.',
  );
}

function noSuchMach(spec: IdealBellSpec, mach: number): ProblemError {
  return refusal(
    spec,
    `No throat arc between ${degrees(TURNS.least)}° and ${degrees(TURNS.most)}° expands the axis to Mach ${mach}.`,
    'the flow on the axis is expanded by the arc alone',
    'Give a design Mach number nearer that of one-dimensional flow at the area ratio.',
  );
}

function noSuchRatio(spec: IdealBellSpec): ProblemError {
  return refusal(
    spec,
    `No throat arc between ${degrees(TURNS.least)}° and ${degrees(TURNS.most)}° has a whole ideal contour of area ratio ${spec.areaRatio}.`,
    'the flow on the axis is expanded by the arc alone',
    'Give a larger area ratio, or one below 400.',
  );
}

function tooLong(spec: IdealBellSpec, longest: number): ProblemError {
  const share = longest / referenceConeLength(spec.areaRatio);
  return refusal(
    spec,
    `The whole ideal contour of area ratio ${spec.areaRatio} is ${(100 * share).toFixed(0)} % of the 15° cone's length; the length asked for is not shorter.`,
    'a contour can be cut, not lengthened',
    `Give a length below ${Math.floor(100 * share)} %, or none for the whole contour.`,
  );
}

function tooShort(spec: IdealBellSpec, found: string | undefined): ProblemError {
  return refusal(
    spec,
    `No ideal contour cut at an area ratio of ${spec.areaRatio} is as short as ${(100 * (spec.length ?? 0)).toFixed(0)} % of the 15° cone.`,
    found ?? 'the arc would have to turn the wall by more than 45°',
    'Give a greater length, or choose a parabolic bell.',
  );
}

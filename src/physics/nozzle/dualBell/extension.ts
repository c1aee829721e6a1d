import { attempt, ProblemError } from '../../../numerics/problem.ts';
import { marchFan } from '../../flow/centredFan.ts';
import { nuAtPressure, type SupersonicTable, tableStateAt } from '../../flow/gasTable.ts';
import type { March } from '../../flow/lineMarch.ts';
import { CharacteristicNet } from '../../flow/net.ts';
import { NODE } from '../../flow/points.ts';
import { marchPressureWall } from '../../flow/pressureWall.ts';
import type { DualBellSpec } from '../model.ts';

/** Rays of the expansion at the kink. */
const RAYS = 12;
/** Steps along the extension, about: while the kink is sought, and for the result. */
const STEPS_SOUGHT = 30;
const STEPS = 72;
/** The wall after the kink stays below this angle to the axis [rad]: 70°. */
const STEEPEST = (70 * Math.PI) / 180;
/** The kink is settled when the length is within this share of the one asked for. */
const LENGTH_TOLERANCE = 1e-5;

/**
 * March the extension behind the kink, sizes in throat radii: a centred expansion turns the wall's flow by the kink, then
 * the wall follows the streamline on which the pressure is
 *
 *   p(r) = p_kink [ 1 + rise · (r − r_kink)/(r_lip − r_kink) ]
 *
 * up to the lip radius √ε. Source: the constant-pressure extension is the usual one of dual bells (G. Hagemann et al.,
 * J. Propulsion 18(1), 2002; from memory); the march is that of `marchPressureWall`.
 *
 * @returns whether the wall reaches the lip radius before it bends back
 */
export function marchExtension(march: March, spec: DualBellSpec, kink: number, isResult: boolean): boolean {
  const { net, table } = march;
  const from = net.offset(net.lineCount - 1, 0);
  const radius = net.nodes[from + 1]!;
  const angle = net.nodes[from + 2]! + kink;
  const nu = net.nodes[from + 3]! + kink;
  if (!(angle < STEEPEST)) return false;
  marchFan(march, kink, RAYS);
  const lastRadius = Math.sqrt(spec.areaRatio);
  const steps = isResult ? STEPS : STEPS_SOUGHT;
  return marchPressureWall(march, {
    nuAt: pressureAlong(table, spec.pressureRise, nu, radius, lastRadius),
    lastRadius,
    step: (lastRadius - radius) / (steps * Math.sin(0.6 * angle)),
    mostSteps: 3 * steps,
  });
}

/** ν by radius; the constant needs no search in the table. */
function pressureAlong(
  table: SupersonicTable,
  rise: number,
  nu: number,
  radius: number,
  lastRadius: number,
): (at: number) => number {
  if (rise === 0) return () => nu;
  const pressure = tableStateAt(table, nu).pressure;
  return (at) => nuAtPressure(table, pressure * (1 + (rise * (at - radius)) / (lastRadius - radius)));
}

/**
 * The kink [rad] with which the whole has the length asked for: the sharper the kink, the shorter the extension.
 *
 * @throws ProblemError `dual-bell-length-out-of-reach`
 */
export function kinkForLength(base: March, spec: DualBellSpec, length: number): number {
  const line = base.net.lineCount - 1;
  const first = base.net.offset(line, 0);
  const count = base.net.lineLength(line);
  const lengthAt = (kink: number): number => {
    const net = new CharacteristicNet(count * (STEPS_SOUGHT + RAYS + 2));
    net.nodes.set(base.net.nodes.subarray(first, first + count * NODE), net.openLine(count));
    net.closeLine(count);
    const march: March = { ...base, net, shock: null };
    const reached = attempt(() => marchExtension(march, spec, kink, false));
    // What cannot be followed counts as too long: a sharper kink makes the extension shorter and the net's task easier.
    return reached.ok && reached.value
      ? net.nodes[net.offset(net.lineCount - 1, 0)]!
      : Number.POSITIVE_INFINITY;
  };
  return sharpestShort(lengthAt, length, spec);
}

/** Bisection, then secants, on a length that falls as the kink grows; Infinity where the wall falls short of the lip. */
function sharpestShort(lengthAt: (kink: number) => number, length: number, spec: DualBellSpec): number {
  let low = 0;
  let high = 0;
  let atHigh = Number.POSITIVE_INFINITY;
  let atLow = Number.POSITIVE_INFINITY;
  while (!(atHigh <= length)) {
    low = high;
    atLow = atHigh;
    high += KINK_STEP;
    if (high > STEEPEST) throw outOfReach(spec, length, atLow);
    atHigh = lengthAt(high);
  }
  for (let i = 0; i < 60 && Math.abs(atHigh - length) > LENGTH_TOLERANCE * length; i++) {
    const secant = low + ((high - low) * (atLow - length)) / (atLow - atHigh);
    const useful = Number.isFinite(secant) && i % 3 !== 2 && secant > low && secant < high;
    const kink = useful ? secant : 0.5 * (low + high);
    const at = lengthAt(kink);
    if (at <= length) {
      high = kink;
      atHigh = at;
    } else {
      low = kink;
      atLow = at;
    }
  }
  if (Math.abs(atHigh - length) > 100 * LENGTH_TOLERANCE * length) throw tooLong(spec, length, atHigh);
  return high;
}

function tooLong(spec: DualBellSpec, length: number, longest: number): ProblemError {
  return new ProblemError({
    code: 'dual-bell-too-long',
    what: `A dual bell of area ratio ${spec.areaRatio} on a base of ${spec.baseAreaRatio} can be computed up to ${longest.toFixed(1)} throat radii behind the throat, not ${length.toFixed(1)}.`,
    why: 'Behind so flat an inflection the wall bends back before it reaches the lip, or it feels what the shock inside the base sends out.',
    mend: 'Make the extension shorter, or the whole area ratio smaller.',
    where: 'nozzle.extensionLength',
    facts: { length, longest },
  });
}
/** [rad] 4°: the first search for a kink sharp enough. */
const KINK_STEP = (4 * Math.PI) / 180;

function outOfReach(spec: DualBellSpec, length: number, reached: number): ProblemError {
  const reach = Number.isFinite(reached) ? ` The shortest found is ${reached.toFixed(1)} throat radii.` : '';
  return new ProblemError({
    code: 'dual-bell-length-out-of-reach',
    what: `No inflection makes a dual bell of area ratio ${spec.areaRatio} on a base of ${spec.baseAreaRatio} end ${length.toFixed(1)} throat radii behind the throat.${reach}`,
    why: 'A sharper inflection makes the extension shorter, until the gas would have to turn or expand too far.',
    mend: 'Make the extension longer, or the whole area ratio smaller.',
    where: 'nozzle.extensionLength',
    facts: { length, areaRatio: spec.areaRatio, baseAreaRatio: spec.baseAreaRatio },
  });
}

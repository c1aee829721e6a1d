/**
 * The state of a streamtube from its mass flow and momentum on its piece of front.
 *
 * With n normal to the front, V_t = P_t / ṁ always (pressure does not act along the front). Then either
 *
 *   no shock   σ as before,      ρ(V, σ) V_n |A| = ṁ
 *   shock      p |A| = P_n − ṁ V_n,     (P_n − ṁ V_n) W(V) V_n = ṁ,     ln σ = ln p − ζ(V)
 *
 * both on the supersonic branch. The second is taken where the tube is compressed and the balance of momentum says that
 * stagnation pressure is lost; so entropy rises in shocks only, and nowhere falls.
 */

import { ProblemError } from '../../../numerics/problem.ts';
import { isSmall, smallArcSine, smallExp } from './smallSeries.ts';
import { TUBE_GAS_STRIDE, type TubeGas } from './tubeGas.ts';
import type { TubeFront } from './tubes.ts';

const MOST_STEPS = 40;
/** Under a name of this file's own, which the innermost loops take for a constant. */
const STRIDE = TUBE_GAS_STRIDE;
/** Relative change of V_n at which Newton stops; the next step would change it by its square. */
const SETTLED = 1e-7;
/** The same for Halley's rule; the next step would change it by its cube. */
const SETTLED_CUBED = 3e-6;
/** Halley's divisor is held above this share of Newton's where its start is far from the solution. */
const LEAST_HALLEY = 0.5;

/**
 * Numbers on the way to one tube's state. They are handed from function to function in an array, because a number handed
 * over as such is put into memory of its own by the engine, which costs more than it is worth in the innermost loop.
 */
export type TubeScratch = Float64Array;

/** Unit normal to the front; area of the piece of front; mass flow [kg/s]. */
const NX = 0;
const NR = 1;
const AREA = 2;
const MASS = 3;
/** Velocity along and across the front [m/s]; before: to begin with, after: found, 0 where there is none. */
const ALONG = 4;
const ACROSS = 5;
/** Normal momentum [N]. */
const PUSH = 6;
/** State to be noted: speed, its components [m/s], ln σ. */
const SPEED = 7;
const U = 8;
const V = 9;
const LN_SIGMA = 10;

export function tubeScratch(): TubeScratch {
  return new Float64Array(11);
}

/**
 * Find the state of tube j anew after its momentum and front have changed.
 * @throws ProblemError where no state is supersonic across the front (behind a strong shock) or the gas table ends
 */
export function updateTube(front: TubeFront, gas: TubeGas, j: number, tube: TubeScratch): void {
  lookAcross(front, j, tube);
  const lnSigma = front.lnSigma[j]!;
  const before = front.lnP[j]!;
  const start = tube[ACROSS]!;
  findIsentropic(gas, tube);
  const vn = tube[ACROSS]!;
  if (vn > 0) {
    setVelocity(tube);
    noteState(front, gas, j, tube);
  }
  if (!(vn > 0) || front.lnP[j]! > before) {
    if (!(vn > 0)) tube[ACROSS] = start;
    findBalanced(gas, tube);
    if (!(tube[ACROSS]! > 0)) noState(front, j, gas);
    setVelocity(tube);
    setLnSigma(gas, tube);
    if (tube[LN_SIGMA]! < lnSigma || !(vn > 0)) {
      noteState(front, gas, j, tube);
      return;
    }
  }
  const push = front.pressure[j]! * tube[AREA]!;
  const vt = tube[ALONG]!;
  const nx = tube[NX]!;
  const nr = tube[NR]!;
  const mass = tube[MASS]!;
  front.momentumX[j] = mass * (vn * nx + vt * nr) + push * nx;
  front.momentumR[j] = mass * (vn * nr - vt * nx) + push * nr;
}

/** The tube's piece of front; velocity along it, momentum across it, and the last velocity across it to begin with. */
function lookAcross(front: TubeFront, j: number, tube: TubeScratch): void {
  const { x, r } = front;
  const dx = x[j + 1]! - x[j]!;
  const dr = r[j + 1]! - r[j]!;
  const length = Math.sqrt(dx * dx + dr * dr);
  const perLength = 1 / length;
  const nx = dr * perLength;
  const nr = -dx * perLength;
  const mass = front.mass[j]!;
  const px = front.momentumX[j]!;
  const pr = front.momentumR[j]!;
  tube[NX] = nx;
  tube[NR] = nr;
  tube[AREA] = front.round ? length * 0.5 * (r[j]! + r[j + 1]!) : length;
  tube[MASS] = mass;
  tube[ALONG] = (px * nr - pr * nx) / mass;
  tube[PUSH] = px * nx + pr * nr;
  tube[ACROSS] = front.speed[j]! * (front.cosine[j]! * nx + front.sine[j]! * nr);
  tube[LN_SIGMA] = front.lnSigma[j]!;
}

function setVelocity(tube: TubeScratch): void {
  const vn = tube[ACROSS]!;
  const vt = tube[ALONG]!;
  tube[SPEED] = Math.sqrt(vn * vn + vt * vt);
  tube[U] = vn * tube[NX]! + vt * tube[NR]!;
  tube[V] = vn * tube[NR]! - vt * tube[NX]!;
}

/**
 * V_n [m/s] with ρ V_n |A| = ṁ, by Halley's rule on the logarithm; 0 where no supersonic flow carries that much, or the
 * table ends.
 */
function findIsentropic(gas: TubeGas, tube: TubeScratch): void {
  const { slowest, step, cells, knots, shift } = gas;
  const vt = tube[ALONG]!;
  const lnSigma = tube[LN_SIGMA]!;
  const perMass = tube[AREA]! / tube[MASS]!;
  // The slopes leave the shift with ln σ out; with it, each step closes in by a share only.
  const settled = shift === null || lnSigma === 0 ? SETTLED_CUBED : SETTLED;
  const perStep = 1 / step;
  let vn = tube[ACROSS]!;
  tube[ACROSS] = 0;
  for (let iteration = 0; iteration <= MOST_STEPS; iteration++) {
    const speed = Math.sqrt(vn * vn + vt * vt);
    const at = (speed - slowest) * perStep;
    // A little past the ends the cells' own cubics carry on, so that Newton may overshoot; noteState checks the outcome.
    if (!(at > -0.5 && at < cells + 0.5)) return;
    let i = at | 0;
    if (i >= cells) i = cells - 1;
    const t = at - i;
    const k = i * STRIDE + 6;
    const a = knots[k]!;
    const da = knots[k + 1]!;
    const d = knots[k + STRIDE]! - a;
    const db = knots[k + STRIDE + 1]!;
    const c2 = 3 * d - 2 * da - db;
    const c3 = da + db - 2 * d;
    let phi = a + t * (da + t * (c2 + t * c3)) + lnSigma;
    if (shift !== null && lnSigma !== 0) phi += lnSigma * cubic(shift, k, t);
    // Slope and curvature of Φ + ln V_n over ln V_n; share = V_n / V.
    const share = vn / speed;
    const square = share * share;
    const first = (da + t * (2 * c2 + 3 * t * c3)) * speed * perStep;
    const second = (2 * c2 + 6 * t * c3) * speed * speed * perStep * perStep;
    const slope = 1 + first * square;
    if (!(slope < 0)) {
      // At or below the sonic normal speed: step up to the supersonic branch.
      vn *= 1.01;
      continue;
    }
    const bend = square * (second * square + first * (1 - square)) - 1;
    const residual = phi + Math.log(vn * perMass);
    const least = LEAST_HALLEY * slope * slope;
    const divisor = slope * slope - 0.5 * residual * bend;
    const change = damped((vn * residual * slope) / (divisor > least ? divisor : least), speed);
    vn -= change;
    if (Math.abs(change) < settled * speed) {
      tube[ACROSS] = vn;
      return;
    }
  }
}

/**
 * V_n [m/s] from the balance of normal momentum, by Newton's rule; 0 where none is supersonic, or the table ends.
 */
function findBalanced(gas: TubeGas, tube: TubeScratch): void {
  const { slowest, step, cells, knots, shift } = gas;
  const mass = tube[MASS]!;
  const vt = tube[ALONG]!;
  const pn = tube[PUSH]!;
  const lnSigma = tube[LN_SIGMA]!;
  const perStep = 1 / step;
  let vn = tube[ACROSS]!;
  tube[ACROSS] = 0;
  for (let iteration = 0; iteration <= MOST_STEPS; iteration++) {
    const speed = Math.sqrt(vn * vn + vt * vt);
    const at = (speed - slowest) * perStep;
    if (!(at > -0.5 && at < cells + 0.5)) return;
    let i = at | 0;
    if (i >= cells) i = cells - 1;
    const t = at - i;
    const k = i * STRIDE + 2;
    const a = knots[k]!;
    const da = knots[k + 1]!;
    const d = knots[k + STRIDE]! - a;
    const db = knots[k + STRIDE + 1]!;
    const c2 = 3 * d - 2 * da - db;
    const c3 = da + db - 2 * d;
    let w = a + t * (da + t * (c2 + t * c3));
    if (shift !== null && lnSigma !== 0) w += lnSigma * cubic(shift, k, t);
    const push = pn - mass * vn;
    const dw = ((da + t * (2 * c2 + 3 * t * c3)) * perStep * vn) / speed;
    const slope = (pn - 2 * mass * vn) * w + push * vn * dw;
    if (!(slope < 0)) {
      vn *= 1.01;
      continue;
    }
    const change = damped((push * w * vn - mass) / slope, speed);
    vn -= change;
    if (Math.abs(change) < SETTLED * speed) {
      tube[ACROSS] = vn;
      return;
    }
  }
}

/** Near the sonic normal speed a slope is almost level and Newton would leap off. */
function damped(change: number, speed: number): number {
  const most = 0.04 * speed;
  return change > most ? most : change < -most ? -most : change;
}

/** ln σ from the pressure that the balance leaves, ln p = ζ + ln σ. */
function setLnSigma({ slowest, step, cells, knots, shift }: TubeGas, tube: TubeScratch): void {
  const at = (tube[SPEED]! - slowest) / step;
  const i = Math.min(Math.max(at | 0, 0), cells - 1);
  const t = at - i;
  const k = i * STRIDE;
  const a = knots[k]!;
  const da = knots[k + 1]!;
  const d = knots[k + STRIDE]! - a;
  const db = knots[k + STRIDE + 1]!;
  const zeta = a + t * (da + t * (3 * d - 2 * da - db + t * (da + db - 2 * d)));
  const lnSigma = Math.log((tube[PUSH]! - tube[MASS]! * tube[ACROSS]!) / tube[AREA]!) - zeta;
  tube[LN_SIGMA] = shift === null ? lnSigma : lnSigma / (1 + cubic(shift, k, t));
}

/**
 * Note the state of tube j, undisturbed gas at a velocity (u, v) [m/s].
 * @throws ProblemError where that is not supersonic
 */
export function noteUndisturbed(front: TubeFront, gas: TubeGas, j: number, u: number, v: number): void {
  const tube = tubeScratch();
  tube[SPEED] = Math.sqrt(u * u + v * v);
  tube[U] = u;
  tube[V] = v;
  noteState(front, gas, j, tube);
}

function noteState(front: TubeFront, gas: TubeGas, j: number, tube: TubeScratch): void {
  const { slowest, step, cells, knots, shift } = gas;
  const speed = tube[SPEED]!;
  const lnSigma = tube[LN_SIGMA]!;
  const at = (speed - slowest) / step;
  let i = at | 0;
  if (i < 0) i = 0;
  else if (i >= cells) i = cells - 1;
  const t = at - i;
  const k = i * STRIDE;
  const n = k + STRIDE;
  // Shares of the two knots and of their slopes.
  const back = t - 1;
  const b = t * t * (3 - 2 * t);
  const a = 1 - b;
  const da = t * back * back;
  const db = t * t * back;
  let zeta = a * knots[k]! + b * knots[n]! + da * knots[k + 1]! + db * knots[n + 1]!;
  let w = a * knots[k + 2]! + b * knots[n + 2]! + da * knots[k + 3]! + db * knots[n + 3]!;
  let m2 = a * knots[k + 4]! + b * knots[n + 4]! + da * knots[k + 5]! + db * knots[n + 5]!;
  if (shift !== null && lnSigma !== 0) {
    zeta += lnSigma * cubic(shift, k, t);
    w += lnSigma * cubic(shift, k + 2, t);
    m2 += lnSigma * cubic(shift, k + 4, t);
  }
  if (!(m2 > 1 && at <= cells)) noState(front, j, gas);
  const beta = Math.sqrt(m2 - 1);
  front.speed[j] = speed;
  const lnP = zeta + lnSigma;
  const rise = lnP - front.lnP[j]!;
  front.pressure[j] = isSmall(rise) ? front.pressure[j]! * smallExp(rise) : Math.exp(lnP);
  front.lnP[j] = lnP;
  front.lnSigma[j] = lnSigma;
  front.beta[j] = beta;
  front.bend[j] = beta / (w * speed * speed);
  noteDirection(front, j, tube);
}

function noteDirection(front: TubeFront, j: number, tube: TubeScratch): void {
  const { cosine, sine, theta } = front;
  const perSpeed = 1 / tube[SPEED]!;
  const c = tube[U]! * perSpeed;
  const s = tube[V]! * perSpeed;
  const turn = s * cosine[j]! - c * sine[j]!;
  // A front not yet filled has no direction: both are 0.
  const small = isSmall(turn) && c * cosine[j]! + s * sine[j]! > 0;
  theta[j] = small ? theta[j]! + smallArcSine(turn) : Math.atan2(s, c);
  cosine[j] = c;
  sine[j] = s;
}

function cubic(knots: Float64Array, k: number, t: number): number {
  const a = knots[k]!;
  const da = knots[k + 1]!;
  const db = knots[k + STRIDE + 1]!;
  const d = knots[k + STRIDE]! - a;
  return a + t * (da + t * (3 * d - 2 * da - db + t * (da + db - 2 * d)));
}

function noState(front: TubeFront, j: number, gas: TubeGas): never {
  const x = 0.5 * (front.x[j]! + front.x[j + 1]!);
  const r = 0.5 * (front.r[j]! + front.r[j + 1]!);
  const place = `Near axial place ${x.toPrecision(4)} and radius ${r.toPrecision(4)}, in the unit of the field (for a nozzle its throat radius),`;
  const lnP = front.lnP[j]!;
  const beyond = lnP < gas.knots[gas.cells * STRIDE]! + NEAR_END;
  throw new ProblemError({
    code: beyond ? 'flow-outside-table' : 'flow-turns-subsonic',
    what: beyond
      ? `${place} the flow expands past the end of the gas table, ${gas.fastest.toFixed(0)} m/s.`
      : `${place} the flow turns subsonic behind a strong shock; from there on it is not computed.`,
    why: beyond
      ? 'there the gas would be colder or thinner than its data allow'
      : 'a march downstream needs supersonic flow all along the front',
    mend: beyond
      ? 'Use a higher ambient pressure or a smaller area ratio.'
      : 'Look upstream of that place, or at a pressure nearer the design.',
    facts: { axial: x, radius: r },
  });
}

/** How near to the table's last ln p a tube is taken to have left it by expanding. */
const NEAR_END = 1.5;

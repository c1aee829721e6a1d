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
import { SMALL_TURN, smallArcSine } from './smallTurn.ts';
import { TUBE_GAS_STRIDE, type TubeGas } from './tubeGas.ts';
import type { TubeFront } from './tubes.ts';

const MOST_STEPS = 40;
/** Relative change of V_n at which Newton stops; the next step would change it by its square. */
const SETTLED = 1e-7;
/** The same for Halley's rule; the next step would change it by its cube. */
const SETTLED_CUBED = 3e-6;
/** Halley's divisor is held above this where its start is far from the solution. */
const LEAST_HALLEY = 0.5;

/**
 * Find the state of tube j anew after its momentum and front have changed.
 * @throws ProblemError where no state is supersonic across the front (behind a strong shock) or the gas table ends
 */
export function updateTube(front: TubeFront, gas: TubeGas, j: number): void {
  const dx = front.x[j + 1]! - front.x[j]!;
  const dr = front.r[j + 1]! - front.r[j]!;
  const length = Math.sqrt(dx * dx + dr * dr);
  const nx = dr / length;
  const nr = -dx / length;
  const area = front.round ? length * 0.5 * (front.r[j]! + front.r[j + 1]!) : length;
  const mass = front.mass[j]!;
  const px = front.momentumX[j]!;
  const pr = front.momentumR[j]!;
  const vt = (px * nr - pr * nx) / mass;
  const lnSigma = front.lnSigma[j]!;
  const before = front.lnP[j]!;
  const vn0 = front.speed[j]! * (front.cosine[j]! * nx + front.sine[j]! * nr);
  const vn = isentropicNormalSpeed(gas, area / mass, vn0, vt, lnSigma);
  if (vn > 0) {
    const speed = Math.sqrt(vn * vn + vt * vt);
    noteState(front, gas, j, speed, vn * nx + vt * nr, vn * nr - vt * nx, lnSigma);
  }
  if (!(vn > 0) || front.lnP[j]! > before) {
    const pn = px * nx + pr * nr;
    const shocked = balancedNormalSpeed(gas, pn, mass, vn > 0 ? vn : vn0, vt, lnSigma);
    if (!(shocked > 0)) noState(front, j, gas);
    const lnP = Math.log((pn - mass * shocked) / area);
    const fast = Math.sqrt(shocked * shocked + vt * vt);
    const left = lnSigmaAt(gas, fast, lnP);
    if (left < lnSigma || !(vn > 0)) {
      noteState(front, gas, j, fast, shocked * nx + vt * nr, shocked * nr - vt * nx, left);
      return;
    }
  }
  const pressure = Math.exp(front.lnP[j]!);
  front.momentumX[j] = mass * (vn * nx + vt * nr) + pressure * area * nx;
  front.momentumR[j] = mass * (vn * nr - vt * nx) + pressure * area * nr;
}

/**
 * V_n [m/s] with ρ V_n · `perMass` = 1, by Halley's rule on the logarithm; 0 where no supersonic flow carries that much, or
 * the table ends.
 * @param perMass area over mass flow of the tube [m² s/kg]
 */
function isentropicNormalSpeed(
  gas: TubeGas,
  perMass: number,
  start: number,
  vt: number,
  lnSigma: number,
): number {
  const { slowest, step, cells, knots, shift } = gas;
  let vn = start;
  for (let iteration = 0; ; iteration++) {
    const speed = Math.sqrt(vn * vn + vt * vt);
    const at = (speed - slowest) / step;
    // A little past the ends the cells' own cubics carry on, so that Newton may overshoot; noteState checks the outcome.
    if (!(at > -0.5 && at < cells + 0.5) || iteration > MOST_STEPS) return 0;
    let i = at | 0;
    if (i >= cells) i = cells - 1;
    const t = at - i;
    const k = i * TUBE_GAS_STRIDE + 6;
    const a = knots[k]!;
    const da = knots[k + 1]!;
    const d = knots[k + TUBE_GAS_STRIDE]! - a;
    const db = knots[k + TUBE_GAS_STRIDE + 1]!;
    const c2 = 3 * d - 2 * da - db;
    const c3 = da + db - 2 * d;
    let phi = a + t * (da + t * (c2 + t * c3));
    if (shift !== null && lnSigma !== 0) phi += lnSigma * cubic(shift, k, t);
    const perSpeed = 1 / (step * speed);
    const direction = vn * perSpeed;
    const along = da + t * (2 * c2 + 3 * t * c3);
    const slope = 1 / vn + along * direction;
    if (!(slope < 0)) {
      // At or below the sonic normal speed: step up to the supersonic branch.
      vn *= 1.01;
      continue;
    }
    const bend =
      (2 * c2 + 6 * t * c3) * direction * direction +
      along * perSpeed * (1 - (vn / speed) ** 2) -
      1 / (vn * vn);
    const newton = (phi + lnSigma + Math.log(vn * perMass)) / slope;
    const change = damped(newton / Math.max(1 - (0.5 * newton * bend) / slope, LEAST_HALLEY), speed);
    vn -= change;
    if (Math.abs(change) < SETTLED_CUBED * speed) return vn;
  }
}

/** V_n [m/s] from the balance of normal momentum; 0 where none is supersonic, or the table ends. */
function balancedNormalSpeed(
  gas: TubeGas,
  pn: number,
  mass: number,
  start: number,
  vt: number,
  lnSigma: number,
): number {
  const { slowest, step, cells, knots, shift } = gas;
  let vn = start;
  for (let iteration = 0; ; iteration++) {
    const speed = Math.sqrt(vn * vn + vt * vt);
    const at = (speed - slowest) / step;
    if (!(at > -0.5 && at < cells + 0.5) || iteration > MOST_STEPS) return 0;
    let i = at | 0;
    if (i >= cells) i = cells - 1;
    const t = at - i;
    const k = i * TUBE_GAS_STRIDE + 2;
    const a = knots[k]!;
    const da = knots[k + 1]!;
    const d = knots[k + TUBE_GAS_STRIDE]! - a;
    const db = knots[k + TUBE_GAS_STRIDE + 1]!;
    const c2 = 3 * d - 2 * da - db;
    const c3 = da + db - 2 * d;
    let w = a + t * (da + t * (c2 + t * c3));
    if (shift !== null && lnSigma !== 0) w += lnSigma * cubic(shift, k, t);
    const push = pn - mass * vn;
    const dw = ((da + t * (2 * c2 + 3 * t * c3)) * vn) / (step * speed);
    const slope = (pn - 2 * mass * vn) * w + push * vn * dw;
    if (!(slope < 0)) {
      vn *= 1.01;
      continue;
    }
    const change = damped((push * w * vn - mass) / slope, speed);
    vn -= change;
    if (Math.abs(change) < SETTLED * speed) return vn;
  }
}

/** Near the sonic normal speed a slope is almost level and Newton would leap off. */
function damped(change: number, speed: number): number {
  const most = 0.04 * speed;
  return change > most ? most : change < -most ? -most : change;
}

function lnSigmaAt({ slowest, step, cells, knots, shift }: TubeGas, speed: number, lnP: number): number {
  const at = (speed - slowest) / step;
  const i = Math.min(Math.max(at | 0, 0), cells - 1);
  const k = i * TUBE_GAS_STRIDE;
  const lnSigma = lnP - cubic(knots, k, at - i);
  return shift === null ? lnSigma : lnSigma / (1 + cubic(shift, k, at - i));
}

/**
 * Note the state of tube j: velocity (u, v) [m/s] of size `speed`, and ln σ.
 * @throws ProblemError where that is not supersonic
 */
export function noteState(
  front: TubeFront,
  gas: TubeGas,
  j: number,
  speed: number,
  u: number,
  v: number,
  lnSigma: number,
): void {
  const { slowest, step, cells, knots, shift } = gas;
  const at = (speed - slowest) / step;
  let i = at | 0;
  if (i < 0) i = 0;
  else if (i >= cells) i = cells - 1;
  const t = at - i;
  const k = i * TUBE_GAS_STRIDE;
  let zeta = cubic(knots, k, t);
  let w = cubic(knots, k + 2, t);
  let m2 = cubic(knots, k + 4, t);
  if (shift !== null && lnSigma !== 0) {
    zeta += lnSigma * cubic(shift, k, t);
    w += lnSigma * cubic(shift, k + 2, t);
    m2 += lnSigma * cubic(shift, k + 4, t);
  }
  if (!(m2 > 1 && at <= cells)) noState(front, j, gas);
  const beta = Math.sqrt(m2 - 1);
  const c = u / speed;
  const s = v / speed;
  const before = front.cosine[j]!;
  const sineBefore = front.sine[j]!;
  const turn = s * before - c * sineBefore;
  // A front not yet filled has no direction: both are 0.
  const small = turn < SMALL_TURN && turn > -SMALL_TURN && c * before + s * sineBefore > 0;
  front.theta[j] = small ? front.theta[j]! + smallArcSine(turn) : Math.atan2(v, u);
  front.speed[j] = speed;
  front.cosine[j] = c;
  front.sine[j] = s;
  front.lnP[j] = zeta + lnSigma;
  front.lnSigma[j] = lnSigma;
  front.beta[j] = beta;
  front.bend[j] = beta / (w * speed * speed);
}

function cubic(knots: Float64Array, k: number, t: number): number {
  const a = knots[k]!;
  const da = knots[k + 1]!;
  const db = knots[k + TUBE_GAS_STRIDE + 1]!;
  const d = knots[k + TUBE_GAS_STRIDE]! - a;
  return a + t * (da + t * (3 * d - 2 * da - db + t * (da + db - 2 * d)));
}

function noState(front: TubeFront, j: number, gas: TubeGas): never {
  const x = 0.5 * (front.x[j]! + front.x[j + 1]!);
  const r = 0.5 * (front.r[j]! + front.r[j + 1]!);
  const lnP = front.lnP[j]!;
  const beyond = lnP < gas.knots[gas.cells * TUBE_GAS_STRIDE]! + NEAR_END;
  throw new ProblemError({
    code: beyond ? 'flow-outside-table' : 'flow-turns-subsonic',
    what: beyond
      ? `Near (${x.toPrecision(4)}, ${r.toPrecision(4)}) m the flow expands past the end of the gas table, ${gas.fastest.toFixed(0)} m/s.`
      : `Near (${x.toPrecision(4)}, ${r.toPrecision(4)}) m the flow turns subsonic behind a strong shock; from there on it is not computed.`,
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

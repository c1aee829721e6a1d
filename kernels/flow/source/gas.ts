/** The tangents of the gases renewed after a step: see settle of the reference’s stage.ts and evenTable.ts. */

import {
  DENSITY,
  ENERGY,
  ETA,
  KAPPA,
  NI,
  PRESSURE,
  place,
  SHARE,
  STRIDE,
  U,
  V,
  word,
  ZETA,
} from './block';
import { bits, firstLanes, half, lanes } from './lanes';

const GHOSTS = 2;
/** Above this share of another gas a cell is mixed; 32-bit shares are rounded more coarsely. */
// @ts-ignore: decorator
@inline
function leastMixed<T extends number>(): f64 {
  return sizeof<T>() == 4 ? 1e-6 : 1e-9;
}

const PRESSURE_STEPS = 4;
/** A change of the pressure by this share asks for the tangent at the new one. */
const NEAR: f64 = 1e-3;

/** A gas: 0 in its first word: perfect, κ stands behind it. 1: a table. 64-bit floats from byte 8 on. */
// @ts-ignore: decorator
@inline
function isPerfect(gas: usize): bool {
  return load<i32>(gas) == 0;
}

let kappa: f64 = 1;
let eta: f64 = 0;
let zeta: f64 = 0;

// @ts-ignore: decorator
@inline
function chain(q: v128, sum: v128, factor: f64): v128 {
  return f64x2.add(f64x2.mul(q, sum), f64x2.splat(factor));
}

/** ln of two numbers above 0: exponent, and 2 artanh((m − 1)/(m + 1)) of what is left between √½ and √2. */
// @ts-ignore: decorator
@inline
function ln(values: v128): v128 {
  const half = i64x2.splat(0x3fe6a09e667f3bcd);
  // Bits above those of √½: the exponent, and the rest between √½ and √2.
  const raised = i64x2.sub(values, half);
  const whole = i64x2.shr_s(raised, 52);
  const m = i64x2.sub(values, i64x2.shl(whole, 52));
  const exponent = f64x2.convert_low_i32x4_s(v128.shuffle<i32>(whole, whole, 0, 2, 0, 2));
  const one = f64x2.splat(1);
  const s = f64x2.div(f64x2.sub(m, one), f64x2.add(m, one));
  const q = f64x2.mul(s, s);
  let series = f64x2.splat(1.0 / 19);
  series = chain(q, series, 1.0 / 17);
  series = chain(q, series, 1.0 / 15);
  series = chain(q, series, 1.0 / 13);
  series = chain(q, series, 1.0 / 11);
  series = chain(q, series, 1.0 / 9);
  series = chain(q, series, 1.0 / 7);
  series = chain(q, series, 1.0 / 5);
  series = chain(q, series, 1.0 / 3);
  series = chain(q, series, 1);
  return f64x2.add(
    f64x2.mul(f64x2.add(s, s), series),
    f64x2.mul(exponent, f64x2.splat(0.6931471805599453)),
  );
}

/** Words of a table: 1 rows, 2 columns, 3 the padded values’ place; floats from byte 16: from, places a unit of both axes. */
function tangentOf(gas: usize, density: f64, pressure: f64): void {
  if (isPerfect(gas)) {
    kappa = load<f64>(gas, 8);
    eta = 0;
    zeta = 0;
    return;
  }
  const rows = load<i32>(gas, 4);
  const columns = load<i32>(gas, 8);
  const values = <usize>load<u32>(gas, 12);
  const theta = pressure / density;
  const perX = load<f64>(gas, 24);
  const perY = load<f64>(gas, 40);
  const logs = ln(f64x2(pressure, theta));
  const sx = (f64x2.extract_lane(logs, 0) - load<f64>(gas, 16)) * perX;
  const sy = (f64x2.extract_lane(logs, 1) - load<f64>(gas, 32)) * perY;
  const i = min(rows - 2, max(0, <i32>floor(sx)));
  const j = min(columns - 2, max(0, <i32>floor(sy)));
  const wholeX = sx - <f64>i;
  const wholeY = sy - <f64>j;
  const x = min<f64>(1, max<f64>(0, wholeX));
  const y = min<f64>(1, max<f64>(0, wholeY));
  const x2 = x * x;
  const y2 = y * y;
  const beyondX = wholeX - x;
  const beyondY = wholeY - y;
  // Slopes first, values carried straight on beyond an end.
  const gx0 = (-1 + 4 * x - 3 * x2) / 2;
  const gx1 = (-10 * x + 9 * x2) / 2;
  const gx2 = (1 + 8 * x - 9 * x2) / 2;
  const gx3 = (-2 * x + 3 * x2) / 2;
  const wx0 = (-x + 2 * x2 - x2 * x) / 2 + beyondX * gx0;
  const wx1 = (2 - 5 * x2 + 3 * x2 * x) / 2 + beyondX * gx1;
  const wx2 = (x + 4 * x2 - 3 * x2 * x) / 2 + beyondX * gx2;
  const wx3 = (-x2 + x2 * x) / 2 + beyondX * gx3;
  const gy0 = (-1 + 4 * y - 3 * y2) / 2;
  const gy1 = (-10 * y + 9 * y2) / 2;
  const gy2 = (1 + 8 * y - 9 * y2) / 2;
  const gy3 = (-2 * y + 3 * y2) / 2;
  const wy01 = f64x2(
    (-y + 2 * y2 - y2 * y) / 2 + beyondY * gy0,
    (2 - 5 * y2 + 3 * y2 * y) / 2 + beyondY * gy1,
  );
  const wy23 = f64x2((y + 4 * y2 - 3 * y2 * y) / 2 + beyondY * gy2, (-y2 + y2 * y) / 2 + beyondY * gy3);
  const gy01 = f64x2(gy0, gy1);
  const gy23 = f64x2(gy2, gy3);
  // Down the four rows first: two columns at a time.
  const wide = <usize>(columns + 2) << 3;
  const a = values + <usize>i * wide + (<usize>j << 3);
  const b = a + wide;
  const c = b + wide;
  const d = c + wide;
  const low = down(a, b, c, d, wx0, wx1, wx2, wx3);
  const high = down(a + 16, b + 16, c + 16, d + 16, wx0, wx1, wx2, wx3);
  const lowX = down(a, b, c, d, gx0, gx1, gx2, gx3);
  const highX = down(a + 16, b + 16, c + 16, d + 16, gx0, gx1, gx2, gx3);
  const value = sum(f64x2.add(f64x2.mul(wy01, low), f64x2.mul(wy23, high)));
  const slopeX = sum(f64x2.add(f64x2.mul(wy01, lowX), f64x2.mul(wy23, highX))) * perX;
  const slopeY = sum(f64x2.add(f64x2.mul(gy01, low), f64x2.mul(gy23, high))) * perY;
  kappa = (slopeX + slopeY) / theta;
  eta = value - slopeY;
  zeta = -density * slopeX;
}

// @ts-ignore: decorator
@inline
function down(a: usize, b: usize, c: usize, d: usize, wa: f64, wb: f64, wc: f64, wd: f64): v128 {
  return f64x2.add(
    f64x2.add(f64x2.mul(f64x2.splat(wa), v128.load(a)), f64x2.mul(f64x2.splat(wb), v128.load(b))),
    f64x2.add(f64x2.mul(f64x2.splat(wc), v128.load(c)), f64x2.mul(f64x2.splat(wd), v128.load(d))),
  );
}

// @ts-ignore: decorator
@inline
function sum(pair: v128): f64 {
  return f64x2.extract_lane(pair, 0) + f64x2.extract_lane(pair, 1);
}

function mixedTangent(
  inner: usize,
  outer: usize,
  share: f64,
  least: f64,
  density: f64,
  pressure: f64,
): void {
  if (share > 1 - least) {
    tangentOf(inner, density, pressure);
    return;
  }
  tangentOf(outer, density, pressure);
  if (share < least) return;
  const k = kappa;
  const e = eta;
  const z = zeta;
  tangentOf(inner, density, pressure);
  kappa = share * kappa + (1 - share) * k;
  eta = share * eta + (1 - share) * e;
  zeta = share * zeta + (1 - share) * z;
}

/**
 * Of the rows `from` up to but not with `to`.
 * @param all cells of one gas too: in the others the tangent changes with their share
 * @returns the first cell that broke, behind which nothing is done; 0: none
 */
export function settle<T extends number>(
  block: usize,
  from: i32,
  to: i32,
  inner: usize,
  outer: usize,
  all: bool,
): i32 {
  const ni = word(block, NI);
  const size = sizeof<T>();
  const rowStep = <usize>word(block, STRIDE) * size;
  const onlyOne = inner == outer;
  const low = v128.splat<T>(<T>leastMixed<T>());
  const high = v128.splat<T>(<T>(1 - leastMixed<T>()));
  const outerKappa = isPerfect(outer) ? load<f64>(outer, 8) : 0;
  const innerKappa = isPerfect(inner) ? load<f64>(inner, 8) : 0;
  for (let j = from; j < to; j++) {
    const row = <usize>(j + GHOSTS) * rowStep;
    for (let k = 0; k < ni; k += lanes<T>()) {
      const at = row + <usize>(GHOSTS + k) * size;
      const inside = firstLanes<T>(ni - k);
      const shares = v128.load(place(block, SHARE) + at);
      if (!all) {
        const mixed = v128.and(v128.ge<T>(shares, low), v128.le<T>(shares, high));
        if (onlyOne || bits<T>(v128.and(mixed, inside)) == 0) continue;
      }
      // A perfect gas alone needs no table.
      let alone: f64 = 0;
      if (outerKappa > 0 && (onlyOne || bits<T>(v128.andnot(inside, v128.lt<T>(shares, low))) == 0))
        alone = outerKappa;
      else if (innerKappa > 0 && bits<T>(v128.andnot(inside, v128.gt<T>(shares, high))) == 0)
        alone = innerKappa;
      if (alone > 0) {
        const rho = v128.load(place(block, DENSITY) + at);
        const us = v128.load(place(block, U) + at);
        const vs = v128.load(place(block, V) + at);
        const moving = v128.mul<T>(
          v128.mul<T>(half<T>(), rho),
          v128.add<T>(v128.mul<T>(us, us), v128.mul<T>(vs, vs)),
        );
        const p = v128.mul<T>(
          v128.sub<T>(v128.load(place(block, ENERGY) + at), moving),
          v128.splat<T>(<T>(1 / alone)),
        );
        const bad = bits<T>(v128.andnot(inside, v128.gt<T>(p, v128.splat<T>(<T>0))));
        if (bad == 0) {
          put<T>(place(block, PRESSURE) + at, p, inside);
          put<T>(place(block, KAPPA) + at, v128.splat<T>(<T>alone), inside);
          put<T>(place(block, ETA) + at, v128.splat<T>(<T>0), inside);
          put<T>(place(block, ZETA) + at, v128.splat<T>(<T>0), inside);
          continue;
        }
      }
      const count = min(lanes<T>(), ni - k);
      for (let lane = 0; lane < count; lane++) {
        const cell = at + <usize>lane * size;
        if (!settleCell<T>(block, cell, inner, outer, onlyOne, all)) return <i32>(cell / size);
      }
    }
  }
  return 0;
}

// @ts-ignore: decorator
@inline
function put<T extends number>(at: usize, value: v128, inside: v128): void {
  v128.store(at, v128.bitselect(value, v128.load(at), inside));
}

function settleCell<T extends number>(
  block: usize,
  at: usize,
  inner: usize,
  outer: usize,
  onlyOne: bool,
  all: bool,
): bool {
  const rho = <f64>load<T>(place(block, DENSITY) + at);
  const share = <f64>load<T>(place(block, SHARE) + at);
  const alone = onlyOne || share < leastMixed<T>() || share > 1 - leastMixed<T>();
  if (alone && !all) return true;
  const u = <f64>load<T>(place(block, U) + at);
  const v = <f64>load<T>(place(block, V) + at);
  const moving = (rho * (u * u + v * v)) / 2;
  let p = <f64>load<T>(place(block, PRESSURE) + at);
  mixedTangent(inner, outer, share, leastMixed<T>(), rho, p);
  if (alone) {
    const held = <f64>load<T>(place(block, ENERGY) + at);
    for (let n = 0; n < PRESSURE_STEPS; n++) {
      const next = (held - moving - eta * rho - zeta) / kappa;
      const near = abs<f64>(next - p) <= NEAR * p;
      p = next;
      if (!(p > 0)) return false;
      if (near) break;
      mixedTangent(inner, outer, share, leastMixed<T>(), rho, p);
    }
    store<T>(place(block, PRESSURE) + at, <T>p);
  } else {
    store<T>(place(block, ENERGY) + at, <T>(kappa * p + eta * rho + zeta + moving));
  }
  store<T>(place(block, KAPPA) + at, <T>kappa);
  store<T>(place(block, ETA) + at, <T>eta);
  store<T>(place(block, ZETA) + at, <T>zeta);
  return true;
}

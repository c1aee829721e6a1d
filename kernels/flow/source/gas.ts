/** The tangents of the gases renewed after a step: see settle of the reference’s stage.ts and evenTable.ts. */

import {
  BROKEN,
  DENSITY,
  ENERGY,
  ETA,
  KAPPA,
  NI,
  NJ,
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
const MIXED: f64 = 1e-9;
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

/** ln of a number above 0: exponent, and 2 artanh((m − 1)/(m + 1)) of what is left between √½ and √2. */
function ln(value: f64): f64 {
  const raw = reinterpret<u64>(value);
  let exponent = <i32>(raw >> 52) - 1023;
  let m = reinterpret<f64>((raw & 0x000fffffffffffff) | 0x3ff0000000000000);
  if (m > 1.4142135623730951) {
    m *= 0.5;
    exponent += 1;
  }
  const s = (m - 1) / (m + 1);
  const q = s * s;
  const series =
    1 +
    q *
      (1.0 / 3 +
        q *
          (1.0 / 5 +
            q *
              (1.0 / 7 +
                q *
                  (1.0 / 9 +
                    q * (1.0 / 11 + q * (1.0 / 13 + q * (1.0 / 15 + q * (1.0 / 17 + q * (1.0 / 19)))))))));
  return 2 * s * series + <f64>exponent * 0.6931471805599453;
}

/** Words of a table: 1 rows, 2 columns, 3 the padded values’ place; floats from byte 16: from, step of both axes. */
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
  const sx = (ln(pressure) - load<f64>(gas, 16)) / load<f64>(gas, 24);
  const sy = (ln(theta) - load<f64>(gas, 32)) / load<f64>(gas, 40);
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
  const slopeX = sum(f64x2.add(f64x2.mul(wy01, lowX), f64x2.mul(wy23, highX))) / load<f64>(gas, 24);
  const slopeY = sum(f64x2.add(f64x2.mul(gy01, low), f64x2.mul(gy23, high))) / load<f64>(gas, 40);
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

function mixedTangent(inner: usize, outer: usize, share: f64, density: f64, pressure: f64): void {
  if (share > 1 - MIXED) {
    tangentOf(inner, density, pressure);
    return;
  }
  tangentOf(outer, density, pressure);
  if (share < MIXED) return;
  const k = kappa;
  const e = eta;
  const z = zeta;
  tangentOf(inner, density, pressure);
  kappa = share * kappa + (1 - share) * k;
  eta = share * eta + (1 - share) * e;
  zeta = share * zeta + (1 - share) * z;
}

/** @returns how many cells broke: at most one, the first; nothing is done behind it */
export function settle<T extends number>(block: usize, inner: usize, outer: usize): i32 {
  const ni = word(block, NI);
  const nj = word(block, NJ);
  const size = sizeof<T>();
  const rowStep = <usize>word(block, STRIDE) * size;
  const onlyOne = inner == outer;
  const low = v128.splat<T>(<T>MIXED);
  const high = v128.splat<T>(<T>(1 - MIXED));
  const outerKappa = isPerfect(outer) ? load<f64>(outer, 8) : 0;
  const innerKappa = isPerfect(inner) ? load<f64>(inner, 8) : 0;
  for (let j = 0; j < nj; j++) {
    const row = <usize>(j + GHOSTS) * rowStep;
    for (let k = 0; k < ni; k += lanes<T>()) {
      const at = row + <usize>(GHOSTS + k) * size;
      const inside = firstLanes<T>(ni - k);
      const shares = v128.load(place(block, SHARE) + at);
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
        if (settleCell<T>(block, cell, inner, outer, onlyOne)) continue;
        store<i32>(place(block, BROKEN), <i32>(cell / size));
        return 1;
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
): bool {
  const rho = <f64>load<T>(place(block, DENSITY) + at);
  const share = <f64>load<T>(place(block, SHARE) + at);
  const u = <f64>load<T>(place(block, U) + at);
  const v = <f64>load<T>(place(block, V) + at);
  const moving = (rho * (u * u + v * v)) / 2;
  let p = <f64>load<T>(place(block, PRESSURE) + at);
  mixedTangent(inner, outer, share, rho, p);
  if (onlyOne || share < MIXED || share > 1 - MIXED) {
    const held = <f64>load<T>(place(block, ENERGY) + at);
    for (let n = 0; n < PRESSURE_STEPS; n++) {
      const next = (held - moving - eta * rho - zeta) / kappa;
      const near = abs<f64>(next - p) <= NEAR * p;
      p = next;
      if (!(p > 0)) return false;
      if (near) break;
      mixedTangent(inner, outer, share, rho, p);
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

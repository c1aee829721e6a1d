/** The flux through a row of faces, as faceFlux.ts of the reference writes it, without branches but for shocks and walls. */

import { DENSITY, ETA, KAPPA, PRESSURE, place, SHARE, U, V, ZETA } from './block';
import { half, marked, markedAs } from './lanes';

/** Above this share of another gas two cells count as different gases; 32-bit shares are rounded more coarsely. */
// @ts-ignore: decorator
@inline
function otherGas<T extends number>(): T {
  return <T>(sizeof<T>() == 4 ? 1e-6 : 1e-9);
}

/**
 * Six rows: mass, momentum along x and y, energy as the cell before and as the cell behind reckons it, share.
 * @param row bytes to the row of the cells before the faces @param step bytes to the cells behind
 * @param before slopes of the cells before @param behind of those behind, both with the row’s own beginning
 * @param metrics of the faces’ normal along x; along y and area follow by their own places
 * @param ends whether the first and the last face of the row may be walls, or all
 */
export function facesOfRow<T extends number>(
  block: usize,
  row: usize,
  from: i32,
  count: i32,
  step: usize,
  before: usize,
  behind: usize,
  width: usize,
  normalX: usize,
  normalY: usize,
  areas: usize,
  shocks: usize,
  walls: usize,
  out: usize,
  wallsInside: bool,
  flat: bool,
): void {
  const first = <usize>from * sizeof<T>();
  const end = first + <usize>count * sizeof<T>();
  const density = place(block, DENSITY) + row;
  const u = place(block, U) + row;
  const v = place(block, V) + row;
  const pressure = place(block, PRESSURE) + row;
  const share = place(block, SHARE) + row;
  const kappa = place(block, KAPPA) + row;
  const eta = place(block, ETA) + row;
  const zeta = place(block, ZETA) + row;
  const marks = shocks + row / sizeof<T>();
  const wallMarks = walls + row / sizeof<T>();
  const markStep = step / sizeof<T>();
  const zero = v128.splat<T>(<T>0);
  const one = v128.splat<T>(<T>1);
  const other = v128.splat<T>(otherGas<T>());
  for (let at = first; at < end; at += 16) {
    const area = v128.load(areas + row + at);
    const nx = v128.load(normalX + row + at);
    const ny = v128.load(normalY + row + at);
    // The state before the face.
    let rl = v128.load(density + at);
    let pl = v128.load(pressure + at);
    let ux = v128.load(u + at);
    let uy = v128.load(v + at);
    const shareA = v128.load(share + at);
    let yl = shareA;
    if (!flat) {
      const dr = v128.mul<T>(half<T>(), v128.load(before + at));
      const dp = v128.mul<T>(half<T>(), v128.load(before + at + 3 * width));
      const ok = v128.and(v128.gt<T>(v128.add<T>(rl, dr), zero), v128.gt<T>(v128.add<T>(pl, dp), zero));
      const much = v128.and(ok, half<T>());
      rl = v128.add<T>(rl, v128.and(ok, dr));
      pl = v128.add<T>(pl, v128.and(ok, dp));
      ux = v128.add<T>(ux, v128.mul<T>(much, v128.load(before + at + width)));
      uy = v128.add<T>(uy, v128.mul<T>(much, v128.load(before + at + 2 * width)));
      yl = v128.add<T>(yl, v128.mul<T>(much, v128.load(before + at + 4 * width)));
    }
    let ul = v128.add<T>(v128.mul<T>(ux, nx), v128.mul<T>(uy, ny));
    let vl = v128.sub<T>(v128.mul<T>(uy, nx), v128.mul<T>(ux, ny));
    // And behind it.
    let rr = v128.load(density + step + at);
    let pr = v128.load(pressure + step + at);
    ux = v128.load(u + step + at);
    uy = v128.load(v + step + at);
    const shareB = v128.load(share + step + at);
    let yr = shareB;
    if (!flat) {
      const dr = v128.mul<T>(half<T>(), v128.load(behind + at));
      const dp = v128.mul<T>(half<T>(), v128.load(behind + at + 3 * width));
      const ok = v128.and(v128.gt<T>(v128.sub<T>(rr, dr), zero), v128.gt<T>(v128.sub<T>(pr, dp), zero));
      const much = v128.and(ok, half<T>());
      rr = v128.sub<T>(rr, v128.and(ok, dr));
      pr = v128.sub<T>(pr, v128.and(ok, dp));
      ux = v128.sub<T>(ux, v128.mul<T>(much, v128.load(behind + at + width)));
      uy = v128.sub<T>(uy, v128.mul<T>(much, v128.load(behind + at + 2 * width)));
      yr = v128.sub<T>(yr, v128.mul<T>(much, v128.load(behind + at + 4 * width)));
    }
    let ur = v128.add<T>(v128.mul<T>(ux, nx), v128.mul<T>(uy, ny));
    let vr = v128.sub<T>(v128.mul<T>(uy, nx), v128.mul<T>(ux, ny));
    let kl = v128.load(kappa + at);
    let el = v128.load(eta + at);
    let zl = v128.load(zeta + at);
    let kr = v128.load(kappa + step + at);
    let er = v128.load(eta + step + at);
    let zr = v128.load(zeta + step + at);
    if (wallsInside || at == first || at + 16 >= end) {
      // 1: the block lies behind the wall; 2: ahead of it. What comes is sent back.
      const low = markedAs<T>(wallMarks + at / sizeof<T>(), 1);
      const high = markedAs<T>(wallMarks + at / sizeof<T>(), 2);
      const through = ul;
      ul = v128.bitselect(v128.neg<T>(ur), ul, low);
      ur = v128.bitselect(v128.neg<T>(through), ur, high);
      rl = v128.bitselect(rr, rl, low);
      pl = v128.bitselect(pr, pl, low);
      vl = v128.bitselect(vr, vl, low);
      yl = v128.bitselect(yr, yl, low);
      kl = v128.bitselect(kr, kl, low);
      el = v128.bitselect(er, el, low);
      zl = v128.bitselect(zr, zl, low);
      rr = v128.bitselect(rl, rr, high);
      pr = v128.bitselect(pl, pr, high);
      vr = v128.bitselect(vl, vr, high);
      yr = v128.bitselect(yl, yr, high);
      kr = v128.bitselect(kl, kr, high);
      er = v128.bitselect(el, er, high);
      zr = v128.bitselect(zl, zr, high);
    }
    const apart = v128.gt<T>(v128.abs<T>(v128.sub<T>(shareA, shareB)), other);
    const movingL = v128.mul<T>(
      v128.mul<T>(half<T>(), rl),
      v128.add<T>(v128.mul<T>(ul, ul), v128.mul<T>(vl, vl)),
    );
    const movingR = v128.mul<T>(
      v128.mul<T>(half<T>(), rr),
      v128.add<T>(v128.mul<T>(ur, ur), v128.mul<T>(vr, vr)),
    );
    // Outer speeds by Einfeldt.
    const squareL = v128.div<T>(
      v128.add<T>(v128.mul<T>(v128.add<T>(kl, one), pl), zl),
      v128.mul<T>(kl, rl),
    );
    const squareR = v128.div<T>(
      v128.add<T>(v128.mul<T>(v128.add<T>(kr, one), pr), zr),
      v128.mul<T>(kr, rr),
    );
    const wl = v128.sqrt<T>(rl);
    const part = v128.div<T>(wl, v128.add<T>(wl, v128.sqrt<T>(rr)));
    const rest = v128.sub<T>(one, part);
    const jump = v128.sub<T>(ur, ul);
    const mean = v128.add<T>(v128.mul<T>(part, ul), v128.mul<T>(rest, ur));
    const middle = v128.sqrt<T>(
      v128.add<T>(
        v128.add<T>(v128.mul<T>(part, squareL), v128.mul<T>(rest, squareR)),
        v128.mul<T>(v128.mul<T>(half<T>(), v128.mul<T>(part, rest)), v128.mul<T>(jump, jump)),
      ),
    );
    const sl = v128.pmin<T>(v128.sub<T>(ul, v128.sqrt<T>(squareL)), v128.sub<T>(mean, middle));
    const sr = v128.pmax<T>(v128.add<T>(ur, v128.sqrt<T>(squareR)), v128.add<T>(mean, middle));
    const ml = v128.mul<T>(rl, v128.sub<T>(sl, ul));
    const mr = v128.mul<T>(rr, v128.sub<T>(sr, ur));
    const sm = v128.div<T>(
      v128.sub<T>(
        v128.add<T>(v128.sub<T>(pr, pl), v128.mul<T>(ul, ml)),
        v128.mul<T>(ur, mr),
      ),
      v128.sub<T>(ml, mr),
    );
    const fromL = v128.ge<T>(sl, zero);
    const fromR = v128.andnot(v128.le<T>(sr, zero), fromL);
    // The side that passes; where the flow is faster than sound it passes as it is.
    const left = v128.andnot(v128.or(fromL, v128.ge<T>(sm, zero)), fromR);
    const rk = v128.bitselect(rl, rr, left);
    const pk = v128.bitselect(pl, pr, left);
    const uk = v128.bitselect(ul, ur, left);
    const vk = v128.bitselect(vl, vr, left);
    const yk = v128.bitselect(yl, yr, left);
    const sk = v128.bitselect(sl, sr, left);
    const mk = v128.bitselect(ml, mr, left);
    const movingK = v128.bitselect(movingL, movingR, left);
    const speed = v128.bitselect(uk, sm, v128.or(fromL, fromR));
    let byA = v128.add<T>(
      v128.add<T>(v128.mul<T>(kl, pk), v128.mul<T>(el, rk)),
      v128.add<T>(zl, movingK),
    );
    let byB = v128.add<T>(
      v128.add<T>(v128.mul<T>(kr, pk), v128.mul<T>(er, rk)),
      v128.add<T>(zr, movingK),
    );
    const own = v128.bitselect(byA, byB, left);
    byA = v128.bitselect(byA, own, apart);
    byB = v128.bitselect(byB, own, apart);
    const star = v128.add<T>(pk, v128.mul<T>(mk, v128.sub<T>(speed, uk)));
    const per = v128.div<T>(speed, v128.sub<T>(sk, speed));
    let m = v128.mul<T>(mk, per);
    let pn = v128.add<T>(v128.mul<T>(m, speed), star);
    let pt = v128.mul<T>(m, vk);
    let my = v128.mul<T>(m, yk);
    const gap = v128.sub<T>(sk, uk);
    const work = v128.sub<T>(v128.mul<T>(star, speed), v128.mul<T>(pk, uk));
    const push = v128.mul<T>(star, speed);
    let ea = v128.add<T>(v128.mul<T>(v128.add<T>(v128.mul<T>(gap, byA), work), per), push);
    let eb = v128.add<T>(v128.mul<T>(v128.add<T>(v128.mul<T>(gap, byB), work), per), push);
    const shock = v128.andnot(
      v128.or(
        marked<T>(marks + at / sizeof<T>()),
        marked<T>(marks + markStep + at / sizeof<T>()),
      ),
      v128.or(fromL, fromR),
    );
    if (v128.any_true(shock)) {
      // Across a strong shock: without the contact.
      const over = v128.div<T>(one, v128.sub<T>(sr, sl));
      const gl = v128.mul<T>(sr, over);
      const gr = v128.neg<T>(v128.mul<T>(sl, over));
      const g = v128.mul<T>(sl, gl);
      const massL = v128.mul<T>(rl, ul);
      const massR = v128.mul<T>(rr, ur);
      m = v128.bitselect(blend<T>(gl, massL, gr, massR, g, rl, rr), m, shock);
      pn = v128.bitselect(
        blend<T>(
          gl,
          v128.add<T>(v128.mul<T>(massL, ul), pl),
          gr,
          v128.add<T>(v128.mul<T>(massR, ur), pr),
          g,
          massL,
          massR,
        ),
        pn,
        shock,
      );
      pt = v128.bitselect(
        blend<T>(
          gl,
          v128.mul<T>(massL, vl),
          gr,
          v128.mul<T>(massR, vr),
          g,
          v128.mul<T>(rl, vl),
          v128.mul<T>(rr, vr),
        ),
        pt,
        shock,
      );
      my = v128.bitselect(
        blend<T>(
          gl,
          v128.mul<T>(massL, yl),
          gr,
          v128.mul<T>(massR, yr),
          g,
          v128.mul<T>(rl, yl),
          v128.mul<T>(rr, yr),
        ),
        my,
        shock,
      );
      const leftA = energyOf<T>(kl, pl, el, rl, zl, movingL);
      const rightB = energyOf<T>(kr, pr, er, rr, zr, movingR);
      const rightA = v128.bitselect(energyOf<T>(kl, pr, el, rr, zl, movingR), rightB, apart);
      const leftB = v128.bitselect(energyOf<T>(kr, pl, er, rl, zr, movingL), leftA, apart);
      ea = v128.bitselect(
        blend<T>(
          gl,
          v128.mul<T>(v128.add<T>(leftA, pl), ul),
          gr,
          v128.mul<T>(v128.add<T>(rightA, pr), ur),
          g,
          leftA,
          rightA,
        ),
        ea,
        shock,
      );
      eb = v128.bitselect(
        blend<T>(
          gl,
          v128.mul<T>(v128.add<T>(leftB, pl), ul),
          gr,
          v128.mul<T>(v128.add<T>(rightB, pr), ur),
          g,
          leftB,
          rightB,
        ),
        eb,
        shock,
      );
    }
    // Faces without area let nothing through, whatever stands beside them.
    const open = v128.gt<T>(area, zero);
    const px = v128.sub<T>(v128.mul<T>(pn, nx), v128.mul<T>(pt, ny));
    const py = v128.add<T>(v128.mul<T>(pn, ny), v128.mul<T>(pt, nx));
    v128.store(out + at, v128.and(open, v128.mul<T>(m, area)));
    v128.store(out + at + width, v128.and(open, v128.mul<T>(px, area)));
    v128.store(out + at + 2 * width, v128.and(open, v128.mul<T>(py, area)));
    v128.store(out + at + 3 * width, v128.and(open, v128.mul<T>(ea, area)));
    v128.store(out + at + 4 * width, v128.and(open, v128.mul<T>(eb, area)));
    v128.store(out + at + 5 * width, v128.and(open, v128.mul<T>(my, area)));
  }
}

// @ts-ignore: decorator
@inline
function blend<T extends number>(
  gl: v128,
  fl: v128,
  gr: v128,
  fr: v128,
  g: v128,
  l: v128,
  r: v128,
): v128 {
  return v128.add<T>(
    v128.add<T>(v128.mul<T>(gl, fl), v128.mul<T>(gr, fr)),
    v128.mul<T>(g, v128.sub<T>(r, l)),
  );
}

// @ts-ignore: decorator
@inline
function energyOf<T extends number>(k: v128, p: v128, e: v128, r: v128, z: v128, moving: v128): v128 {
  return v128.add<T>(v128.add<T>(v128.mul<T>(k, p), v128.mul<T>(e, r)), v128.add<T>(z, moving));
}

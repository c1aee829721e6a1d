/** Cells in which a strong shock lies, and each cell’s longest step: see shockMarks.ts and timeSteps.ts of the reference. */

import {
  DENSITY,
  I_AREA,
  I_X,
  I_Y,
  J_AREA,
  J_X,
  J_Y,
  KAPPA,
  NI,
  PRESSURE,
  place,
  SECONDS,
  SHOCK_I,
  SHOCK_J,
  STRIDE,
  U,
  V,
  VOLUME,
  word,
  ZETA,
} from './block';
import { bits, firstLanes, lanes } from './lanes';

const GHOSTS = 2;
/** A jump of pressure over two cells, against the lower one, from which a shock is strong. */
const STRONG: f64 = 0.8;

// @ts-ignore: decorator
@inline
function jumps<T extends number>(at: usize, step: usize): v128 {
  const before = v128.load(at - step);
  const behind = v128.load(at + step);
  const low = v128.pmin<T>(before, behind);
  return v128.gt<T>(
    v128.sub<T>(v128.pmax<T>(before, behind), low),
    v128.mul<T>(v128.splat<T>(<T>STRONG), low),
  );
}

// @ts-ignore: decorator
@inline
function mark<T extends number>(out: usize, mask: v128): void {
  const set = bits<T>(mask);
  store<u8>(out, set & 1);
  store<u8>(out, (set >> 1) & 1, 1);
  if (sizeof<T>() == 4) {
    store<u8>(out, (set >> 2) & 1, 2);
    store<u8>(out, (set >> 3) & 1, 3);
  }
}

/** Of the rows `from` up to but not with `to`, as in all that follows. */
export function shocks<T extends number>(block: usize, from: i32, to: i32): void {
  const ni = word(block, NI);
  const size = sizeof<T>();
  const rowStep = <usize>word(block, STRIDE) * size;
  const pressure = place(block, PRESSURE);
  for (let j = from; j < to; j++) {
    const row = <usize>(j + GHOSTS) * rowStep;
    for (let k = 0; k < ni; k += lanes<T>()) {
      const at = row + <usize>(GHOSTS + k) * size;
      mark<T>(place(block, SHOCK_I) + at / size, jumps<T>(pressure + at, size));
      mark<T>(place(block, SHOCK_J) + at / size, jumps<T>(pressure + at, rowStep));
    }
  }
}

// @ts-ignore: decorator
@inline
function swept<T extends number>(
  u: v128,
  v: v128,
  sound: v128,
  x: usize,
  y: usize,
  area: usize,
  back: usize,
): v128 {
  const one = v128.load(area - back);
  const two = v128.load(area);
  const sx = v128.add<T>(v128.mul<T>(one, v128.load(x - back)), v128.mul<T>(two, v128.load(x)));
  const sy = v128.add<T>(v128.mul<T>(one, v128.load(y - back)), v128.mul<T>(two, v128.load(y)));
  const along = v128.abs<T>(v128.add<T>(v128.mul<T>(u, sx), v128.mul<T>(v, sy)));
  const size = v128.sqrt<T>(v128.add<T>(v128.mul<T>(sx, sx), v128.mul<T>(sy, sy)));
  return v128.add<T>(along, v128.mul<T>(sound, size));
}

/** Writes the seconds of each cell. @returns the shortest */
export function steps<T extends number>(block: usize, from: i32, to: i32, courant: f64): f64 {
  const ni = word(block, NI);
  const size = sizeof<T>();
  const rowStep = <usize>word(block, STRIDE) * size;
  const share = v128.splat<T>(<T>(2 * courant));
  const one = v128.splat<T>(<T>1);
  const far = v128.splat<T>(<T>1e30);
  let least = far;
  for (let j = from; j < to; j++) {
    const row = <usize>(j + GHOSTS) * rowStep;
    for (let k = 0; k < ni; k += lanes<T>()) {
      const at = row + <usize>(GHOSTS + k) * size;
      const kappa = v128.load(place(block, KAPPA) + at);
      const u = v128.load(place(block, U) + at);
      const v = v128.load(place(block, V) + at);
      const sound = v128.sqrt<T>(
        v128.div<T>(
          v128.add<T>(
            v128.mul<T>(v128.add<T>(kappa, one), v128.load(place(block, PRESSURE) + at)),
            v128.load(place(block, ZETA) + at),
          ),
          v128.mul<T>(kappa, v128.load(place(block, DENSITY) + at)),
        ),
      );
      const across = swept<T>(
        u,
        v,
        sound,
        place(block, I_X) + at,
        place(block, I_Y) + at,
        place(block, I_AREA) + at,
        size,
      );
      const along = swept<T>(
        u,
        v,
        sound,
        place(block, J_X) + at,
        place(block, J_Y) + at,
        place(block, J_AREA) + at,
        rowStep,
      );
      const own = v128.div<T>(
        v128.mul<T>(share, v128.load(place(block, VOLUME) + at)),
        v128.add<T>(across, along),
      );
      v128.store(place(block, SECONDS) + at, own);
      least = v128.pmin<T>(least, v128.bitselect(own, far, firstLanes<T>(ni - k)));
    }
  }
  let shortest: f64 = Infinity;
  if (sizeof<T>() == 4) {
    shortest = Math.min(
      Math.min(<f64>f32x4.extract_lane(least, 0), <f64>f32x4.extract_lane(least, 1)),
      Math.min(<f64>f32x4.extract_lane(least, 2), <f64>f32x4.extract_lane(least, 3)),
    );
  } else {
    shortest = Math.min(f64x2.extract_lane(least, 0), f64x2.extract_lane(least, 1));
  }
  return shortest;
}

/**
 * One stage of a step over a part of a block, row by row, in place: slopes, fluxes, new state. See stage.ts of the reference.
 * Parts of a block may be stepped by several threads at once: what they ask of each other is found before.
 */

import {
  BROKEN,
  DENSITY,
  ENERGY,
  ETA,
  I_AREA,
  I_WALL,
  I_X,
  I_Y,
  J_AREA,
  J_WALL,
  J_X,
  J_Y,
  KAPPA,
  KEPT,
  NI,
  NJ,
  PLANE,
  PRESSURE,
  place,
  ROUND,
  ROW_BYTES,
  ROWS,
  SECONDS,
  SHARE,
  SHOCK_I,
  SHOCK_J,
  STRIDE,
  U,
  V,
  VOLUME,
  word,
  ZETA,
} from './block';
import { facesOfRow } from './faces';
import { bits, firstLanes, half, lanes } from './lanes';
import { slopesOfRow } from './slopes';

const GHOSTS = 2;

/**
 * A thread’s own rows of work space: slopes along the row (5), of two rows across (5, 5), fluxes along (6), of two lines
 * across (6, 6), and slopes (5) and fluxes (6) of the end of its part.
 */
const HAND_ROWS = 44;

// @ts-ignore: decorator
@inline
function rowsOf(block: usize, hand: i32): usize {
  return place(block, ROWS) + <usize>(hand * HAND_ROWS) * place(block, ROW_BYTES);
}

/** Slopes across of the rows beside a line of faces, and what flows through it. */
function lineOf<T extends number>(
  block: usize,
  line: i32,
  before: usize,
  behind: usize,
  out: usize,
  flat: bool,
): void {
  const ni = word(block, NI);
  const rowStep = <usize>word(block, STRIDE) * sizeof<T>();
  const row = <usize>(line + GHOSTS) * rowStep;
  const width = place(block, ROW_BYTES);
  slopesOfRow<T>(block, row - rowStep, GHOSTS, ni, rowStep, before, width, flat);
  slopesOfRow<T>(block, row, GHOSTS, ni, rowStep, behind, width, flat);
  facesAcross<T>(block, line, before, behind, out, flat);
}

function facesAcross<T extends number>(
  block: usize,
  line: i32,
  before: usize,
  behind: usize,
  out: usize,
  flat: bool,
): void {
  const rowStep = <usize>word(block, STRIDE) * sizeof<T>();
  facesOfRow<T>(
    block,
    <usize>(line + GHOSTS - 1) * rowStep,
    GHOSTS,
    word(block, NI),
    rowStep,
    before,
    behind,
    place(block, ROW_BYTES),
    place(block, J_X),
    place(block, J_Y),
    place(block, J_AREA),
    place(block, SHOCK_I),
    place(block, J_WALL),
    out,
    line == 0 || line == word(block, NJ),
    flat,
  );
}

/**
 * What a part, rows `from` up to but not with `to`, asks of the rows beyond it: to be found before any part is stepped,
 * for each is stepped in place.
 */
export function edges<T extends number>(block: usize, hand: i32, from: i32, to: i32, flat: bool): void {
  const width = place(block, ROW_BYTES);
  const rows = rowsOf(block, hand);
  lineOf<T>(block, from, rows, rows + 5 * width, rows + 21 * width, flat);
  lineOf<T>(block, to, rows + 33 * width, rows, rows + 38 * width, flat);
}

/**
 * Steps the part whose edges were found.
 * @param which 0: forward, what was before is kept; 1: forward again, then the mean with what was kept
 * @returns how many cells broke; their places stand in the block’s list, from that of the part’s first cell on
 */
export function stage<T extends number>(
  block: usize,
  hand: i32,
  from: i32,
  to: i32,
  which: i32,
  flat: bool,
): i32 {
  const ni = word(block, NI);
  const size = sizeof<T>();
  const rowStep = <usize>word(block, STRIDE) * size;
  const width = place(block, ROW_BYTES);
  const rows = rowsOf(block, hand);
  const list = place(block, BROKEN) + (<usize>(from * ni) << 2);
  const slopesI = rows;
  const fluxI = rows + 15 * width;
  let slopesBehind = rows + 5 * width;
  let slopesFree = rows + 10 * width;
  let fluxBefore = rows + 21 * width;
  let fluxFree = rows + 27 * width;
  let broken = 0;
  for (let line = from + 1; line <= to; line++) {
    const row = <usize>(line + GHOSTS) * rowStep;
    let fluxHere = rows + 38 * width;
    if (line < to) {
      fluxHere = fluxFree;
      let slopesHere = rows + 33 * width;
      if (line < to - 1) {
        slopesHere = slopesFree;
        slopesOfRow<T>(block, row, GHOSTS, ni, rowStep, slopesHere, width, flat);
      }
      facesAcross<T>(block, line, slopesBehind, slopesHere, fluxHere, flat);
      slopesFree = slopesBehind;
      slopesBehind = slopesHere;
    }
    const own = row - rowStep;
    slopesOfRow<T>(block, own, GHOSTS - 1, ni + 2, size, slopesI, width, flat);
    facesOfRow<T>(
      block,
      own,
      GHOSTS - 1,
      ni + 1,
      size,
      slopesI,
      slopesI + size,
      width,
      place(block, I_X),
      place(block, I_Y),
      place(block, I_AREA),
      place(block, SHOCK_J),
      place(block, I_WALL),
      fluxI,
      false,
      flat,
    );
    broken = rowOfStage<T>(block, own, ni, fluxI, fluxBefore, fluxHere, width, which, list, broken);
    fluxFree = fluxBefore;
    fluxBefore = fluxHere;
  }
  return broken;
}

// @ts-ignore: decorator
@inline
function into<T extends number>(i: usize, low: usize, high: usize, away: usize): v128 {
  return v128.add<T>(
    v128.sub<T>(v128.load(i - sizeof<T>()), v128.load(i + away)),
    v128.sub<T>(v128.load(low), v128.load(high + away)),
  );
}

function rowOfStage<T extends number>(
  block: usize,
  row: usize,
  ni: i32,
  fluxI: usize,
  low: usize,
  high: usize,
  width: usize,
  which: i32,
  list: usize,
  broken: i32,
): i32 {
  const size = sizeof<T>();
  const first = <usize>GHOSTS * size;
  const density = place(block, DENSITY) + row;
  const u = place(block, U) + row;
  const v = place(block, V) + row;
  const pressure = place(block, PRESSURE) + row;
  const share = place(block, SHARE) + row;
  const kappa = place(block, KAPPA) + row;
  const eta = place(block, ETA) + row;
  const zeta = place(block, ZETA) + row;
  const energy = place(block, ENERGY) + row;
  const oldDensity = place(block, KEPT) + row;
  const oldU = place(block, KEPT + 1) + row;
  const oldV = place(block, KEPT + 2) + row;
  const oldPressure = place(block, KEPT + 3) + row;
  const oldShare = place(block, KEPT + 4) + row;
  const oldKappa = place(block, KEPT + 5) + row;
  const oldEta = place(block, KEPT + 6) + row;
  const oldZeta = place(block, KEPT + 7) + row;
  const oldEnergy = place(block, KEPT + 8) + row;
  const volume = place(block, VOLUME) + row;
  const plane = place(block, PLANE) + row;
  const seconds = place(block, SECONDS) + row;
  const round = word(block, ROUND) != 0;
  const zero = v128.splat<T>(<T>0);
  for (let k = 0; k < ni; k += lanes<T>()) {
    const at = first + <usize>k * size;
    const over = v128.div<T>(v128.load(seconds + at), v128.load(volume + at));
    const rho = v128.load(density + at);
    const us = v128.load(u + at);
    const vs = v128.load(v + at);
    const p0 = v128.load(pressure + at);
    const shares = v128.load(share + at);
    const held0 = v128.load(energy + at);
    const ks = v128.load(kappa + at);
    const es = v128.load(eta + at);
    const zs = v128.load(zeta + at);
    const i = fluxI + at;
    const a = low + at;
    const b = high + at;
    let pushY = into<T>(i + 2 * width, a + 2 * width, b + 2 * width, 0);
    if (round) pushY = v128.add<T>(pushY, v128.mul<T>(p0, v128.load(plane + at)));
    let mass = v128.add<T>(rho, v128.mul<T>(over, into<T>(i, a, b, 0)));
    let x = v128.add<T>(
      v128.mul<T>(rho, us),
      v128.mul<T>(over, into<T>(i + width, a + width, b + width, 0)),
    );
    let y = v128.add<T>(v128.mul<T>(rho, vs), v128.mul<T>(over, pushY));
    // In comes what the cell behind a face reckons, out goes what the cell before it does.
    const gained = v128.add<T>(
      v128.sub<T>(v128.load(i - size + 4 * width), v128.load(i + 3 * width)),
      v128.sub<T>(v128.load(a + 4 * width), v128.load(b + 3 * width)),
    );
    let held = v128.add<T>(held0, v128.mul<T>(over, gained));
    let inner = v128.add<T>(
      v128.mul<T>(rho, shares),
      v128.mul<T>(over, into<T>(i + 5 * width, a + 5 * width, b + 5 * width, 0)),
    );
    if (which == 0) {
      v128.store(oldDensity + at, rho);
      v128.store(oldU + at, us);
      v128.store(oldV + at, vs);
      v128.store(oldPressure + at, p0);
      v128.store(oldShare + at, shares);
      v128.store(oldKappa + at, ks);
      v128.store(oldEta + at, es);
      v128.store(oldZeta + at, zs);
      v128.store(oldEnergy + at, held0);
    } else {
      const was = v128.load(oldDensity + at);
      mass = v128.mul<T>(half<T>(), v128.add<T>(mass, was));
      x = v128.mul<T>(half<T>(), v128.add<T>(x, v128.mul<T>(was, v128.load(oldU + at))));
      y = v128.mul<T>(half<T>(), v128.add<T>(y, v128.mul<T>(was, v128.load(oldV + at))));
      held = v128.mul<T>(half<T>(), v128.add<T>(held, v128.load(oldEnergy + at)));
      inner = v128.mul<T>(half<T>(), v128.add<T>(inner, v128.mul<T>(was, v128.load(oldShare + at))));
    }
    const per = v128.div<T>(v128.splat<T>(<T>1), mass);
    const newU = v128.mul<T>(x, per);
    const newV = v128.mul<T>(y, per);
    const moving = v128.mul<T>(
      half<T>(),
      v128.add<T>(v128.mul<T>(x, newU), v128.mul<T>(y, newV)),
    );
    const p = v128.div<T>(
      v128.sub<T>(v128.sub<T>(v128.sub<T>(held, moving), v128.mul<T>(es, mass)), zs),
      ks,
    );
    const inside = firstLanes<T>(ni - k);
    const ok = v128.and(v128.gt<T>(mass, zero), v128.gt<T>(p, zero));
    const write = v128.and(ok, inside);
    v128.store(density + at, v128.bitselect(mass, rho, write));
    v128.store(u + at, v128.bitselect(newU, us, write));
    v128.store(v + at, v128.bitselect(newV, vs, write));
    v128.store(share + at, v128.bitselect(v128.mul<T>(inner, per), shares, write));
    v128.store(energy + at, v128.bitselect(held, held0, write));
    v128.store(pressure + at, v128.bitselect(p, p0, write));
    const bad = bits<T>(v128.andnot(inside, ok));
    if (bad != 0) {
      for (let lane = 0; lane < lanes<T>(); lane++) {
        if (((bad >> lane) & 1) == 0) continue;
        store<i32>(list + (<usize>broken << 2), <i32>((row + at) / size) + lane);
        broken += 1;
      }
    }
  }
  return broken;
}

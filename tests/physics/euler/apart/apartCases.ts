/** Two blocks of cells that differ by a factor of 27, for flows in strips. */

import {
  type FlowPoint,
  type FlowSetup,
  meshBlock,
  perfectFieldGas,
  type SideKind,
  type SidePart,
} from '../../../../src/physics/euler/index.ts';

const [NI, NJ] = [64, 12];
const wall: SideKind = { is: 'wall' };

/** Cells in the middle a twenty-seventh as long as at the ends; crooked across. */
function place(i: number, j: number, rows: number): readonly [number, number] {
  const s = (2 * i) / NI - 1;
  const x = 0.1 * s + 0.9 * s ** 3;
  return [x + 0.004 * Math.sin(j), (0.4 * j) / rows + 0.01 * Math.sin(3 * x)];
}

/** Two blocks one above the other, closed on all sides but where told. */
export function unevenSetup(
  start: FlowSetup['start'],
  ends: SideKind = wall,
  gases: readonly [number, number] = [1.4, 1.4],
): FlowSetup {
  const [inner, outer] = gases.map(perfectFieldGas);
  const low = meshBlock('flat', NI, NJ, (i, j) => place(i, j, NJ));
  const high = meshBlock('flat', NI, NJ, (i, j) => {
    const [x, y] = place(i, NJ + j, NJ);
    return [x, y];
  });
  const part = (side: SidePart['side'], kind: SideKind): SidePart => ({
    side,
    from: 0,
    to: side.startsWith('i') ? NJ : NI,
    kind,
  });
  const joined = (block: number, side: SidePart['side']): SideKind => ({
    is: 'joined',
    block,
    side,
    from: 0,
    up: true,
  });
  const ofEnds = [part('iLow', ends), part('iHigh', ends)];
  return {
    blocks: [
      { mesh: low, sides: [...ofEnds, part('jLow', ends), part('jHigh', joined(1, 'jLow'))] },
      { mesh: high, sides: [...ofEnds, part('jLow', joined(0, 'jHigh')), part('jHigh', ends)] },
    ],
    gases: { inner: inner!, outer: gases[0] === gases[1] ? inner! : outer! },
    start,
  };
}

export const burst = (x: number, y: number): FlowPoint => {
  const isIn = Math.hypot(x - 0.1, y - 0.4) < 0.25;
  return { density: isIn ? 3 : 1, u: 0, v: 0, pressure: isIn ? 6 : 1, share: isIn ? 1 : 0 };
};

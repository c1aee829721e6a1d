/** The sides of blocks, written short: what lies along a part of a side. */

import type { SideKind, SidePart } from '../euler/index.ts';

export const wall: SideKind = { is: 'wall' };

/** From one cell to another along a side. */
export const part = (side: SidePart['side'], from: number, to: number, kind: SideKind): SidePart => ({
  side,
  from,
  to,
  kind,
});

/** Joined to another block, cell by cell in the same order, beginning at one of its cells. */
export const to = (block: number, side: SidePart['side'], from = 0): SideKind => ({
  is: 'joined',
  block,
  side,
  from,
  up: true,
});

/** Where the rows of a plug’s mesh lie between its wall and the cowl or the edge of the jet: close where the fan of the lip begins, and by a wall of small radius. */

import { apart, type Place } from './polyLine.ts';

/** Height of the row at the lip over that of the highest there. */
const LEAST_AT_LIP = 0.1;
/** From there on rows grow, by so many of the highest over the width of the ring: across it, and along the edge of the jet. */
const GROWS_ACROSS = 2;
const GROWS_ALONG = 0.5;
/** The same of the row at the wall of a round plug: so many times its radius over the way across, and no less than the other. */
const BY_RADIUS = 0.25;
const LEAST_AT_WALL = 0.3;

/**
 * Where row j begins on a line across, from a place on the plug’s wall to one on cowl or edge.
 *
 * @param lipLine the line across the ring at its lip
 * @param round its plug is; a flat one has no radius
 */
export function rowsAcross(
  lipLine: { readonly inner: Place; readonly outer: Place },
  across: number,
  { even: allEven, round }: { readonly even: boolean; readonly round: boolean },
): (wall: Place, edge: Place, j: number) => Place {
  const lip = lipLine.outer;
  const width = apart(lipLine.inner, lip);
  return (wall, edge, j) => {
    const even = j / across;
    const share = allEven ? even : lowAtBothEnds(even, atWall(wall, edge), atEdge(edge));
    return [wall[0] + (edge[0] - wall[0]) * share, wall[1] + (edge[1] - wall[1]) * share];
  };

  function atEdge(edge: Place): number {
    return Math.min(1, LEAST_AT_LIP + (GROWS_ALONG * apart(edge, lip)) / width);
  }

  function atWall(wall: Place, edge: Place): number {
    if (!round) return 1;
    return Math.min(1, Math.max(LEAST_AT_WALL, (BY_RADIUS * wall[1]) / apart(wall, edge)));
  }
}

function lowAtBothEnds(even: number, first: number, last: number): number {
  return lowFirst(1 - lowFirst(1 - even, last), first);
}

/** Share at which a row begins that would begin at another if all were alike. @param first height of the first over the highest */
function lowFirst(even: number, first: number): number {
  const growing = Math.min(1, (1 - first) / GROWS_ACROSS);
  const rows = Math.log1p((GROWS_ACROSS * growing) / first) / GROWS_ACROSS;
  const passed = (rows + 1 - growing) * even;
  return passed < rows ? (first * Math.expm1(GROWS_ACROSS * passed)) / GROWS_ACROSS : growing + passed - rows;
}

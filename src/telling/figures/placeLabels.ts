/** Finds room for words near a thing: tries places in a fixed order and takes the cheapest. */

import { type Box, boxesOverlap, boxInside, grown } from '../scene/box.ts';
import type { Point } from '../scene/pathData.ts';

/** A line that words should not cover. */
export interface Obstacle {
  readonly points: readonly Point[];
  /** Cost of covering it once. */ readonly cost: number;
}

export interface Candidate {
  /** Upper left corner of the words. */ readonly x: number;
  readonly y: number;
  /** How much this place is disliked of itself. */ readonly cost: number;
  /** Line from the words to the thing, if the words stand apart from it. */ readonly leader?: readonly [
    Point,
    Point,
  ];
}

export interface Placed {
  readonly box: Box;
  readonly candidate: Candidate;
}

const COVERS_WORDS = 1e6;
/** Cost from which words stand in the way of a line; other shapes of the words should be tried before. */
export const IN_THE_WAY = 280;
const MISLEADS = 120;

export class LabelRoom {
  private readonly frame: Box;
  private readonly obstacles: readonly Obstacle[];
  private readonly taken: Box[] = [];
  private readonly marks: Box[] = [];
  private readonly leaders: (readonly [Point, Point])[] = [];

  constructor(frame: Box, obstacles: readonly Obstacle[]) {
    this.frame = frame;
    this.obstacles = obstacles;
  }

  /** Takes the cheapest place in the frame that covers no other words and costs less than `most`; null: none. */
  place(
    width: number,
    height: number,
    gap: number,
    candidates: readonly Candidate[],
    most: number = COVERS_WORDS,
  ): Placed | null {
    let best: Placed | null = null;
    let least = most;
    for (const candidate of candidates) {
      if (candidate.cost >= least) continue;
      const box = { x: candidate.x, y: candidate.y, width, height };
      const cost = candidate.cost + this.costOf(box, gap, candidate.leader, least - candidate.cost);
      if (cost < least) {
        least = cost;
        best = { box, candidate };
      }
    }
    if (best) {
      this.taken.push(best.box);
      if (best.candidate.leader) this.leaders.push(best.candidate.leader);
    }
    return best;
  }

  /** A mark that words must not cover, though a leader may end at it. */
  keepClear(mark: Box): void {
    this.marks.push(mark);
  }

  /** True where a point lies on a mark. */
  isMarked(point: Point): boolean {
    return this.marks.some((mark) => holds(mark, point));
  }

  private costOf(box: Box, gap: number, leader: readonly [Point, Point] | undefined, limit: number): number {
    if (!boxInside(box, this.frame)) return COVERS_WORDS;
    const roomy = grown(box, gap);
    let cost = 0;
    for (const mark of this.marks) {
      if (boxesOverlap(box, mark)) return COVERS_WORDS;
      // A leader may end at its own mark; through another's it would seem to point there.
      if (leader && !holds(mark, leader[1]) && segmentMeetsBox(leader[0], leader[1], mark)) cost += MISLEADS;
    }
    for (const other of this.taken) {
      if (boxesOverlap(roomy, other)) return COVERS_WORDS;
      if (leader && segmentMeetsBox(leader[0], leader[1], other)) return COVERS_WORDS;
    }
    for (const [from, to] of this.leaders) if (segmentMeetsBox(from, to, box)) return COVERS_WORDS;
    for (const obstacle of this.obstacles) {
      const covered = crossings(obstacle.points, roomy);
      if (covered > 0) cost += obstacle.cost * (5 + covered);
      if (leader) cost += 0.4 * obstacle.cost * crossingsWithSegment(obstacle.points, leader);
      if (cost > limit) return cost;
    }
    return cost;
  }
}

const holds = (box: Box, { x, y }: Point): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;

/** How many pieces of a line touch the box. */
function crossings(points: readonly Point[], box: Box): number {
  let count = 0;
  for (let i = 1; i < points.length; i++)
    if (segmentMeetsBox(points[i - 1] as Point, points[i] as Point, box)) count++;
  return count;
}

function crossingsWithSegment(points: readonly Point[], [from, to]: readonly [Point, Point]): number {
  let count = 0;
  for (let i = 1; i < points.length; i++)
    if (segmentsMeet(points[i - 1] as Point, points[i] as Point, from, to)) count++;
  return count;
}

/** Clip a segment against the box's four sides (Liang and Barsky 1984); anything left means they meet. */
function segmentMeetsBox(a: Point, b: Point, box: Box): boolean {
  let from = 0;
  let to = 1;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  for (const [p, q] of [
    [-dx, a.x - box.x],
    [dx, box.x + box.width - a.x],
    [-dy, a.y - box.y],
    [dy, box.y + box.height - a.y],
  ] as const) {
    if (p === 0) {
      if (q < 0) return false;
      continue;
    }
    const t = q / p;
    if (p < 0) from = t > from ? t : from;
    else to = t < to ? t : to;
    if (from > to) return false;
  }
  return true;
}

function segmentsMeet(a: Point, b: Point, c: Point, d: Point): boolean {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

function side(a: Point, b: Point, p: Point): number {
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

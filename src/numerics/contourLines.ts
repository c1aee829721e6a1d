/** Lines of equal value over a grid of columns and rows. */

export interface GridPoint {
  readonly x: number;
  readonly y: number;
}

/**
 * Marching squares: in each cell whose four corners have a value, the line passes between the edges on which the value is
 * passed, at the place that straight interpolation gives. Where all four edges are passed, the value at the saddle of the
 * bilinear surface, (z₀₀ z₁₁ − z₁₀ z₀₁)/(z₀₀ + z₁₁ − z₁₀ − z₀₁), says which corners hang together. Pieces are joined to
 * whole lines; a closed one ends where it begins.
 *
 * @param xs values of the columns, rising
 * @param ys values of the rows, rising
 * @param values row by row; null: none
 * Source: G. M. Nielson, B. Hamann, "The asymptotic decider: resolving the ambiguity in marching cubes", Proc. IEEE
 * Visualization 1991, 83–91 (from memory).
 */
export function contourLines(
  xs: readonly number[],
  ys: readonly number[],
  values: readonly (number | null)[],
  level: number,
): readonly (readonly GridPoint[])[] {
  const at = (column: number, row: number): number | null => values[row * xs.length + column] ?? null;
  const points = new Map<string, GridPoint>();
  const pieces: [string, string][] = [];
  /** Where the level is passed on the edge from a corner along x or y. */
  const pass = (column: number, row: number, along: 'x' | 'y'): string => {
    const key = `${along}${column},${row}`;
    const [x, y] = [xs[column]!, ys[row]!];
    const a = at(column, row)!;
    const b = along === 'x' ? at(column + 1, row)! : at(column, row + 1)!;
    const share = (level - a) / (b - a);
    const point =
      along === 'x' ? { x: x + share * (xs[column + 1]! - x), y } : { x, y: y + share * (ys[row + 1]! - y) };
    points.set(key, point);
    return key;
  };
  for (let row = 0; row + 1 < ys.length; row++) {
    for (let column = 0; column + 1 < xs.length; column++) {
      const corners = [at(column, row), at(column + 1, row), at(column + 1, row + 1), at(column, row + 1)];
      if (corners.some((corner) => corner === null)) continue;
      const edges: readonly (() => string)[] = [
        () => pass(column, row, 'x'),
        () => pass(column + 1, row, 'y'),
        () => pass(column, row + 1, 'x'),
        () => pass(column, row, 'y'),
      ];
      for (const [from, to] of passages(corners as number[], level))
        pieces.push([edges[from]!(), edges[to]!()]);
    }
  }
  return joined(pieces).map((keys) => keys.map((key) => points.get(key)!));
}

/** Pairs of edges (below, right, above, left) between which the line passes; corners from lower left, anticlockwise. */
function passages(corners: readonly number[], level: number): readonly (readonly [number, number])[] {
  const above = corners.map((corner) => corner >= level);
  const passed = [0, 1, 2, 3].filter((edge) => above[edge] !== above[(edge + 1) % 4]);
  if (passed.length === 2) return [[passed[0]!, passed[1]!]];
  if (passed.length === 0) return [];
  const [a, b, c, d] = corners as [number, number, number, number];
  const saddle = (a * c - b * d) / (a + c - b - d);
  // The corners on the saddle's side hang together, so the line goes round the other two.
  const joinsFirst = saddle >= level === above[0];
  return joinsFirst
    ? [
        [0, 1],
        [2, 3],
      ]
    : [
        [3, 0],
        [1, 2],
      ];
}

/** Pieces that share an end, as lines of ends. */
function joined(pieces: readonly (readonly [string, string])[]): readonly (readonly string[])[] {
  const meeting = new Map<string, number[]>();
  pieces.forEach(([from, to], i) => {
    for (const end of [from, to]) meeting.set(end, [...(meeting.get(end) ?? []), i]);
  });
  const used = new Set<number>();
  const follow = (start: string, first: number): string[] => {
    const line = [start];
    for (let piece: number | undefined = first; piece !== undefined; ) {
      used.add(piece);
      const next = otherEnd(pieces[piece]!, line.at(-1)!);
      line.push(next);
      piece = meeting.get(next)!.find((other) => !used.has(other));
    }
    return line;
  };
  const lines: string[][] = [];
  // Open lines begin at ends where nothing else meets; what is left is closed.
  for (const [end, at] of meeting) if (at.length === 1 && !used.has(at[0]!)) lines.push(follow(end, at[0]!));
  pieces.forEach(([from], i) => {
    if (!used.has(i)) lines.push(follow(from, i));
  });
  return lines;
}

function otherEnd([from, to]: readonly [string, string], end: string): string {
  return end === from ? to : from;
}

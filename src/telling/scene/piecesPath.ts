/** Many small pieces as one path, on either side of an axis; its text is written only where it is asked for. */

import { short } from './pathData.ts';
import type { PathNode, Tracer } from './scene.ts';

export interface PathPieces {
  /** Corner after corner, x from the axis and y in turn. */ readonly xy: readonly number[];
  /** Where each polygon ends in that row; null: a row of lines with two ends each. */
  readonly ends: readonly number[] | null;
}

/** The pieces as one path, in the look given. */
export function piecesNode(
  pieces: PathPieces,
  axisX: number,
  side: -1 | 1,
  look: Omit<PathNode, 'kind' | 'd' | 'trace'>,
): PathNode {
  let text: string | null = null;
  const trace = (tracer: Tracer): void => follow(pieces, axisX, side, tracer);
  return {
    kind: 'path',
    ...look,
    trace,
    get d() {
      text ??= written(trace);
      return text;
    },
  };
}

function follow({ xy, ends }: PathPieces, axisX: number, side: -1 | 1, tracer: Tracer): void {
  let isFirst = true;
  let piece = 0;
  for (let i = 0; i < xy.length; i += 2) {
    const x = axisX + side * xy[i]!;
    const y = xy[i + 1]!;
    if (isFirst) tracer.moveTo(x, y);
    else tracer.lineTo(x, y);
    isFirst = ends === null ? i % 4 === 2 : i + 2 === ends[piece];
    if (!isFirst || ends === null) continue;
    tracer.closePath();
    piece++;
  }
}

function written(trace: (tracer: Tracer) => void): string {
  let text = '';
  trace({
    moveTo: (x, y) => {
      text += `M${short(x)} ${short(y)}`;
    },
    lineTo: (x, y) => {
      text += `L${short(x)} ${short(y)}`;
    },
    closePath: () => {
      text += 'Z';
    },
  });
  return text;
}

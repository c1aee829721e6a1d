/**
 * Draws the same picture again and again while parts of it move. What stood still since the last time is kept as a picture of its
 * own and laid down whole: of a nozzle’s metal and gas only the edges that moved are drawn afresh.
 */

import type { Theme } from '../../telling/look/tokens.ts';
import type { Box } from '../../telling/scene/box.ts';
import type { PathNode, SceneNode } from '../../telling/scene/scene.ts';
import { drawNodes, type Pen } from './drawNodes.ts';

export interface KeptPictures {
  /** @param ratio pixels of the canvas for one of the drawing; the pen is scaled by it already */
  draw(pen: Pen, nodes: readonly SceneNode[], theme: Theme, ratio: number): void;
}

/** Fewer nodes than this are sooner drawn than laid down. */
const FEWEST = 4;

/** Pixels of all pictures kept; what was laid down longest ago goes first. Each takes four bytes. */
const MOST_PIXELS = 12e6;

interface Picture {
  readonly nodes: readonly SceneNode[];
  readonly box: Box;
  readonly canvas: OffscreenCanvas;
}

export function keptPictures(): KeptPictures {
  let before: ReadonlySet<SceneNode> = new Set();
  let drawnFor = '';
  /** By their first node, the one laid down last at the end. */
  const pictures = new Map<SceneNode, Picture>();
  let pixels = 0;

  function pictureOf(nodes: readonly PathNode[], theme: Theme, ratio: number): Picture {
    const [first] = nodes as [PathNode];
    const known = pictures.get(first);
    const isSame = known?.nodes.length === nodes.length && known.nodes.every((node, i) => node === nodes[i]);
    const picture = known !== undefined && isSame ? known : pictureFrom(nodes, theme, ratio);
    forget(first);
    pictures.set(first, picture);
    pixels += pixelsOf(picture);
    for (const oldest of pictures.keys()) {
      if (pixels <= MOST_PIXELS || oldest === first) break;
      forget(oldest);
    }
    return picture;
  }

  function forget(first: SceneNode): void {
    const known = pictures.get(first);
    if (known !== undefined) pixels -= pixelsOf(known);
    pictures.delete(first);
  }

  return {
    draw(pen, nodes, theme, ratio) {
      const way = `${theme} ${ratio}`;
      if (way !== drawnFor) {
        before = new Set();
        pictures.clear();
        pixels = 0;
        drawnFor = way;
      }
      for (const run of runsOf(nodes, before)) {
        if (run.still === null) drawNodes(pen, run.nodes, theme);
        else {
          const { canvas, box } = pictureOf(run.still, theme, ratio);
          pen.drawImage(canvas, box.x, box.y, box.width, box.height);
        }
      }
      before = new Set(nodes);
    },
  };
}

const pixelsOf = ({ canvas }: Picture): number => canvas.width * canvas.height;

interface Run {
  readonly nodes: readonly SceneNode[];
  /** The same nodes, where they are to be kept as a picture. */ readonly still: readonly PathNode[] | null;
}

function runsOf(nodes: readonly SceneNode[], before: ReadonlySet<SceneNode>): readonly Run[] {
  const runs: Run[] = [];
  let from = 0;
  while (from < nodes.length) {
    const isStill = standsStill(nodes[from], before);
    let to = from + 1;
    while (to < nodes.length && standsStill(nodes[to], before) === isStill) to++;
    const part = nodes.slice(from, to);
    const still = isStill && part.length >= FEWEST ? part.filter((node) => node.kind === 'path') : null;
    runs.push({ nodes: part, still });
    from = to;
  }
  return runs;
}

/** Was there before, and of straight lines alone, so that its place can be read from it. */
function standsStill(node: SceneNode | undefined, before: ReadonlySet<SceneNode>): boolean {
  return node?.kind === 'path' && before.has(node) && isStraight(node);
}

const straight = new WeakMap<PathNode, boolean>();

function isStraight(node: PathNode): boolean {
  const known = straight.get(node);
  if (known !== undefined) return known;
  const is = node.trace !== undefined || /^[MLZ\d .-]*$/.test(node.d);
  straight.set(node, is);
  return is;
}

function pictureFrom(nodes: readonly PathNode[], theme: Theme, ratio: number): Picture {
  const box = boxOf(nodes, ratio);
  const canvas = new OffscreenCanvas(Math.round(box.width * ratio), Math.round(box.height * ratio));
  const pen = canvas.getContext('2d');
  if (pen === null) throw new Error('The browser gives no canvas to draw on.');
  pen.scale(ratio, ratio);
  pen.translate(-box.x, -box.y);
  drawNodes(pen, nodes, theme);
  return { nodes, box, canvas };
}

/** Room for wide corners of a line, over half its width. */
const CORNER = 4;

/** All that the nodes cover, on whole pixels, so that the picture is laid down as sharp as it was drawn. */
function boxOf(nodes: readonly PathNode[], ratio: number): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const node of nodes) {
    const wide = (node.stroke === undefined ? 0 : (node.strokeWidth ?? 1)) + (node.ring ?? 0);
    const room = 0.5 * CORNER * wide + 1;
    const reach = (x: number, y: number): void => {
      left = Math.min(left, x - room);
      right = Math.max(right, x + room);
      top = Math.min(top, y - room);
      bottom = Math.max(bottom, y + room);
    };
    if (node.trace === undefined) cornersOf(node.d, reach);
    else node.trace({ moveTo: reach, lineTo: reach, closePath: () => undefined });
  }
  const x = Math.floor(left * ratio) / ratio;
  const y = Math.floor(top * ratio) / ratio;
  return {
    x,
    y,
    width: Math.max(1, Math.ceil((right - x) * ratio)) / ratio,
    height: Math.max(1, Math.ceil((bottom - y) * ratio)) / ratio,
  };
}

/** Corners of a course of straight lines. */
function cornersOf(d: string, reach: (x: number, y: number) => void): void {
  const numbers = d.match(/-?[\d.]+/g)?.map(Number) ?? [];
  for (let i = 0; i + 1 < numbers.length; i += 2) reach(numbers[i] ?? 0, numbers[i + 1] ?? 0);
}

/** A figure whose curves are drawn in: along the way they run, each name and mark when the front has passed it. */

import { textBox } from '../scene/box.ts';
import { rectangle } from '../scene/pathData.ts';
import type { GroupNode, Scene, SceneNode } from '../scene/scene.ts';
import type { Movement } from './clip.ts';

interface Span {
  readonly low: number;
  readonly high: number;
}

/** `up`: altitude runs upward; `across`: from left to right. */
export type Direction = 'up' | 'across';

export function buildUp(name: string, scene: Scene, direction: Direction): Movement {
  const spans = scene.children.filter(isCurve).map((curve) => spanOf([curve], direction));
  const whole = {
    low: Math.min(...spans.map(({ low }) => low)),
    high: Math.max(...spans.map(({ high }) => high)),
  };
  // What is drawn in comes last, so that all that stands is drawn but once.
  const standing = scene.children.filter((node) => !isCurve(node) && !isNamed(node));
  const moving = scene.children.filter((node) => isCurve(node) || isNamed(node));
  return {
    name: `${name}-drawn`,
    title: scene.title,
    description: `The curves are drawn in ${direction === 'up' ? 'from below' : 'from the left'}. ${scene.description}`,
    notes: ['What is drawn in is known from the start: the drawing in is no course of events.'],
    at(share) {
      if (share >= 1) return { ...scene, children: [...standing, ...moving] };
      const front =
        direction === 'up'
          ? whole.high - share * (whole.high - whole.low)
          : whole.low + share * (whole.high - whole.low);
      return {
        ...scene,
        children: [...standing, ...moving.map((node) => drawnTo(node, front, scene, direction))],
      };
    },
  };
}

const isGroup = (node: SceneNode): node is GroupNode => node.kind === 'group';
const isCurve = (node: SceneNode): boolean => isGroup(node) && (node.name ?? '').endsWith(' curve');
const isNamed = (node: SceneNode): boolean => isGroup(node) && node.name === 'labels';

function drawnTo(node: SceneNode, front: number, { width, height }: Scene, direction: Direction): SceneNode {
  if (!isGroup(node)) return node;
  if (isNamed(node)) return { ...node, children: passed(node.children, front, direction) };
  const clip =
    direction === 'up' ? rectangle(0, front, width, height - front) : rectangle(0, 0, front, height);
  return { kind: 'group', name: 'front', clip, children: [node] };
}

/** Lines of words that stand together come together. */
function passed(nodes: readonly SceneNode[], front: number, direction: Direction): readonly SceneNode[] {
  const clusters: SceneNode[][] = [];
  for (const node of nodes) {
    const cluster = clusters.at(-1);
    const last = cluster?.at(-1);
    if (cluster !== undefined && last !== undefined && together(last, node)) cluster.push(node);
    else clusters.push([node]);
  }
  return clusters
    .filter((cluster) => {
      const { low, high } = spanOf(cluster, direction);
      return direction === 'up' ? low >= front : high <= front;
    })
    .flat();
}

/** A line of words below the one before; a mark or leader right before its words. */
function together(before: SceneNode, node: SceneNode): boolean {
  if (node.kind !== 'text') return before.kind !== 'text';
  if (before.kind !== 'text') return true;
  return Math.abs(before.x - node.x) < 5 * node.size && Math.abs(before.y - node.y) < 2 * node.size;
}

/** From the least to the largest place along the direction. */
function spanOf(nodes: readonly SceneNode[], direction: Direction): Span {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const take = (x: number, y: number): void => {
    const place = direction === 'up' ? y : x;
    if (place < low) low = place;
    if (place > high) high = place;
  };
  for (const node of nodes) {
    if (node.kind === 'group') {
      const own = spanOf(node.children, direction);
      low = Math.min(low, own.low);
      high = Math.max(high, own.high);
    } else if (node.kind === 'path') {
      for (const [, x, y] of node.d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)) take(Number(x), Number(y));
    } else if (node.kind === 'text') {
      const box = textBox(node);
      take(box.x, box.y);
      take(box.x + box.width, box.y + box.height);
    } else if (node.kind === 'circle') take(node.x, node.y);
    else {
      take(node.x, node.y);
      take(node.x + node.width, node.y + node.height);
    }
  }
  return { low, high };
}

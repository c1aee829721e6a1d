/** Curves of a panel drawn once more and wider: those of the engines whose number is selected. */

import type { SceneNode } from '../../../telling/scene/scene.ts';

const WIDER = 2.2;
/** A thinner line in an engine's hue is no curve but a leader. */
const LEAST_CURVE = 2;

export function litCurves(nodes: readonly SceneNode[], orders: readonly number[]): readonly SceneNode[] {
  if (orders.length === 0) return [];
  return nodes.flatMap((node): readonly SceneNode[] => {
    if (node.kind === 'group') return litCurves(node.children, orders);
    if (node.kind !== 'path' || node.strokeWidth === undefined || node.strokeWidth < LEAST_CURVE) return [];
    const isLit = orders.some((order) => node.stroke === `engine-${order}`);
    return isLit ? [{ ...node, strokeWidth: WIDER * node.strokeWidth }] : [];
  });
}

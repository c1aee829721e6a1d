/** A drawing taken apart: what a canvas paints, and the words, which stay text. */

import type { SceneNode } from '../../../telling/scene/scene.ts';

/** Of an engine that cannot be computed now its last drawing stays, paler. */
const pale = 0.35;

/** Lines and areas in drawing order, out of their groups; the groups of these engines as a whole, paler. */
export function shapesOf(nodes: readonly SceneNode[], failed: readonly string[] = []): readonly SceneNode[] {
  return nodes.flatMap((node): readonly SceneNode[] => {
    if (node.kind === 'text') return [];
    if (node.kind !== 'group') return [node];
    const children = shapesOf(node.children);
    if (failed.some((name) => node.name?.startsWith(name) === true)) {
      return [{ kind: 'group', opacity: pale, children }];
    }
    const isPlain = node.clip === undefined && node.blur === undefined && node.opacity === undefined;
    return isPlain ? children : [{ ...node, children }];
  });
}

/** The words in their groups. */
export function wordsIn(nodes: readonly SceneNode[]): readonly SceneNode[] {
  return nodes.flatMap((node): readonly SceneNode[] => {
    if (node.kind === 'text') return [node];
    if (node.kind !== 'group') return [];
    const children = wordsIn(node.children);
    return children.length === 0 ? [] : [{ kind: 'group', name: node.name ?? '', children }];
  });
}

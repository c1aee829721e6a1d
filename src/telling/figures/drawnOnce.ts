/** Parts of a drawing that stay as they are while something else moves: drawn once for what they are drawn of. */

import type { SceneNode } from '../scene/scene.ts';

export interface DrawnOnce {
  /**
   * The nodes drawn of `thing` before, the very same objects, if they were drawn in the same way; else `draw` makes them.
   * @param way all that the nodes hang on besides the thing
   */
  of(
    thing: object,
    way: readonly (number | string)[],
    draw: () => readonly SceneNode[],
  ): readonly SceneNode[];
}

/** Ways in which one thing is on screen at the same time: the workbench, a figure beside it. */
const WAYS_KEPT = 3;

export function drawnOnce(): DrawnOnce {
  const kept = new WeakMap<object, Map<string, readonly SceneNode[]>>();
  return {
    of(thing, way, draw) {
      const key = way.join(' ');
      const ways = kept.get(thing) ?? new Map<string, readonly SceneNode[]>();
      kept.set(thing, ways);
      const known = ways.get(key);
      if (known !== undefined) return known;
      const nodes = draw();
      const [oldest] = ways.keys();
      if (ways.size >= WAYS_KEPT && oldest !== undefined) ways.delete(oldest);
      ways.set(key, nodes);
      return nodes;
    },
  };
}

/** Scenes on their way to the page that draws them: what stands as in the frame before is only named. */

import type { Scene, SceneNode } from '../../telling/scene/scene.ts';

/** A number: the child of the frame before at that place. */
export type SceneStep = readonly (SceneNode | number)[];

export interface StepWriter {
  /** The step that leads to this scene; null where nothing changes. */ next(scene: Scene): SceneStep | null;
}

export function stepWriter(): StepWriter {
  let before: { readonly scene: Scene; readonly texts: (string | undefined)[] } | null = null;
  return {
    next(scene) {
      if (before?.scene === scene) return null;
      const old = before;
      const texts: (string | undefined)[] = new Array<string | undefined>(scene.children.length);
      let same = old !== null && old.scene.children.length === scene.children.length;
      const step = scene.children.map((node, i) => {
        if (old === null) return node;
        const known = old.scene.children[i];
        if (known === node) {
          texts[i] = old.texts[i];
          return i;
        }
        if (known !== undefined) {
          old.texts[i] ??= JSON.stringify(known);
          texts[i] = JSON.stringify(node);
          if (texts[i] === old.texts[i]) return i;
        }
        same = false;
        return node;
      });
      before = { scene, texts };
      return same ? null : step;
    },
  };
}

/** The canvas on which the frames of a film are drawn, one after the other; what stands still is drawn once. */

import type { Theme } from '../../../telling/look/tokens.ts';
import { fixedColour } from '../../../telling/scene/paint.ts';
import type { SceneNode } from '../../../telling/scene/scene.ts';
import { drawNodes, type Pen, penOf } from '../../canvas/drawNodes.ts';
import type { SceneStep } from '../sceneSteps.ts';

export interface FrameCanvas {
  /** Straight RGBA of the next frame. */ draw(step: SceneStep): Uint8ClampedArray<ArrayBuffer>;
}

export interface FrameLook {
  readonly width: number;
  readonly height: number;
  readonly theme: Theme;
  readonly transparent: boolean;
}

export function frameCanvas({ width, height, theme, transparent }: FrameLook): FrameCanvas {
  const pen = penOf(new OffscreenCanvas(width, height));
  const base = penOf(new OffscreenCanvas(width, height));
  /** How many of the leading nodes stand on the base. */
  let onBase = -1;
  let before: readonly SceneNode[] = [];

  function ground(on: Pen): void {
    on.clearRect(0, 0, width, height);
    if (transparent) return;
    on.fillStyle = fixedColour('paper', theme);
    on.fillRect(0, 0, width, height);
  }

  return {
    draw(step) {
      const nodes = step.map((node, i) => (typeof node === 'number' ? (before[i] as SceneNode) : node));
      const changed = step.findIndex((node) => typeof node !== 'number');
      const standing = changed < 0 ? step.length : changed;
      if (onBase !== standing) {
        ground(base);
        drawNodes(base, nodes.slice(0, standing), theme);
        onBase = standing;
      }
      pen.clearRect(0, 0, width, height);
      pen.drawImage(base.canvas, 0, 0);
      drawNodes(pen, nodes.slice(standing), theme);
      before = nodes;
      return pen.getImageData(0, 0, width, height).data;
    },
  };
}

/** A clip: pictures by frame number, and what must be said with them. */

import type { Theme } from '../look/tokens.ts';
import type { Scene } from '../scene/scene.ts';
import { type ClipTiming, timedFrames } from './clipTiming.ts';
import type { FrameRate } from './frameRate.ts';

export interface Clip {
  /** Short, fit for a file. */ readonly name: string;
  readonly title: string;
  /** What moves and what is seen, for those who cannot see it. */ readonly description: string;
  /** For which conditions its pictures are computed, and what is not modelled. */ readonly notes: readonly string[];
  readonly width: number;
  readonly height: number;
  readonly theme: Theme;
  readonly transparent: boolean;
  readonly rate: FrameRate;
  readonly frames: number;
  /** Frame `n` from 0: the same on every call and every machine. Frames that show the same are the same object. */
  frame(n: number): Scene;
}

/** A picture that moves: what it shows at a share of its movement. */
export interface Movement {
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly notes: readonly string[];
  /** 0 to 1 */ at(share: number): Scene;
}

/** A movement laid out in time. */
export function clipOf(movement: Movement, timing: ClipTiming): Clip {
  const { frames, shareAt } = timedFrames(timing);
  const { name, title, description, notes } = movement;
  const first = movement.at(shareAt(0));
  let kept: { readonly share: number; readonly scene: Scene } = { share: shareAt(0), scene: first };
  return {
    name,
    title,
    description,
    notes,
    width: first.width,
    height: first.height,
    theme: first.theme,
    transparent: first.transparent,
    rate: timing.rate,
    frames,
    frame(n) {
      const share = shareAt(n);
      if (share !== kept.share) kept = { share, scene: movement.at(share) };
      return kept.scene;
    },
  };
}

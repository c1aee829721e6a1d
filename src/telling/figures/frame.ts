/** What stands around every figure: the finding on top, what is shown below it, and the foot with the caution. */

import { CAUTION_SHORT } from '../caution.ts';
import type { Layout } from '../look/formats.ts';
import { wrapAtMost, wrapBalanced, wrapText } from '../look/measureText.ts';
import type { Box } from '../scene/box.ts';
import { plainText } from '../scene/safeText.ts';
import type { SceneNode } from '../scene/scene.ts';
import { type Words, wordsAt, wordsSize } from './marks.ts';

export interface FrameWords {
  readonly title: string;
  readonly subtitle: string;
  /** Condition, model, what is left out; the caution follows by itself. */ readonly foot: readonly string[];
  /** Lines that the foot may take beyond the usual. */ readonly moreLines?: number;
  /** What stands before the caution where the subtitle is left out: what the picture may not go without. */ readonly always?: string;
}

export interface Frame {
  readonly nodes: readonly SceneNode[];
  /** Room for the picture between head and foot. */ readonly content: Box;
}

/** What may be left out; the caution never is. */
export type FramePart = 'title' | 'subtitle' | 'notes';

export function frame(
  layout: Layout,
  given: FrameWords,
  { without = [] }: { readonly without?: readonly FramePart[] } = {},
): Frame {
  const words: FrameWords = {
    title: without.includes('title') ? '' : given.title,
    subtitle: without.includes('subtitle') ? '' : given.subtitle,
    foot: without.includes('notes') ? [] : given.foot,
    moreLines: given.moreLines ?? 0,
  };
  const { safe, type } = layout;
  const width = safe.right - safe.left;
  const title = wrapBalanced(plainText(words.title), width, type.title, 700, layout.upright ? 5 : 3).map(
    (text): Words => ({ text, size: type.title, weight: 700, fill: 'ink' }),
  );
  const subtitle = wrapBalanced(
    plainText(words.subtitle),
    width,
    type.subtitle,
    400,
    layout.width < 1.25 * layout.height ? 3 : 2,
  ).map((text): Words => ({ text, size: type.subtitle, weight: 400, fill: 'ink-2' }));
  const below = safe.top + wordsSize(title).height + 0.3 * type.subtitle;
  const stays = without.includes('subtitle') ? [given.always ?? '', CAUTION_SHORT] : [CAUTION_SHORT];
  const foot = footLines(words, stays, width, layout);
  const footHeight = wordsSize(foot).height;
  const top = below + wordsSize(subtitle).height + 0.9 * type.label;
  const bottom = safe.bottom - footHeight - 0.8 * type.label;
  return {
    nodes: [
      {
        kind: 'group',
        name: 'head',
        children: [...wordsAt(title, safe.left, safe.top), ...wordsAt(subtitle, safe.left, below)],
      },
      { kind: 'group', name: 'foot', children: wordsAt(foot, safe.left, safe.bottom - footHeight) },
    ],
    content: { x: safe.left, y: top, width, height: bottom - top },
  };
}

/** Foot notes shortened to the room there is; the caution always whole, on its own lines, at the end. */
function footLines(
  { foot, moreLines = 0 }: FrameWords,
  stays: readonly string[],
  width: number,
  layout: Layout,
): Words[] {
  const size = layout.type.foot;
  const wide = layout.width / layout.height;
  const room = layout.upright ? 6 : wide < 1.25 ? 5 : wide < 1.6 ? 4 : 3;
  const said = wrapAtMost(plainText(foot.join(' ')), width, size, 400, room + moreLines);
  const caution = wrapText(stays.filter((words) => words !== '').join(' '), width, size, 400);
  return [...said, ...caution].map((text) => ({ text, size, weight: 400, fill: 'ink-2' }));
}

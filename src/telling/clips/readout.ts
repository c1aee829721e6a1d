/** Numbers that change from frame to frame: every digit keeps its place, for room is left for the widest. */

import { ambientAt } from '../figures/conditions.ts';
import type { Altitude } from '../figures/options.ts';
import { textWidth, type Weight } from '../look/measureText.ts';
import type { ColourToken } from '../look/tokens.ts';
import type { SceneNode, TextNode } from '../scene/scene.ts';

/** A piece of a line: words that stand, or a number set to the right end of its room. */
export interface ReadoutPart {
  readonly text: string;
  /** The widest text that ever stands here; absent: the words never change. */ readonly widest?: string;
  readonly weight: Weight;
  readonly fill: ColourToken;
  /** Free before it, in type sizes. */ readonly gap?: number;
  /** Words begin at the left end of their room; numbers end at its right end. */ readonly isWords?: boolean;
}

/** Parts side by side on one base line from `x` on. */
export function readoutLine(
  parts: readonly ReadoutPart[],
  x: number,
  y: number,
  size: number,
): readonly SceneNode[] {
  let left = x;
  return parts.map(({ text, widest, weight, fill, gap = 0, isWords = false }): TextNode => {
    left += gap * size;
    const width = textWidth(widest ?? text, size, weight);
    const right = left + width;
    const node = { kind: 'text', y, text, size, weight, fill } as const;
    const placed: TextNode =
      widest === undefined || isWords
        ? { ...node, x: right - width, anchor: 'start' }
        : { ...node, x: right, anchor: 'end' };
    left = right;
    return placed;
  });
}

/** Groups of parts, each kept together, broken into lines no wider than `width`. */
export function readoutLines(
  groups: readonly (readonly ReadoutPart[])[],
  width: number,
  size: number,
): readonly (readonly ReadoutPart[])[] {
  const lines: ReadoutPart[][] = [];
  let used = 0;
  for (const parts of groups) {
    const own = parts.reduce(
      (sum, { text, widest, weight, gap = 0 }) => sum + gap * size + textWidth(widest ?? text, size, weight),
      0,
    );
    const line = lines.at(-1);
    if (line !== undefined && used + GAP * size + own <= width) {
      line.push(...parts.map((part, i) => (i === 0 ? { ...part, gap: GAP } : part)));
      used += GAP * size + own;
    } else {
      lines.push([...parts]);
      used = own;
    }
  }
  return lines;
}

/** Between groups on one line, in type sizes. */
const GAP = 1.2;
/** From base line to base line, in type sizes. */
export const READOUT_LEADING = 1.4;

/** `12.3 km, air 0.190 bar`; in vacuum `vacuum, no air`. */
export function altitudeReadout(altitude: Altitude): readonly ReadoutPart[] {
  const strong = { weight: 700, fill: 'ink' } as const;
  const plain = { weight: 400, fill: 'ink-2' } as const;
  const inVacuum = altitude === 'vacuum';
  const kilometres = inVacuum ? 'vacuum' : `${(altitude / 1000).toFixed(1)}\u00a0km`;
  return [
    { text: kilometres, widest: 'vacuum', ...strong },
    { text: 'air outside', gap: 1, ...plain },
    { text: airText(ambientAt(altitude)), widest: '<\u00a00.001\u00a0bar', gap: 0.3, ...plain },
  ];
}

/** Three decimals throughout; what rounds to nothing is still no vacuum. */
function airText(pressure: number): string {
  if (pressure === 0) return 'none';
  const bar = pressure / 1e5;
  return bar < 5e-4 ? '<\u00a00.001\u00a0bar' : `${bar.toFixed(3)}\u00a0bar`;
}

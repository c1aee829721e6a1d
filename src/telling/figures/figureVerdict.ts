/** A sentence as a card: its words, its mark, in how much of what is not known it holds, and what may be said. */

import { CAUTION } from '../../answer/caution.ts';
import { type CheckedSentence, shareText, verdictLabel } from '../../answer/sentences/index.ts';
import { layoutOf, type TypeSizes } from '../look/formats.ts';
import { wrapAtMost } from '../look/measureText.ts';
import type { Box } from '../scene/box.ts';
import { segment } from '../scene/pathData.ts';
import { plainText } from '../scene/safeText.ts';
import type { Scene, SceneNode } from '../scene/scene.ts';
import type { FigureRow } from './figureTable.ts';
import { frame } from './frame.ts';
import { type Words, wordsAt, wordsSize } from './marks.ts';
import type { FigureOptions } from './options.ts';
import type { PanelStyle } from './overAltitudeAxes.ts';
import { markedAs, verdictMark } from './verdictMark.ts';

const MOST_SHRUNK = 0.6;

export function figureVerdict(sentence: CheckedSentence, options: FigureOptions): Scene {
  const layout = layoutOf(options.size);
  const title = options.title ?? `“${sentence.say}”`;
  const around = frame(
    layout,
    {
      title,
      subtitle: '',
      foot: [conditionsOf(sentence, false)].filter((each) => each !== ''),
    },
    options,
  );
  return {
    width: layout.width,
    height: layout.height,
    title,
    description: describe(sentence),
    theme: options.theme,
    transparent: options.transparent ?? false,
    children: [...around.nodes, ...card(sentence, around.content, layout)],
  };
}

/** Under which conditions; the list of what is not known stands in the description only, for it is long. */
function conditionsOf({ conditions }: CheckedSentence, all: boolean): string {
  const kept = all ? conditions : conditions.filter((line) => !line.startsWith('Not known'));
  return kept.length === 0 ? '' : `Tested: ${kept.join(' ')}`;
}

/** What may be said, or is true instead; else why there is no verdict. */
function lineBelow({ wording, instead, why, problem }: CheckedSentence): string {
  if (instead !== null) return `Instead: ${instead}`;
  if (wording !== null) return wording;
  return problem === null ? why : `${why} ${problem.mend}`;
}

function describe(sentence: CheckedSentence): string {
  const { say, share } = sentence;
  const holds = share === null ? '' : ` It holds in ${shareText(share)} of what is not known.`;
  return `“${say}” Verdict: ${verdictLabel(sentence)}.${holds} ${lineBelow(sentence)} ${conditionsOf(sentence, true)} ${CAUTION}`;
}

function card(sentence: CheckedSentence, box: Box, { type, line }: PanelStyle): readonly SceneNode[] {
  const { share } = sentence;
  const mark = 2.6 * type.title;
  const verdictSize = 1.05 * type.title;
  const x = box.x + mark + 0.6 * type.title;
  const width = box.x + box.width - x;
  const verdict: Words[] = wrapAtMost(verdictLabel(sentence), width, verdictSize, 700, 1).map((text) => ({
    text,
    size: verdictSize,
    weight: 700,
    fill: 'ink',
  }));
  const holds = share === null ? 'no share computed' : `holds in ${shareText(share)} of what is not known`;
  const nodes: SceneNode[] = [
    verdictMark(markedAs(sentence), box.x, box.y, mark),
    ...wordsAt(verdict, x, box.y),
    ...wordsAt(
      [{ text: plainText(holds), size: type.label, weight: 400, fill: 'ink' }],
      x,
      box.y + 1.25 * verdictSize,
    ),
  ];
  let y = box.y + mark + 0.8 * type.label;
  if (share !== null) {
    nodes.push(...shareBar(share, { x: box.x, y, width: box.width, height: 0.5 * type.label }, type, line));
    y += 2.1 * type.label;
  }
  return [...nodes, ...saying(lineBelow(sentence), { ...box, y, height: box.y + box.height - y }, type)];
}

/** Nothing to all of what is not known, a tick at the half. */
function shareBar(
  share: number,
  { x, y, width, height }: Box,
  { small }: TypeSizes,
  line: PanelStyle['line'],
): readonly SceneNode[] {
  const text = (words: string, at: number, anchor: 'start' | 'middle' | 'end'): SceneNode => ({
    kind: 'text',
    x: at,
    y: y + height + 1.1 * small,
    text: words,
    size: small,
    weight: 400,
    anchor,
    fill: 'ink-2',
  });
  return [
    { kind: 'rect', x, y, width, height, fill: 'none', stroke: 'rule-2', strokeWidth: line.leader },
    { kind: 'rect', x, y, width: share * width, height, fill: 'ink' },
    {
      kind: 'path',
      d: segment(x + width / 2, y + height, x + width / 2, y + height + 0.25 * small),
      stroke: 'rule-2',
      strokeWidth: line.leader,
    },
    text('0\u00a0%', x, 'start'),
    text('50\u00a0%', x + width / 2, 'middle'),
    text('100\u00a0%', x + width, 'end'),
  ];
}

/** As large as fits. */
function saying(words: string, box: Box, type: TypeSizes): readonly SceneNode[] {
  for (let size = type.subtitle * 1.3; ; size *= 0.94) {
    const least = size <= Math.max(type.foot, MOST_SHRUNK * type.subtitle);
    const lines = wrapAtMost(
      plainText(words),
      box.width,
      size,
      400,
      Math.max(1, Math.floor(box.height / (1.18 * size))),
    ).map((text): Words => ({ text, size, weight: 400, fill: 'ink' }));
    const whole = !lines.some(({ text }) => text.endsWith('…'));
    if (least || (whole && wordsSize(lines).height <= box.height)) return wordsAt(lines, box.x, box.y);
  }
}

export function verdictRows({ say, numbers }: CheckedSentence): readonly FigureRow[] {
  return numbers.map(({ expression, quantity, value, low, high, words }) => ({
    ...{ of: say, quantity, which: expression, value, low, high },
    ...(quantity === null && { note: words }),
  }));
}

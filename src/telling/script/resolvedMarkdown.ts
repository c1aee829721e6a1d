/** The script as Markdown with its numbers in figures and words: to be read, printed, handed on. */

import { CAUTION } from '../../answer/caution.ts';
import { plainMarkdown } from '../scene/safeText.ts';
import type { ResolvedScript } from './model.ts';

export function resolvedMarkdown({ script, scenes }: ResolvedScript): string {
  const blocks = scenes.flatMap(({ scene, lines }) => [
    `## ${plainMarkdown(scene.name)}`,
    ...lines.flatMap(({ line, text }) => [
      ...scene.shown.filter(({ at }) => at === line.id).map((shown) => `> ${plainMarkdown(shown.words)}`),
      plainMarkdown(text),
    ]),
  ]);
  const title = script.title === '' ? [] : [`# ${plainMarkdown(script.title)}`];
  return `${[...title, ...blocks, `*${CAUTION}*`].join('\n\n')}\n`;
}

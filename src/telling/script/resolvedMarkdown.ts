/** The script as Markdown with its numbers in figures and words: to be read, printed, handed on. */

import { CAUTION } from '../../answer/caution.ts';
import { plainText } from '../scene/safeText.ts';
import type { ResolvedScript } from './model.ts';

export function resolvedMarkdown({ script, scenes }: ResolvedScript): string {
  const blocks = scenes.flatMap(({ scene, lines }) => [
    `## ${words(scene.name)}`,
    ...lines.flatMap(({ line, text }) => [
      ...scene.shown.filter(({ at }) => at === line.id).map((shown) => `> ${words(shown.words)}`),
      words(text),
    ]),
  ]);
  const title = script.title === '' ? [] : [`# ${words(script.title)}`];
  return `${[...title, ...blocks, `*${CAUTION}*`].join('\n\n')}\n`;
}

/** Words that stay words: nothing in them is markup. */
const words = (text: string): string =>
  plainText(text)
    .replace(/[\\`*_{}[\]<>#|~&]/g, '\\$&')
    .replace(
      /^(\s*)([-+=]|\d+[.)])/,
      (_, space: string, sign: string) => `${space}${sign.slice(0, -1)}\\${sign.slice(-1)}`,
    );

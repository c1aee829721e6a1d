/** A cut as a script of its own: kept lines as they are written, live numbers and all, each with its id. */

import type { Scene, Script, ScriptLine } from '../../study/script/model.ts';
import { plainMarkdown } from '../scene/safeText.ts';

/** @param cut lines of the script whose `text` this is */
export function cutMarkdown(
  { title, scenes, pace, densePace, units }: Script,
  text: string,
  caution: string,
): string {
  const head = `---\npace: ${pace}\ndensePace: ${densePace}\nunits: ${units}\n---`;
  const blocks = scenes.flatMap((scene) => [heading(scene), ...linesOf(scene, text)]);
  const titles = title === '' ? [] : [`# ${plainMarkdown(title)}`];
  return `${[head, ...titles, ...blocks, `<!-- ${caution} -->`].join('\n\n')}\n`;
}

function heading({ id, name, weight, relies }: Scene): string {
  const parts = [`#${id}`, ...(weight === 0 ? [] : [`weight=${weight}`])];
  if (relies.length > 0) parts.push(`relies=${relies.join(',')}`);
  return `## ${plainMarkdown(name)} {${parts.join(' ')}}`;
}

const linesOf = ({ lines, shown }: Scene, text: string): readonly string[] =>
  lines.flatMap((line) => [
    ...shown.filter(({ at }) => at === line.id).map((one) => quoted(text.slice(one.from, one.to))),
    withId(line, text.slice(line.from, line.to).trimEnd()),
  ]);

/** Every line of it behind its sign: without one it would be said. */
const quoted = (text: string): string =>
  text
    .split('\n')
    .map((line) => `> ${line.replace(/^[\s>]+/, '').trimEnd()}`)
    .join('\n');

const ATTRIBUTES = /(?<!\{)\{[^{}]*\}$/;

/** A made id counts lines, which a cut counts anew. */
function withId({ id }: ScriptLine, text: string): string {
  const attributes = ATTRIBUTES.exec(text);
  if (attributes === null) return `${text} {#${id}}`;
  if (/^\{(?:[^}]*\s)?#/.test(attributes[0])) return text;
  return `${text.slice(0, attributes.index)}{#${id} ${attributes[0].slice(1)}`;
}

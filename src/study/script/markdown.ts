/** The script's Markdown: that of the common mark, with live numbers `{{…}}` and attributes `{…}` at a block's end. */

import type { SyntaxNode, Tree } from '@lezer/common';
import { type InlineContext, type MarkdownParser, parser } from '@lezer/markdown';

const BRACE = 123;
const LIVE_END = '}}';

function liveNumber(cx: InlineContext, next: number, at: number): number {
  if (next !== BRACE || cx.char(at + 1) !== BRACE) return -1;
  const rest = cx.slice(at, cx.end);
  const end = rest.indexOf(LIVE_END, 2);
  const again = rest.indexOf('{{', 2);
  const isClosed = end >= 0 && (again < 0 || again > end);
  const [name, to] = isClosed
    ? (['LiveNumber', at + end + LIVE_END.length] as const)
    : (['LiveNumberOpen', at + 2] as const);
  return cx.addElement(cx.elt(name, at, to));
}

const ATTRIBUTES = /^\{[^{}]*\}\s*$/;

function attributes(cx: InlineContext, next: number, at: number): number {
  if (next !== BRACE) return -1;
  // Nothing else ends a block with a closing brace: looked at only where the first brace closes there.
  const rest = cx.slice(at, cx.end);
  return ATTRIBUTES.test(rest) ? cx.addElement(cx.elt('Attributes', at, at + rest.trimEnd().length)) : -1;
}

const scriptParser: MarkdownParser = parser.configure({
  defineNodes: ['LiveNumber', 'LiveNumberOpen', 'Attributes'],
  parseInline: [
    { name: 'LiveNumber', parse: liveNumber, before: 'Escape' },
    { name: 'Attributes', parse: attributes, after: 'LiveNumber' },
  ],
});

export const parseMarkdown = (text: string): Tree => scriptParser.parse(text);

export function childrenOf(node: SyntaxNode): readonly SyntaxNode[] {
  const found: SyntaxNode[] = [];
  for (let child = node.firstChild; child !== null; child = child.nextSibling) found.push(child);
  return found;
}

/** A small reader of BibTeX, written apart from what writes it: entries, fields in braces, braces in pairs. */

export interface BibEntry {
  readonly type: string;
  readonly key: string;
  readonly fields: Readonly<Record<string, string>>;
}

export function readBibtex(text: string): readonly BibEntry[] {
  const entries: BibEntry[] = [];
  let at = text.indexOf('@');
  while (at >= 0) {
    const open = text.indexOf('{', at);
    const type = text.slice(at + 1, open);
    if (!/^[a-z]+$/.test(type)) throw new Error(`No entry type: ${type.slice(0, 30)}`);
    const close = matching(text, open);
    const body = text.slice(open + 1, close);
    const comma = body.indexOf(',');
    entries.push({ type, key: body.slice(0, comma).trim(), fields: fieldsOf(body.slice(comma + 1)) });
    at = text.indexOf('@', close);
  }
  return entries;
}

function fieldsOf(body: string): Record<string, string> {
  const fields: Record<string, string> = {};
  let at = 0;
  while (body.slice(at).trim() !== '') {
    const sign = body.indexOf('=', at);
    const name = body.slice(at, sign).replace(',', '').trim();
    if (!/^[a-z]+$/.test(name)) throw new Error(`No field name: ${name.slice(0, 30)}`);
    const open = body.indexOf('{', sign);
    if (body.slice(sign + 1, open).trim() !== '') throw new Error(`No braces round ${name}`);
    const close = matching(body, open);
    fields[name] = body.slice(open + 1, close);
    at = close + 1;
  }
  return fields;
}

/** BibTeX counts braces whether or not a backslash stands before them. */
function matching(text: string, open: number): number {
  let depth = 0;
  for (let at = open; at < text.length; at++) {
    if (text[at] === '{') depth++;
    if (text[at] === '}' && --depth === 0) return at;
  }
  throw new Error('A brace is never closed.');
}

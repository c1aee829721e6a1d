/**
 * Text from a study may hold anything. Written into a picture or page it must stay text: no markup, no control
 * characters, no direction marks that turn the words around it.
 */

/** C0 and C1 controls but tab and line feed, unpaired surrogates, non-characters. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROLS = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\p{Cs}\ufdd0-\ufdef\ufffe\uffff]/gu;
/** Marks that embed, override or isolate direction, and invisible joiners that hide text. */
const DIRECTION = /[\u061c\u200b\u200e\u200f\u202a-\u202e\u2060-\u2069\ufeff]/gu;
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc]/u;

/** One line of harmless text; right-to-left words are isolated so that they cannot reorder their neighbours. */
export function plainText(text: string): string {
  const clean = text
    .replace(CONTROLS, '')
    .replace(DIRECTION, '')
    .replace(/[\t\n]+/g, ' ');
  return RIGHT_TO_LEFT.test(clean) ? `\u2068${clean}\u2069` : clean;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text for XML and HTML, in content and in quoted attributes. */
export function escapeMarkup(text: string): string {
  return plainText(text).replace(/[&<>"']/g, (character) => ENTITIES[character] ?? '');
}

/** Text for Markdown: its signs stand for themselves, and nothing in it is a link, a picture or markup. */
export function escapeMarkdown(text: string): string {
  return plainText(text)
    .replace(/[\\`*_{}[\]()<>#+!|~-]/g, (sign) => `\\${sign}`)
    .replace(/&/g, '&amp;')
    .replace(/\b(https?|ftp|mailto|javascript|data):/gi, (_, scheme: string) => `${scheme}&#58;`)
    .replace(/\bwww\./gi, 'www&#46;');
}

/** Words of a script that stay words and can still be read in the file: nothing in them is markup, at the beginning of a line neither. */
export function plainMarkdown(text: string): string {
  return plainText(text)
    .replace(/[\\`*_{}[\]<>#|~&]/g, '\\$&')
    .replace(
      /^(\s*)([-+=]|\d+[.)])/,
      (_, space: string, sign: string) => `${space}${sign.slice(0, -1)}\\${sign.slice(-1)}`,
    );
}

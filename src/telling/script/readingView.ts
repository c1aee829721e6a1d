/** The reading view: large words that scroll at the pace, keys and pedals, mirrored for a glass. As a part of a page, and as a page. */

import { CAUTION_SHORT } from '../caution.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';

/** The words of a script to be read aloud; a script's answer is one. */
export interface ReadingScript {
  readonly title: string;
  readonly scenes: readonly {
    readonly name: string;
    readonly lines: readonly { readonly text: string /** said and paused */; readonly seconds: number }[];
  }[];
}

/** What the buttons do, by the words of the script beside it (`assets/reading/reading.js`). */
const BUTTONS: readonly (readonly [does: string, label: string, title: string])[] = [
  ['play', 'Play', 'Space'],
  ['back', 'Back', 'Page Up, arrows'],
  ['next', 'Next', 'Page Down, arrows'],
  ['slower', 'Slower', '['],
  ['faster', 'Faster', ']'],
  ['smaller', 'Smaller', '−'],
  ['larger', 'Larger', '+'],
  ['mirror', 'Mirror', 'm'],
];

/** @param closes whether there is something to go back to */
export function readingView({ scenes }: Pick<ReadingScript, 'scenes'>, closes: boolean): string {
  const words = scenes
    .map(({ name, lines }) => {
      const said = lines.map(
        ({ text: line, seconds }) => `<p data-seconds="${seconds.toFixed(1)}">${text(line)}</p>`,
      );
      return `<h2>${text(name)}</h2>${said.join('')}`;
    })
    .join('');
  const buttons = [...BUTTONS, ...(closes ? [['close', 'Close', 'Escape'] as const] : [])].map(
    ([does, label, title]) =>
      `<button type="button" data-do="${does}" title="${text(title)}"${does === 'play' || does === 'mirror' ? ' aria-pressed="false"' : ''}>${label}</button>`,
  );
  return (
    `<div class="reading-words" tabindex="0" role="region" aria-label="Script">${words}</div>` +
    `<div class="reading-bar">${buttons.join('')}<span class="reading-told"></span>` +
    `<p class="caution">${text(CAUTION_SHORT)}</p></div>`
  );
}

export interface ReadingPageParts {
  readonly answer: ReadingScript;
  /** `assets/reading/reading.js` and `.css`. */ readonly script: string;
  readonly styles: string;
  /** SHA-256 in Base64 of a text, for the page's security policy. */
  readonly digest: (text: string) => string;
}

/** One file, opened straight from disk: on a tablet, without a network. */
export function readingPage({ answer, script, styles, digest }: ReadingPageParts): string {
  const policy = `default-src 'none'; script-src 'sha256-${digest(script)}'; style-src 'sha256-${digest(styles)}'; base-uri 'none'; form-action 'none'`;
  const title = answer.title === '' ? 'Script' : answer.title;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${text(title)}</title>
<style>${styles}</style>
</head>
<body>
<main class="reading" data-reading-alone aria-label="${text(title)}">${readingView(answer, false)}</main>
<script>${script}</script>
</body>
</html>
`;
}

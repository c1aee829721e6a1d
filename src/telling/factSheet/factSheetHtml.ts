/** The fact sheet as one page to read and to print, without script. */

import { CAUTION_SHORT } from '../caution.ts';
import { equationHtml } from '../page/equationPieces.ts';
import { pageStyles } from '../page/pageStyles.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';
import type { EmbeddedFont } from '../scene/svg.ts';
import { referenceLine } from '../sources/readable.ts';
import type { FactSheet, FactSheetItem, FactSheetNumber } from './model.ts';

const TITLES = {
  sentence: 'Sentences, checked',
  fact: 'Facts, reported with their source',
  analogy: 'Analogies, checked part by part',
} as const;

export function factSheetHtml(sheet: FactSheet, fonts: readonly EmbeddedFont[]): string {
  const kinds = (Object.keys(TITLES) as (keyof typeof TITLES)[]).map((kind) => {
    const items = sheet.items.filter((item) => item.kind === kind);
    if (items.length === 0) return '';
    const all =
      kind === 'sentence' && sheet.conditions.length > 0
        ? `<p>All were tested so: ${text(sheet.conditions.join(' '))}</p>`
        : '';
    return `<section>\n<h2>${TITLES[kind]}</h2>\n${all}${items.map(itemHtml).join('\n')}\n</section>`;
  });
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:">
<title>Fact sheet: ${text(sheet.question)}</title>
<style>${pageStyles(fonts)}
article{margin-top:18px;padding-top:12px;border-top:1px solid var(--rule);break-inside:avoid}
h2+article{margin-top:0;padding-top:0;border-top:0}
article h3{margin:0}
dl{display:grid;grid-template-columns:minmax(5.5em,max-content) 1fr;gap:4px 14px;margin-top:8px;font-size:16px}
dt{color:var(--ink-2)}dd{margin:0;overflow-wrap:anywhere}
.hash{font-size:14px;overflow-wrap:anywhere}
@media (max-width:600px){dl{grid-template-columns:1fr}dt{margin-top:6px}}</style>
</head>
<body>
<main>
<h1>Fact sheet</h1>
<p class="answer">${text(sheet.question)}</p>
<p class="caution">${text(sheet.caution)}</p>
<dl>
${row('Date', text(sheet.date ?? 'none given'))}
${row('Reviewed', text(reviewedWords(sheet)))}
${row('Script', scriptWords(sheet))}
${row('Made with', text(`Plumeline ${sheet.program.version}`))}
${row('Study', `<span class="hash">${sheet.study.file}, SHA-256 ${sheet.study.sha256}</span>`)}
${row('Engines', sheet.engines.map(({ name, description }) => text(`${name}: ${description}.`)).join('<br>'))}
</dl>
${kinds.filter((kind) => kind !== '').join('\n')}
<section>
<h2>Sources</h2>
<ul>${sheet.references.map((reference) => `<li>${text(`[${reference.id}] ${referenceLine(reference)}`)}</li>`).join('')}</ul>
</section>
</main>
<footer><p>${text(CAUTION_SHORT)}</p></footer>
</body>
</html>
`;
}

const row = (name: string, html: string): string => (html === '' ? '' : `<dt>${name}</dt><dd>${html}</dd>`);

function scriptWords({ script }: FactSheet): string {
  if (script === null) return '';
  const { title, lines, sha256, signOffs } = script;
  const signed = signOffs.length === 0 ? 'Reviewed by nobody.' : signOffs.map(({ words }) => words).join(' ');
  const name = title === '' ? '' : `“${title}”, `;
  return `${text(`${name}${lines.length} ${lines.length === 1 ? 'line' : 'lines'}. ${signed}`)} <span class="hash">SHA-256 ${sha256}</span>`;
}

/** How many of the items stand signed, and by whom. */
export function reviewedWords({ items }: Pick<FactSheet, 'items'>): string {
  const signOffs = items.flatMap((item) => item.signOffs);
  const standing = items.filter((item) => item.signOffs.some(({ stands }) => stands));
  const names = [
    ...new Set(signOffs.filter(({ stands }) => stands).map(({ by, date }) => `${by} (${date})`)),
  ];
  const voided = signOffs.filter(({ stands }) => !stands).length;
  if (signOffs.length === 0) return 'by nobody';
  const by = names.length === 0 ? '' : ` by ${names.join(', ')}`;
  const gone =
    voided === 0
      ? ''
      : `; ${voided} ${voided === 1 ? 'sign-off is' : 'sign-offs are'} void since a later change`;
  return `${standing.length} of ${items.length}${by}${gone}`;
}

function itemHtml(item: FactSheetItem): string {
  const lines = (texts: readonly string[]): string => texts.map(text).join('<br>');
  const verdict = item.kind === 'fact' ? 'reported' : item.label;
  const share = item.shareWords === null ? '' : `, holds in ${item.shareWords} of what is not known`;
  return `<article>
<h3>“${text(item.say)}”</h3>
<dl>
${row('Verdict', `<strong>${text(verdict)}</strong>${text(share)}${item.said ? '' : ' (kept to be discussed, not said)'}`)}
${row('Safe to say', text(item.wording ?? ''))}
${row('Instead', text(item.instead ?? ''))}
${row('Why', text(item.why))}
${row('Test', text(item.test ?? ''))}
${row('Decides', item.numbers.map(numberHtml).join('<br>'))}
${row('Parts', lines(item.parts))}
${row('Tested', lines(item.conditions))}
${row('Models', text(item.models.join(', ')))}
${row('Sources', lines(item.sources))}
${row('Reviewed', item.signOffs.length === 0 ? 'not signed' : lines(item.signOffs.map(({ words }) => words)))}
</dl>
</article>`;
}

function numberHtml({ expression, words, within, label, equation }: FactSheetNumber): string {
  const range = within === null ? '' : `, 95 % of what is not known within ${within}`;
  const what =
    label === null ? '' : ` (${text(label)}${equation === null ? '' : `: ${equationHtml(equation)}`})`;
  return `${text(`${expression}: ${words}${range}`)}${what}`;
}

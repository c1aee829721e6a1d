/** Published figures of one engine on the page of a package. */

import type { EngineAnswer } from '../../answer/model.ts';
import { checkWords, figureWords, solveWords } from '../../answer/published/words.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';

/** Empty where the engine has none. */
export function publishedHtml(engine: EngineAnswer): string {
  if (engine.published.length === 0) return '';
  const rows = engine.published.map((figure, i) => {
    const { what, published, computed, difference, verdict, source } = figureWords(figure);
    const beside = difference === '' ? '' : `${difference}, ${verdict}`;
    return `<tr><td>${i + 1}</td><th scope="row">${text(what)}</th><td class="n">${text(published)}</td><td class="n">${text(computed)}</td><td>${text(beside)}</td><td>${text(source)}</td></tr>`;
  });
  const more = [
    ...checkWords(engine.publishedChecks),
    ...[solveWords(engine)].filter((line) => line !== null),
  ];
  return `
<h4>Published figures of ${text(engine.name)}</h4>
<div class="wide"><table>
<thead><tr><th scope="col">Row</th><th scope="col">Quantity</th><th scope="col" class="n">Published</th><th scope="col" class="n">Computed</th><th scope="col">Computed less published</th><th scope="col">Source</th></tr></thead>
<tbody>${rows.join('')}</tbody></table></div>
${more.length === 0 ? '' : `<ul>${more.map((line) => `<li>${text(line)}</li>`).join('')}</ul>`}`;
}

/** A page for viewers: the altitude live, every number with its pedigree; one file, opened straight from disk. */

import type { EngineAnswer, StudyAnswer } from '../../answer/model.ts';
import { shareText, verdictLabel } from '../../answer/sentences/index.ts';
import type { CheckedSentence } from '../../answer/sentences/model.ts';
import { CAUTION_SHORT } from '../caution.ts';
import { ENGINE_STYLES } from '../look/engineStyles.ts';
import { formatValue } from '../numbers/formatNumber.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';
import { referenceLine } from '../sources/readable.ts';
import type { Reference } from '../sources/reference.ts';
import { CELLS, type ExploreData, LIVE } from './exploreData.ts';
import { type Pedigree, pedigreeOf } from './pedigree.ts';

export interface ExploreParts {
  readonly answer: StudyAnswer;
  readonly sentences: readonly CheckedSentence[];
  readonly references: readonly Reference[];
  readonly data: ExploreData;
  readonly script: string;
  readonly styles: string;
  /** SHA-256 in Base64 of a text, for the page's security policy. */ readonly digest: (
    text: string,
  ) => string;
}

/** Numbers of an engine that no altitude changes. */
const FIXED: readonly (readonly [string, (engine: EngineAnswer) => number | null])[] = [
  ['massFlow', ({ massFlow }) => massFlow],
  ['chamber.pressure', ({ chamber }) => chamber.pressure],
  ['chamber.temperature', ({ chamber }) => chamber.temperature],
  ['characteristicVelocity', ({ characteristicVelocity }) => characteristicVelocity],
  ['areaRatio', ({ areaRatio }) => areaRatio],
  ['throat.diameter', ({ throat }) => throat.diameter],
  ['exit.diameter', ({ exit }) => exit.diameter],
  ['matched.altitude', ({ matched }) => matched.altitude],
];

const FIGURES = ['cut', 'impulse', 'thrust'] as const;

export function explorePage(parts: ExploreParts): string {
  const { answer, sentences, references, data, script, styles, digest } = parts;
  const engines = Object.values(answer.engines);
  const names = new Set<string>([...LIVE, ...FIXED.map(([name]) => name)]);
  for (const { numbers } of sentences)
    for (const { quantity } of numbers) if (quantity !== null) names.add(quantity);
  const pedigrees: Record<string, Pedigree> = {};
  for (const name of names) pedigrees[name] = pedigreeOf(name);
  // In a data block only an end tag could end it: no sign that opens one is left.
  const block = JSON.stringify({ ...data, pedigrees }).replaceAll('<', '\\u003c');
  const policy = [
    "default-src 'none'",
    `script-src 'sha256-${digest(script)}'`,
    `style-src 'sha256-${digest(styles)}'`,
    'font-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${text(answer.question)}</title>
<style>${styles}</style>
</head>
<body>
<main>
<header>
<h1>${text(answer.question)}</h1>
<p class="answer"><strong>${text(answer.shortAnswer.verdict)}.</strong> ${text(answer.shortAnswer.text)}</p>
<p class="caution">${text(answer.caution)}</p>
<noscript><p class="caution">This page needs its own script to move; index.html beside it shows the same without.</p></noscript>
</header>
<div class="bar" role="group" aria-label="Altitude">
<label for="altitude">Altitude</label>
<input type="range" id="altitude" min="0" max="0" step="1" value="0" disabled>
<output id="where" for="altitude">${text(data.stops[0]!)}</output>
<button type="button" id="play" aria-pressed="false" hidden>Climb</button>
</div>
<div class="pictures">
${FIGURES.map((id) => `<figure data-figure="${id}"></figure>`).join('\n')}
<section>
<h2>At this altitude</h2>
<p>Touch a number to see what it means and where it comes from.</p>
${liveTable(engines, data)}
</section>
</div>
<section>
<h2>The same everywhere</h2>
${fixedTable(engines)}
</section>
${sentencesSection(sentences)}
<section>
<h2>Sources</h2>
<details><summary>${references.length} works, data and texts that these numbers rest on</summary><ul>${references.map((reference) => `<li>${text(referenceLine(reference))}</li>`).join('')}</ul></details>
</section>
</main>
<footer><p>${text(CAUTION_SHORT)} Made with Plumeline ${text(answer.program.version)}.</p></footer>
<dialog id="behind" aria-labelledby="behind-title">
<h2 id="behind-title" tabindex="-1" autofocus>Number</h2>
<dl id="behind-list"></dl>
<button type="button" id="close">Close</button>
</dialog>
<script type="application/json" id="data">${block}</script>
<script>${script}</script>
</body>
</html>
`;
}

const heads = (engines: readonly EngineAnswer[]): string =>
  `<thead><tr><th scope="col">Quantity</th>${engines
    .map(({ name }, i) => `<th scope="col" class="n ${ENGINE_STYLES[i]?.colour ?? ''}">${text(name)}</th>`)
    .join('')}</tr></thead>`;

function liveTable(engines: readonly EngineAnswer[], data: ExploreData): string {
  const flow = engines.map(
    (_, i) => `<td class="n" data-cell="${i * CELLS}">${text(data.rows[0]![i * CELLS]!)}</td>`,
  );
  const rows = LIVE.map((name, cell) => {
    const cells = engines.map(({ name: engine }, i) => {
      const at = i * CELLS + cell + 1;
      return `<td class="n"><button type="button" data-behind="${name}" data-of="${text(engine)}" data-cell="${at}">${text(data.rows[0]![at]!)}</button></td>`;
    });
    return `<tr><th scope="row">${text(pedigreeOf(name).label)}</th>${cells.join('')}</tr>`;
  });
  return `<div class="wide" tabindex="0" role="region" aria-label="Numbers at this altitude"><table>${heads(engines)}<tbody><tr><th scope="row">the gas</th>${flow.join('')}</tr>${rows.join('')}</tbody></table></div>`;
}

function fixedTable(engines: readonly EngineAnswer[]): string {
  const rows = FIXED.map(([name, of]) => {
    const cells = engines.map((engine) => {
      const value = of(engine);
      if (value === null) return '<td class="n">none</td>';
      const band = engine.bands[name];
      const span =
        band === undefined
          ? ''
          : ` data-span="${text(`${formatValue(name, band.low)} to ${formatValue(name, band.high)} (${band.from})`)}"`;
      return `<td class="n"><button type="button" data-behind="${name}" data-of="${text(engine.name)}"${span}>${text(formatValue(name, value))}</button></td>`;
    });
    return `<tr><th scope="row">${text(pedigreeOf(name).label)}</th>${cells.join('')}</tr>`;
  });
  return `<div class="wide" tabindex="0" role="region" aria-label="Numbers that no altitude changes"><table>${heads(engines)}<tbody>${rows.join('')}</tbody></table></div>`;
}

function sentencesSection(sentences: readonly CheckedSentence[]): string {
  if (sentences.length === 0) return '';
  const items = sentences.map((sentence) => {
    const { say, share, wording, instead, numbers, said } = sentence;
    const lines = [
      ...(said ? [] : ['Kept to be discussed, not to be said.']),
      ...(instead === null ? [] : [`Instead: ${instead}`]),
      ...(wording === null ? [] : [wording]),
    ];
    const decide = numbers.map(({ expression, quantity, words, low, high }) => {
      if (quantity === null) return `<li>${text(expression)}: ${text(words)}</li>`;
      const span = `${formatValue(quantity, low)} to ${formatValue(quantity, high)} in 95 of 100 reckonings, inputs with ± and the models’ published errors drawn anew`;
      return `<li>${text(expression)}: <button type="button" data-behind="${text(quantity)}" data-of="${text(expression)}" data-span="${text(span)}">${text(words)}</button></li>`;
    });
    const holds = share === null ? '' : `, holds in ${text(shareText(share))} of what is not known`;
    return `<article><h3>“${text(say)}”</h3><p><strong>${text(verdictLabel(sentence))}</strong>${holds}.${lines.map((line) => `<br>${text(line)}`).join('')}</p>${decide.length === 0 ? '' : `<ul>${decide.join('')}</ul>`}</article>`;
  });
  return `<section><h2>Sentences, checked</h2>${items.join('\n')}</section>`;
}

/** The page of a package: one self-contained HTML file, readable on screen and on paper, without script. */

import type { CheckedAnalogy } from '../../answer/analogies/model.ts';
import { quantity } from '../../answer/catalogue.ts';
import { changeWords } from '../../answer/changeWords.ts';
import { vehicleLines } from '../../answer/flight/index.ts';
import type { ComparedQuantity, EngineAnswer, StudyAnswer } from '../../answer/model.ts';
import type { Need } from '../../answer/needs/index.ts';
import type { CheckedSentence } from '../../answer/sentences/model.ts';
import type { VehicleWorth, WorthTable } from '../../answer/worth/index.ts';
import type { Study } from '../../study/model.ts';
import { CAUTION_SHORT } from '../caution.ts';
import { WITHOUT_FRICTION } from '../figures/flowWords.ts';
import { modelsDrawn, type PackageFigure } from '../figures/packageFigures.ts';
import { ENGINE_STYLES } from '../look/engineStyles.ts';
import { formatAltitude, formatValue } from '../numbers/formatNumber.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';
import { type EmbeddedFont, sceneToSvg } from '../scene/svg.ts';
import { analogiesHtml } from './analogiesHtml.ts';
import { cycleHtml } from './cycleHtml.ts';
import { engineRows } from './engineRows.ts';
import { equationHtml } from './equationPieces.ts';
import { factsHtml } from './factsHtml.ts';
import { heatHtml } from './heatHtml.ts';
import { pageStyles } from './pageStyles.ts';
import { publishedHtml } from './publishedTable.ts';
import { saidOnce } from './saidOnce.ts';
import { sentencesHtml } from './sentencesHtml.ts';
import { separationHtml } from './separationHtml.ts';
import { needsHtml, worthHtml } from './worthHtml.ts';

export interface PageParts {
  readonly answer: StudyAnswer;
  /** Empty where none was checked. */ readonly sentences: readonly CheckedSentence[];
  readonly analogies: readonly CheckedAnalogy[];
  readonly study: Study;
  /** Gain and price of the pair; null where there is none. */ readonly worth: WorthTable | null;
  readonly needs: readonly Need[];
  /** What the other engine is worth to the vehicles. */ readonly vehicleWorths: readonly VehicleWorth[];
  readonly figures: readonly PackageFigure[];
  readonly fonts: readonly EmbeddedFont[];
}

export function packagePage(parts: PageParts): string {
  const { answer, sentences, analogies, study, worth, needs, vehicleWorths, figures, fonts } = parts;
  const { shortAnswer, comparison } = answer;
  const engines = Object.values(answer.engines);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:">
<title>${text(answer.question)}</title>
<style>${pageStyles(fonts)}</style>
</head>
<body>
<main>
<h1>${text(answer.question)}</h1>
<p class="answer"><strong>${text(shortAnswer.verdict)}.</strong> ${text(shortAnswer.text)}</p>
<p class="caution">${text(answer.caution)}</p>
${failures(answer)}
${comparison ? section('Side by side', comparedTable(answer)) : ''}
${section(
  'Pictures',
  figures
    .filter((figure) => figure.inPage)
    .map(figureHtml)
    .join('\n'),
)}
${section('What the engines lift', answer.vehicles.map((vehicle) => `<h3>${text(vehicle.name)}</h3>${list(vehicleLines(vehicle))}`).join('\n'))}
${section('The engines', `${notKnown(engines)}${engines.map((engine, i) => engineHtml(engine, i)).join('\n')}`)}
${section('Does the gas stay on the wall?', separationHtml(engines))}
${section('Who drives the pumps, and what it costs', cycleHtml(engines))}
${section('Do the walls live?', heatHtml(answer))}
${section('Conditions', conditions(answer))}
${section(
  'Is it worth it?',
  worthHtml(worth, vehicleWorths, (id) => answer.engines[id]?.name ?? id),
)}
${section('What it would take', needsHtml(needs))}
${sentences.length === 0 ? '' : section('Sentences of the study', sentencesHtml(sentences))}
${section('Reported, not computed', factsHtml(study))}
${section('Analogies', analogiesHtml(analogies))}
${section('How it was worked out', models(engines, modelsDrawn(figures)))}
${section('Not in these numbers', notInNumbers(answer, engines, modelsDrawn(figures)))}
${sources(study)}
${section('Handle with care', `${list(answer.hazards)}<p>${text(answer.caution)}</p>`)}
</main>
<footer><p>${text(CAUTION_SHORT)} Made with Plumeline ${text(answer.program.version)}.</p></footer>
</body>
</html>
`;
}

const section = (title: string, body: string): string =>
  body.trim() === '' ? '' : `<section>\n<h2>${text(title)}</h2>\n${body}\n</section>`;

const list = (lines: readonly string[]): string =>
  lines.length === 0 ? '' : `<ul>${lines.map((line) => `<li>${text(line)}</li>`).join('')}</ul>`;

function failures(answer: StudyAnswer): string {
  const failed = Object.entries(answer.failed);
  if (failed.length === 0) return '';
  const lines = failed.map(([id, problem]) => `${id} could not be computed. ${problem.what} ${problem.mend}`);
  return `<div role="note">${list(lines)}</div>`;
}

function comparedTable(answer: StudyAnswer): string {
  const { comparison } = answer;
  if (!comparison) return '';
  const name = (id: string): string => text(answer.engines[id]?.name ?? id);
  const rows = comparison.quantities.map((row) => comparedRow(row)).join('\n');
  const crossings = comparison.crossings.map((altitude) => formatAltitude(altitude));
  return `<p>Held equal: ${text(comparison.heldEqual.join(', ') || 'nothing')}.</p>
<p>Different: ${text(comparison.differs.join(', ') || 'nothing')}.</p>
<div class="wide"><table>
<thead><tr><th scope="col">Quantity</th><th scope="col">Where</th><th scope="col" class="n">${name(comparison.base)}</th><th scope="col" class="n">${name(comparison.other)}</th><th scope="col">${name(comparison.other)} has</th></tr></thead>
<tbody>
${rows}
</tbody></table></div>
${crossings.length > 0 ? `<p>The specific impulses are equal at ${text(crossings.join(' and '))}.</p>` : ''}`;
}

function comparedRow(row: ComparedQuantity): string {
  const entry = quantity(row.quantity);
  const value = (number: number | null): string =>
    number === null ? 'no number' : text(formatValue(row.quantity, number));
  const where =
    entry.place !== 'altitude'
      ? ''
      : row.altitude === null
        ? 'vacuum'
        : row.altitude === 0
          ? 'pad'
          : formatAltitude(row.altitude);
  return `<tr><th scope="row" title="${text(entry.meaning)}">${text(entry.label)}</th><td>${text(where)}</td><td class="n">${value(row.base)}</td><td class="n">${value(row.other)}</td><td>${text(row.words)}</td></tr>`;
}

function figureHtml({ name, scene, table }: PackageFigure): string {
  const svg = sceneToSvg(scene, { colours: 'variables', idPrefix: name, fixedSize: false });
  const numbers = table === undefined ? '' : `, <a href="figures/${table}.csv">CSV</a>`;
  return `<figure>${svg}<figcaption>${text(scene.description)} <a href="figures/${name}.svg">SVG</a>, <a href="figures/${name}.png">PNG</a>${numbers}</figcaption></figure>`;
}

/** What the last column of the tables below it means, in a sentence; empty where no number has a band. */
function notKnown(engines: readonly EngineAnswer[]): string {
  if (engines.every(({ bands }) => Object.keys(bands).length === 0)) return '';
  return '<p>“What is not known” is what could be otherwise: the inputs that stand with ±, and the published errors of the models; each number was worked out many times with these drawn anew, and 95 of 100 times it came out within the two values shown.</p>\n';
}

function engineHtml(engine: EngineAnswer, index: number): string {
  const hue = ENGINE_STYLES[index]?.colour ?? 'ink';
  const cells = engineRows(engine).map(([name, value]) => {
    const entry = quantity(name);
    const reason = engine.reasons.find(({ path }) => path === name)?.reason;
    const shown =
      value === null ? `no number${reason === undefined ? '' : `: ${reason}`}` : formatValue(name, value);
    const band = engine.bands[name];
    const within =
      band === undefined ? '' : `${formatValue(name, band.low)} to ${formatValue(name, band.high)}`;
    return `<tr><th scope="row" title="${text(entry.meaning)}">${text(entry.label)}</th><td class="n">${text(shown)}</td><td>${text(within)}</td></tr>`;
  });
  const head = `<thead><tr><th scope="col">Quantity</th><th scope="col" class="n">Value</th><th scope="col">95 % of what is not known</th></tr></thead>`;
  return `<h3 style="color:var(--${hue})">${text(engine.name)}</h3>
<p>${text(engine.description)}; ${text(engine.propellants)}; ${text(engine.chemistry)}.${engine.contourIs === 'notional' ? ' The model has no wall of its own: outlines are notional.' : ''}${engine.change === undefined ? '' : ` ${text(changeWords(engine.change))}`}</p>
<div class="wide"><table>${head}<tbody>${cells.join('')}</tbody></table></div>${publishedHtml(engine)}`;
}

function conditions(answer: StudyAnswer): string {
  const criteria = new Set(
    Object.values(answer.engines).flatMap((engine) => engine.altitudes.map((row) => row.flow.criterion)),
  );
  return list([
    'Air: U.S. Standard Atmosphere 1976, geometric altitude; pressures are absolute.',
    `Whether the gas leaves the wall is judged by: ${[...criteria].join('; ')}.`,
    'Specific impulse in seconds, with standard gravity 9.80665 m/s².',
  ]);
}

function models(engines: readonly EngineAnswer[], drawn: readonly string[]): string {
  const names = [...new Set([...engines.flatMap((engine) => engine.models), ...drawn])];
  const used = new Set([
    'specificImpulse',
    'thrust',
    'characteristicVelocity',
    'exitPressure',
    'chamber.temperature',
    'flow.separationPressure',
  ]);
  const rows = [...used].map((name) => {
    const entry = quantity(name);
    return `<tr><th scope="row">${text(entry.label)}</th><td>${equationHtml(entry.equation)}</td><td>${text(entry.source)}</td><td>${text(entry.limits)}</td></tr>`;
  });
  return `<p>Models, each with its page in the program’s documentation: ${text(names.join(', '))}.</p>
<div class="wide"><table><thead><tr><th scope="col">Quantity</th><th scope="col">Equation</th><th scope="col">Source</th><th scope="col">Limits</th></tr></thead><tbody>${rows.join('')}</tbody></table></div>`;
}

/** What no engine has in its numbers once, then what each one has not besides. */
function notInNumbers(
  { notModelled }: StudyAnswer,
  engines: readonly EngineAnswer[],
  drawn: readonly string[],
): string {
  const left = saidOnce(engines.map(({ omitted }) => omitted));
  const each = engines.map(({ name, omitted }) => {
    const own = left.rest(omitted);
    return own.length === 0 ? '' : `<h3>${text(name)}</h3>${list(own)}`;
  });
  const ofFlows = drawn.includes('flow-field')
    ? [`In pictures of the whole flow, inviscid, computed: ${WITHOUT_FRICTION}`]
    : [];
  return [list([...left.common, ...notModelled, ...ofFlows]), ...each]
    .filter((part) => part !== '')
    .join('\n');
}

function sources(study: Study): string {
  const lines = study.sources.map(({ id, title, author, year, where }) =>
    [`[${id}]`, author, year === null ? null : `(${year})`, title, where].filter(Boolean).join(' '),
  );
  return section('Sources the study cites', list(lines));
}

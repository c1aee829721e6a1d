/** Where the gas leaves the wall at sea level, criterion by criterion, for the page of a package. */

import type { CriterionRow, EngineAnswer, EngineSeparation } from '../../answer/model.ts';
import { caseWords, separationPlaceWords } from '../../answer/separationWords.ts';
import { formatValue } from '../numbers/formatNumber.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';

/** Empty where no engine has a wall to leave. */
export function separationHtml(engines: readonly EngineAnswer[]): string {
  return engines
    .flatMap(({ name, separation }) => (separation === undefined ? [] : [engineHtml(name, separation)]))
    .join('\n');
}

function engineHtml(name: string, separation: EngineSeparation): string {
  const { seaLevel, criteria, lowestFullThrottle: throttle } = separation;
  const where = separationPlaceWords(seaLevel);
  const span = `${formatValue('separation.lowestFullThrottle', throttle.best)} (${formatValue('separation.lowestFullThrottle', throttle.low)} to ${formatValue('separation.lowestFullThrottle', throttle.high)})`;
  return `<h3>${text(name)}</h3>
<p>At sea level the gas ${text(caseWords[seaLevel.case])}${where === null ? '' : `, ${text(where)}`}. Lowest throttle that flows full there: ${text(span)}. Best values by ${text(separation.deciding)}.</p>
<div class="wide"><table><thead><tr><th scope="col">Criterion</th><th scope="col">Lets go below, share of the air’s pressure</th><th scope="col">Place, area ratio</th><th scope="col">Full up to, outside</th><th scope="col">Counts here</th><th scope="col">Source</th></tr></thead><tbody>${criteria.map(rowHtml).join('')}</tbody></table></div>
${seaLevel.sideLoads === undefined ? '' : `<p class="caution">${text(seaLevel.sideLoads)}</p>`}`;
}

function rowHtml({ name, ratio, place, limitAmbient, counts, why, range, source }: CriterionRow): string {
  const cell = (quantity: string, value: number | undefined): string =>
    `<td class="n">${value === undefined ? 'no number' : text(formatValue(quantity, value))}</td>`;
  return (
    `<tr><th scope="row" title="${text(range)}">${text(name)}</th>` +
    cell('separation.criteria.ratio', ratio) +
    cell('separation.place.areaRatio', place?.areaRatio) +
    cell('separation.criteria.limitAmbient', limitAmbient) +
    `<td>${counts ? 'yes' : text(`no: ${why ?? ''}`)}</td><td>${text(source)}</td></tr>`
  );
}

/** Heat and cooling for the package's page. */

import { quantity } from '../../answer/catalogue.ts';
import { coolingRows, coolingVerdict, heatComparedWords, heatRows } from '../../answer/heat/heatWords.ts';
import type { EngineAnswer, StudyAnswer } from '../../answer/model.ts';
import { formatValue } from '../numbers/formatNumber.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';

/** Empty where the study says nothing of cooling. */
export function heatHtml(answer: StudyAnswer): string {
  const engines = Object.values(answer.engines).filter(({ heat }) => heat !== null);
  if (engines.every(({ cooling }) => cooling === undefined)) return '';
  const { comparison } = answer;
  const base = comparison && answer.engines[comparison.base];
  const other = comparison && answer.engines[comparison.other];
  const compared = base && other ? heatComparedWords(base, other) : null;
  const names = [...new Set(engines.flatMap((engine) => rowsOf(engine).map((row) => row.quantity)))];
  const head = engines.map(({ name }) => `<th scope="col" class="n">${text(name)}</th>`).join('');
  const body = names.map((name) => rowHtml(name, engines)).join('\n');
  return `${compared === null ? '' : `<p>${text(compared)}</p>`}
${engines.map(verdictHtml).join('\n')}
<p class="caution">${text(answer.caution)}</p>
<div class="wide"><table><thead><tr><th scope="col">Quantity</th>${head}</tr></thead><tbody>
${body}
</tbody></table></div>`;
}

function rowsOf(engine: EngineAnswer): ReturnType<typeof heatRows> {
  return [...heatRows(engine), ...coolingRows(engine)];
}

function rowHtml(name: string, engines: readonly EngineAnswer[]): string {
  const { label, meaning } = quantity(name);
  const cells = engines.map((engine) => {
    const value = rowsOf(engine).find((row) => row.quantity === name)?.value ?? null;
    return `<td class="n">${value === null ? 'no number' : text(formatValue(name, value))}</td>`;
  });
  return `<tr><th scope="row" title="${text(meaning)}">${text(label)}</th>${cells.join('')}</tr>`;
}

function verdictHtml({ name, cooling, reasons }: EngineAnswer): string {
  if (cooling === undefined) return '';
  if (cooling === null) {
    const reason = reasons.find(({ path }) => path === 'cooling');
    return `<p><strong>${text(name)}</strong>: ${text(`${reason?.reason ?? ''} ${reason?.mend ?? ''}`)}</p>`;
  }
  const notes = cooling.notes.map((note) => ` ${text(note)}`).join('');
  return `<p><strong>${text(name)}</strong>: ${text(coolingVerdict(cooling))}${notes}</p>`;
}

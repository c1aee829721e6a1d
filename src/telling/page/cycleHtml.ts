/** How the propellants are pumped and what that costs, for the page of a package. */

import { cycleName, cycleRows, cycleVerdict } from '../../answer/cycle/cycleWords.ts';
import type { EngineAnswer } from '../../answer/model.ts';
import { CAUTION_SHORT } from '../caution.ts';
import { formatValue } from '../numbers/formatNumber.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';

/** Empty where no engine has a cycle. */
export function cycleHtml(engines: readonly EngineAnswer[]): string {
  const told = engines.filter(({ cycle }) => cycle !== undefined);
  if (told.length === 0) return '';
  return `${told.map(engineHtml).join('\n')}\n<p class="caution">${text(CAUTION_SHORT)}</p>`;
}

function engineHtml(engine: EngineAnswer): string {
  const rows = cycleRows(engine).map(
    ({ quantity, label, value }) =>
      `<tr><th scope="row">${text(label)}</th><td class="n">${text(formatValue(quantity, value!))}</td></tr>`,
  );
  return `<h3>${text(engine.name)}, ${text(cycleName(engine.cycle!.kind))}</h3>
<p>${text(cycleVerdict(engine))}</p>
<div class="wide"><table><tbody>${rows.join('')}</tbody></table></div>`;
}

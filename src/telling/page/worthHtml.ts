/** Gain and price of the pair, and what it would take, for the page of a package. */

import { type Need, needWords } from '../../answer/needs/index.ts';
import {
  EXCHANGE_HEAD,
  exchangeRows,
  rowWords,
  sideWords,
  type VehicleWorth,
  type WorthTable,
  worthWords,
} from '../../answer/worth/index.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';

/** Empty where there is no table. */
export function worthHtml(
  table: WorthTable | null,
  vehicles: readonly VehicleWorth[],
  names: (id: string) => string,
): string {
  if (table === null) return '';
  const { base, other, bound, rows } = table;
  const columns = [base, other, ...(bound === null ? [] : [bound])];
  const head = columns.map((id) => `<th scope="col" class="n">${text(names(id))}</th>`).join('');
  const body = rows.map((row) => {
    const sides = [row.base, row.other, ...(bound === null ? [] : [row.bound])];
    const cells = sides.map(
      (side) => `<td class="n">${side === null ? '' : text(sideWords(row, side))}</td>`,
    );
    return `<tr><td>${row.group === 'gain' ? 'gain' : 'price'}</td><th scope="row">${text(rowWords(row))}</th>${cells.join('')}</tr>`;
  });
  return `${worthWords(table, names, vehicles)
    .map((line) => `<p>${text(line)}</p>`)
    .join('\n')}
<div class="wide"><table><thead><tr><th scope="col"></th><th scope="col">Quantity</th>${head}</tr></thead><tbody>${body.join('')}</tbody></table></div>
<p>In brackets: ${text(table.drawn)}</p>${vehicles.map(exchangeHtml).join('')}`;
}

function exchangeHtml(vehicle: VehicleWorth): string {
  const head = EXCHANGE_HEAD.map((words) => `<th scope="col" class="n">${text(words)}</th>`).join('');
  const rows = exchangeRows(vehicle).map(
    ([label, ...cells]) =>
      `<tr><th scope="row">${text(label)}</th>${cells.map((cell) => `<td class="n">${text(cell)}</td>`).join('')}</tr>`,
  );
  return `<h3>What a little more is worth to ${text(vehicle.name)}</h3><div class="wide"><table><thead><tr>${head}</tr></thead><tbody>${rows.join('')}</tbody></table></div>`;
}

/** One list item a need; empty where there is none. */
export function needsHtml(needs: readonly Need[]): string {
  const items = needs.map((need) => {
    const { title } = need.request;
    const lines = [...(title === null ? [] : [title]), ...needWords(need)];
    return `<li>${lines.map(text).join('<br>')}</li>`;
  });
  return items.length === 0 ? '' : `<ul>${items.join('')}</ul>`;
}

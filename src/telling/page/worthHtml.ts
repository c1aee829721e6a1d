/** Gain and price of the pair, and what it would take, for the page of a package. */

import { type Need, needWords } from '../../answer/needs/index.ts';
import { rowWords, sideWords, type WorthTable, worthWords } from '../../answer/worth/index.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';

/** Empty where there is no table. */
export function worthHtml(table: WorthTable | null, names: (id: string) => string): string {
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
  return `${worthWords(table, names)
    .map((line) => `<p>${text(line)}</p>`)
    .join('\n')}
<div class="wide"><table><thead><tr><th scope="col"></th><th scope="col">Quantity</th>${head}</tr></thead><tbody>${body.join('')}</tbody></table></div>
<p>In brackets: ${text(table.drawn)}</p>`;
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

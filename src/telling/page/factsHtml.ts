/** Reported facts with their sources, for the page of a package. */

import { checkFacts } from '../../answer/sentences/checkFacts.ts';
import type { Study } from '../../study/model.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';

/** Empty where the study has none. */
export function factsHtml(study: Pick<Study, 'facts' | 'sources'>): string {
  const items = checkFacts(study).map(({ say, conditions, why, problem, sources }) => {
    const told = problem === null ? why : `${why} ${problem.mend}`;
    const lines = [...conditions, told, ...sources];
    return `<li>“${text(say)}”${lines.map((line) => `<br>${text(line)}`).join('')}</li>`;
  });
  return items.length === 0 ? '' : `<ul>${items.join('')}</ul>`;
}

/** Analogies with what of them is so, for the page of a package. */

import type { CheckedAnalogy } from '../../answer/analogies/model.ts';
import { verdictLabel } from '../../answer/sentences/words.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';
import { saidOnce } from './saidOnce.ts';

/** Empty where the study has none. */
export function analogiesHtml(analogies: readonly CheckedAnalogy[]): string {
  return analogies.map(oneHtml).join('\n');
}

function oneHtml(analogy: CheckedAnalogy): string {
  const { say, said, why, problem, stands, legs, holdsFor, breaksWhere, sources } = analogy;
  const lines = [
    ...(said ? [] : ['Kept to be discussed, not to be said.']),
    problem === null ? why : `${why} ${problem.mend}`,
    ...stands.map(({ this: one, for: other, relation }) =>
      relation === null
        ? `${one} stands for ${other}.`
        : `${one} stands for ${other}: ${relation.label}, ${relation.equation} (${relation.source}).`,
    ),
    `It holds for ${holdsFor}.`,
    ...breaksWhere.map(({ say: where, here }) =>
      here === null
        ? `It breaks: ${where}.`
        : `It breaks: ${where}${here ? ', as in this study' : ', not in this study'}.`,
    ),
    ...sources,
  ];
  const tested = saidOnce(legs.map(({ conditions }) => conditions));
  const all =
    tested.common.length === 0 ? '' : `<p>All parts were tested so: ${text(tested.common.join(' '))}</p>\n`;
  const rows = legs.map(
    (leg) =>
      `<tr><th scope="row"><strong>${text(leg.verdict)}</strong></th><td>“${text(leg.say)}”${leg.main ? ' (its point)' : ''}<br>${text([leg.found, ...tested.rest(leg.conditions)].join(' '))}</td></tr>`,
  );
  return `<h3>“${text(say)}”</h3>
<p><strong>${text(verdictLabel(analogy))}.</strong> ${lines.map(text).join('<br>')}</p>
${all}<div class="wide"><table><thead><tr><th scope="col">Found</th><th scope="col">What it makes people believe</th></tr></thead><tbody>${rows.join('')}</tbody></table></div>`;
}

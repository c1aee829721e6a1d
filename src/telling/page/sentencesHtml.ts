/** Sentences with their verdicts, for the page of a package. */

import {
  type CheckedSentence,
  countWords,
  flipWords,
  shareText,
  untestedReasons,
  verdictLabel,
} from '../../answer/sentences/index.ts';
import { capital } from '../../study/capital.ts';
import { escapeMarkup as text } from '../scene/safeText.ts';
import { saidOnce } from './saidOnce.ts';

/** Empty where the study has none. */
export function sentencesHtml(sentences: readonly CheckedSentence[]): string {
  if (sentences.length === 0) return '';
  const tested = saidOnce(sentences.map(({ conditions }) => conditions));
  const all =
    tested.common.length === 0 ? '' : `\n<p>All were tested so: ${text(tested.common.join(' '))}</p>`;
  return `<p>${text(countWords(sentences))}. The share says in how much of what is not known a sentence holds: 97 % means that it came out so in 97 of 100 reckonings, each with the inputs that stand with ±, and the published errors of the models, drawn anew.</p>${all}
<div class="wide"><table>
<thead><tr><th scope="col">Verdict</th><th scope="col" class="n">Holds in</th><th scope="col">Sentence, and what is computed</th></tr></thead>
<tbody>${sentences.map((sentence) => rowHtml(sentence, tested.rest(sentence.conditions))).join('')}</tbody></table></div>`;
}

/** @param conditions of this sentence alone */
function rowHtml(sentence: CheckedSentence, conditions: readonly string[]): string {
  const { verdict, share, say, said, wording, instead, why, problem, flips } = sentence;
  const lines = [
    ...(said ? [] : ['Kept to be discussed, not to be said.']),
    ...(instead === null ? [] : [`Instead: ${instead}`]),
    ...(wording === null ? [] : [wording]),
    ...(verdict === 'safe to say' ? [] : [problem === null ? why : `${why} ${problem.mend}`]),
    ...untestedReasons(sentence),
    ...flipWords(flips)
      .slice(0, 2)
      .map((words) => capital(`${words}.`)),
    ...(conditions.length === 0 ? [] : [`Tested: ${conditions.join(' ')}`]),
  ];
  const holds = share === null ? '' : text(shareText(share));
  return `<tr><th scope="row"><strong>${text(verdictLabel(sentence))}</strong></th><td class="n">${holds}</td><td>“${text(say)}”${lines.map((line) => `<br>${text(line)}`).join('')}</td></tr>`;
}

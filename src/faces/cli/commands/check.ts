import { changedAnalogies } from '../../../answer/analogies/index.ts';
import { CAUTION } from '../../../answer/caution.ts';
import { reviewables, SCRIPT_ID, standingsOf } from '../../../answer/review/index.ts';
import { changedVerdicts, checkAnswer, checkFacts, failsAsSaid } from '../../../answer/sentences/index.ts';
import type { Study } from '../../../study/model.ts';
import { SCRIPT_FILE } from '../../../study/script/index.ts';
import { failingLines, type Judged, readScriptOf, type ScriptFlag } from '../../../telling/script/index.ts';
import { dismissing, threadCrew } from '../../crew/threadCrew.ts';
import { openDataShelf } from '../../disk/data.ts';
import { readReviewFile } from '../../disk/reviewFile.ts';
import { readScriptText } from '../../disk/scriptFile.ts';
import { sha256 } from '../../package/sha256.ts';
import { checkedStudy } from '../checkedSentences.ts';
import { readEarlierCheck } from '../earlierCheck.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { openStudy } from '../openStudy.ts';
import { scriptToReview } from '../scriptReview.ts';
import type { Terminal } from '../terminal.ts';
import { checkText } from '../text/checkText.ts';
import { studyProblemText } from '../text/problemText.ts';

export interface CheckFlags {
  readonly json?: true;
  readonly before?: string;
  readonly all?: true;
}

export async function checkCommand(
  given: string,
  flags: CheckFlags,
  terminal: Terminal,
): Promise<ExitStatus> {
  const earlier = flags.before === undefined ? null : await readEarlierCheck(flags.before);
  const { study, text, folder } = await openStudy(given, openDataShelf(), terminal);
  const crew = await threadCrew(study);
  const signOffs = await readReviewFile(folder);
  const { sentences, analogies, comparison, told } = await dismissing(crew, async () => ({
    ...(await checkedStudy(study, crew, terminal)),
    // Its numbers are worked out only where somebody has signed it.
    told: signOffs.some(({ id }) => id === SCRIPT_ID) ? await scriptToReview(study, folder, crew) : null,
  }));
  const facts = checkFacts(study);
  const all = [...sentences, ...facts, ...analogies];
  const { inScript, whole } = await scriptLines(folder, study, all, terminal);
  const standings = standingsOf(
    signOffs,
    [...reviewables(sentences, facts, analogies), ...(told === null ? [] : [told])],
    sha256,
  );
  const changed = earlier === null ? null : changedVerdicts(earlier.sentences, sentences);
  const before = earlier?.analogies ?? null;
  const likenesses = before === null ? null : changedAnalogies(before, analogies);
  terminal.out(
    flags.json
      ? JSON.stringify(
          {
            ...checkAnswer(study, sentences, analogies, comparison),
            ...(standings.length > 0 && { reviews: standings }),
            ...(inScript.length > 0 && { script: inScript }),
            ...(changed && { changed }),
            ...(likenesses && { changedAnalogies: likenesses }),
          },
          null,
          2,
        )
      : checkText(
          {
            study,
            text,
            sentences,
            facts,
            analogies,
            comparison,
            changed: changed && [...changed, ...(likenesses ?? [])],
            standings,
            inScript: inScript.map(({ line, words }) => `${line}: ${words}`),
            caution: CAUTION,
            whole: flags.all === true,
          },
          terminal.width,
        ),
  );
  return all.some(failsAsSaid) || inScript.length > 0 || !whole ? EXIT.incomplete : EXIT.answered;
}

/** Lines of the study's script that say what fails; none where it has no script. What of it cannot be read is told. */
async function scriptLines(
  folder: string,
  study: Study,
  judged: readonly Judged[],
  terminal: Terminal,
): Promise<{ readonly inScript: readonly ScriptFlag[]; readonly whole: boolean }> {
  const text = await readScriptText(folder);
  if (text === null) return { inScript: [], whole: true };
  const { script, problems } = readScriptOf(text, study, SCRIPT_FILE);
  for (const problem of problems) terminal.err(studyProblemText(problem, terminal.width));
  return { inScript: failingLines(script, judged, study), whole: problems.length === 0 };
}

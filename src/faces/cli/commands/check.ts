import { CAUTION } from '../../../answer/caution.ts';
import {
  type CheckedSentence,
  changedVerdicts,
  checkSentences,
  failsAsSaid,
} from '../../../answer/sentences/index.ts';
import { threadCrew } from '../../crew/threadCrew.ts';
import { openDataShelf } from '../../disk/data.ts';
import { readEarlierCheck } from '../earlierCheck.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { openStudy } from '../openStudy.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { checkText } from '../text/checkText.ts';

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
  const { study } = await openStudy(given, openDataShelf(), terminal);
  const crew = await threadCrew(study);
  let sentences: readonly CheckedSentence[];
  try {
    sentences = await checkSentences(study, crew, {
      onProvisional: () => sayIfSlow(terminal, 'Working out what is asked …'),
      onDecided: () => sayIfSlow(terminal, 'Looking where verdicts turn …'),
    });
  } finally {
    await crew.dismiss();
  }
  const changed = earlier === null ? null : changedVerdicts(earlier, sentences);
  terminal.out(
    flags.json
      ? JSON.stringify(
          {
            format: 'plumeline check 1',
            caution: CAUTION,
            question: study.question,
            sentences,
            ...(changed && { changed }),
          },
          null,
          2,
        )
      : checkText(
          { question: study.question, sentences, changed, caution: CAUTION, whole: flags.all === true },
          terminal.width,
        ),
  );
  return sentences.some(failsAsSaid) ? EXIT.incomplete : EXIT.answered;
}

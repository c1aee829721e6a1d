import { reviewables, SCRIPT_ID } from '../../../answer/review/index.ts';
import { checkFacts } from '../../../answer/sentences/index.ts';
import { nearestName } from '../../../study/nearest.ts';
import { isDay, type SignOff, stateText } from '../../../study/review/model.ts';
import { withSignOffs } from '../../../study/review/writeReview.ts';
import { dismissing, threadCrew } from '../../crew/threadCrew.ts';
import { openDataShelf } from '../../disk/data.ts';
import { REVIEW_FILE, readReviewFile, writeReviewFile } from '../../disk/reviewFile.ts';
import { readScriptText } from '../../disk/scriptFile.ts';
import { sha256 } from '../../package/sha256.ts';
import { BadInput } from '../badInput.ts';
import { checkedStudy } from '../checkedSentences.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { openStudy } from '../openStudy.ts';
import { scriptToReview } from '../scriptReview.ts';
import type { Terminal } from '../terminal.ts';

export interface ReviewFlags {
  readonly by: string;
  readonly sentences?: string;
  readonly date?: string;
}

/** The day of signing is the one thing that comes from the clock, where none is given; it is kept in the file. */
export async function reviewCommand(
  given: string,
  flags: ReviewFlags,
  terminal: Terminal,
): Promise<ExitStatus> {
  const date = dayGiven(flags.date) ?? new Date().toISOString().slice(0, 10);
  const by = nameGiven(flags.by);
  const { study, folder } = await openStudy(given, openDataShelf(), terminal);
  const earlier = await readReviewFile(folder);
  const script = (await readScriptText(folder)) === null ? [] : [{ id: SCRIPT_ID }];
  const wanted = idsGiven(flags.sentences, [
    ...study.sentences,
    ...study.facts,
    ...study.analogies,
    ...script,
  ]);
  const crew = await threadCrew(study);
  const { sentences, analogies, told } = await dismissing(crew, async () => ({
    ...(await checkedStudy(study, crew, terminal)),
    told: wanted.includes(SCRIPT_ID) ? await scriptToReview(study, folder, crew) : null,
  }));
  const items = [
    ...reviewables(sentences, checkFacts(study), analogies),
    ...(told === null ? [] : [told]),
  ].filter(({ id }) => wanted.includes(id));
  const added = items.map(
    ({ id, state }): SignOff => ({ id, by, date, hash: sha256(stateText(state)), reviewed: state }),
  );
  await writeReviewFile(folder, withSignOffs(earlier, added));
  for (const { id, state } of items) terminal.out(`${id}: ${state.verdict}. “${state.say}”`);
  terminal.out(`${added.length} signed by ${by} on ${date}, in ${REVIEW_FILE}.`);
  return EXIT.answered;
}

/** @throws BadInput where it is no day */
export function dayGiven(text: string | undefined): string | null {
  if (text === undefined) return null;
  if (isDay(text)) return text;
  throw new BadInput([
    {
      code: 'day-unreadable',
      what: `--date: “${text}” is no day.`,
      mend: 'Write year, month and day, e.g. --date 2026-11-26',
    },
  ]);
}

function nameGiven(text: string): string {
  const name = text.trim();
  if (name !== '') return name;
  throw new BadInput([{ code: 'name-missing', what: '--by: no name is given.', mend: 'Write --by NAME.' }]);
}

function idsGiven(text: string | undefined, items: readonly { readonly id: string }[]): readonly string[] {
  const known = items.map(({ id }) => id);
  if (text === undefined) {
    if (known.length > 0) return known;
    throw new BadInput([
      {
        code: 'nothing-to-review',
        what: 'The study has no sentences, facts, analogies or script.',
        mend: 'Write them into study.yaml first.',
      },
    ]);
  }
  const wanted = text
    .split(',')
    .map((id) => id.trim())
    .filter((id) => id !== '');
  const unknown = wanted.find((id) => !known.includes(id));
  if (unknown === undefined) return wanted;
  const near = nearestName(unknown, known);
  throw new BadInput([
    {
      code: 'sentence-unknown',
      what: `--sentences: the study has no “${unknown}”.`,
      mend: `${near === null ? '' : `Did you mean ${near}? `}It has ${known.join(', ')}.`,
    },
  ]);
}

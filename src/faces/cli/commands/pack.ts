import { resolve } from 'node:path';
import { dataRowsUsed } from '../../../answer/cited/index.ts';
import { gatherMaterials } from '../../../answer/materials.ts';
import { reviewables, standingsOf } from '../../../answer/review/index.ts';
import { checkFacts } from '../../../answer/sentences/checkFacts.ts';
import { solveStudyLive } from '../../../answer/solve.ts';
import type { SignOff } from '../../../study/review/model.ts';
import { changeWords } from '../../../telling/corrections/changes.ts';
import { openDataShelf } from '../../disk/data.ts';
import { readReviewFile } from '../../disk/reviewFile.ts';
import { requireReplaceable } from '../../package/packagePlace.ts';
import { type PackedClips, packClips } from '../../package/packClips.ts';
import type { PackInput } from '../../package/packInput.ts';
import { type PackedStudy, packStudy } from '../../package/packStudy.ts';
import { type PictureMakers, pictureMakers } from '../../package/pictureMakers.ts';
import { sha256 } from '../../package/sha256.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { interruptible } from '../interruptible.ts';
import { type OpenedStudy, openStudy } from '../openStudy.ts';
import { type WorkedOut, workedOut } from '../packWork.ts';
import { reviewableOf } from '../scriptReview.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { programVersion } from '../version.ts';
import { dayGiven } from './review.ts';

export interface PackFlags {
  readonly out: string;
  readonly date?: string;
  /** False: none are made. */ readonly clips?: boolean;
}

/** Stopped by the user's interrupt, nothing is written. */
export async function packCommand(
  given: string,
  flags: PackFlags,
  terminal: Terminal,
  signal?: AbortSignal,
): Promise<ExitStatus> {
  const makers = pictureMakers();
  let status: ExitStatus | null;
  try {
    status = await interruptible((ended) => packed(given, flags, terminal, makers, ended), signal);
  } finally {
    await makers.dismiss();
  }
  if (status !== null) return status;
  terminal.err('Stopped. Nothing was written.');
  return EXIT.incomplete;
}

async function packed(
  given: string,
  flags: PackFlags,
  terminal: Terminal,
  makers: PictureMakers,
  signal: AbortSignal,
): Promise<ExitStatus> {
  const day = dayGiven(flags.date);
  const shelf = openDataShelf();
  const opened = await openStudy(given, shelf, terminal);
  const { study, folder } = opened;
  // Before the work, not after it.
  await requireReplaceable(resolve(flags.out));
  const worked = await workedOut({
    ...{ study, folder, shelf, makers, terminal, signal },
    solve: () =>
      solveStudyLive(study, shelf, {
        version: programVersion(),
        onEngine: (name, which, count) => sayIfSlow(terminal, `Solving ${name} (${which} of ${count}) …`),
      }),
  });
  const { solved, swept, script } = worked;
  const materials = await gatherMaterials(study.engines, shelf);
  const filmed =
    flags.clips === false
      ? NO_CLIPS
      : await packClips(
          { study, solved, swept, script, materials, flows: worked.flows },
          { signal, onFrame: filmProgress(terminal) },
        );
  let written: PackedStudy;
  try {
    const input = {
      ...{ ...worked, makers, signal },
      ...{ clips: filmed.clips, rows: await dataRowsUsed(study, shelf) },
      onFigure: (name: string, which: number, count: number) =>
        sayIfSlow(terminal, `Drawing ${name} (${which} of ${count}) …`),
    };
    written = await signedAndWritten(opened, input, day, flags.out);
  } finally {
    await filmed.discard();
  }
  const failed = Object.entries(solved.answer.failed);
  for (const [id, problem] of failed) terminal.err(`The engine ${id} could not be computed: ${problem.what}`);
  terminal.out(`${written.files.length} files in ${written.folder}; open index.html there.`);
  for (const note of [...written.notes, ...filmed.notes]) terminal.err(note);
  if (written.changes !== null && written.changes.length > 0) {
    terminal.out(
      `${written.changes.length} published things have changed since the package before; drafted in corrections.md:`,
    );
    for (const change of written.changes.slice(0, MOST_TOLD)) terminal.out(`  - ${changeWords(change)}`);
  }
  return failed.length + filmed.notes.length === 0 ? EXIT.answered : EXIT.incomplete;
}

/** With the sign-offs of the study's own file. */
async function signedAndWritten(
  { study, text, folder }: OpenedStudy,
  worked: WorkedOut & Omit<PackInput, 'study' | 'text' | 'date'>,
  day: string | null,
  out: string,
): Promise<PackedStudy> {
  const { sentences, analogies, script, answer } = worked;
  const signOffs = await readReviewFile(folder);
  const signable = [
    ...reviewables(sentences, checkFacts(study), analogies),
    ...(script === null ? [] : [reviewableOf(script)]),
  ];
  return packStudy(
    {
      ...{ ...worked, study, text },
      solved: { ...worked.solved, answer },
      standings: standingsOf(signOffs, signable, sha256),
      // The day is an input: given, or of the latest sign-off; the clock would change the bytes.
      date: day ?? latestDay(signOffs),
    },
    out,
  );
}

const NO_CLIPS: PackedClips = { clips: [], notes: [], discard: async () => undefined };

/** A line a clip, and one at every half of it. */
function filmProgress(terminal: Terminal): (clip: string, done: number, of: number) => void {
  let told = '';
  return (clip, done, of) => {
    const step = `${clip} ${Math.floor((2 * done) / of)}`;
    if (step === told || done >= of) return;
    told = step;
    sayIfSlow(terminal, `Filming ${clip}, frame ${done + 1} of ${of} …`);
  };
}

const latestDay = (signOffs: readonly SignOff[]): string | null =>
  signOffs
    .map(({ date }) => date)
    .sort()
    .at(-1) ?? null;

const MOST_TOLD = 10;

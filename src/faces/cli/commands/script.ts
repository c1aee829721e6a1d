import { checkAnalogies } from '../../../answer/analogies/index.ts';
import { checkFacts } from '../../../answer/sentences/index.ts';
import type { Study } from '../../../study/model.ts';
import { listNames, quote } from '../../../study/report.ts';
import { SCRIPT_FILE, type ScriptRead } from '../../../study/script/index.ts';
import {
  handNumbers,
  type Judged,
  readScriptOf,
  recordOf,
  resolvedMarkdown,
  resolveScript,
  scriptFound,
  tellScript,
} from '../../../telling/script/index.ts';
import { dismissing, threadCrew } from '../../crew/threadCrew.ts';
import { writeFileAtomically } from '../../disk/atomicWrite.ts';
import { openDataShelf } from '../../disk/data.ts';
import { RECORD_FILE, readNumbersRecord, readScriptText, writeNumbersRecord } from '../../disk/scriptFile.ts';
import { readingFile } from '../../package/readingFile.ts';
import { BadInput } from '../badInput.ts';
import { checkedSentences } from '../checkedSentences.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { openStudy } from '../openStudy.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { counted } from '../text/counted.ts';
import { studyProblemText } from '../text/problemText.ts';
import { scriptText } from '../text/scriptText.ts';
import { noScript } from '../toldScript.ts';

export interface ScriptFlags {
  readonly json?: true;
  readonly cut?: string;
  readonly reading?: string;
  readonly write?: string;
  readonly record?: true;
}

export async function scriptCommand(
  given: string,
  flags: ScriptFlags,
  terminal: Terminal,
): Promise<ExitStatus> {
  const { study, folder } = await openStudy(given, openDataShelf(), terminal);
  const text = await readScriptText(folder);
  if (text === null) throw noScript(folder);
  const record = await readNumbersRecord(folder);
  const read = readScriptOf(text, study, SCRIPT_FILE);
  checkCut(flags.cut, read);
  const crew = await threadCrew(study);
  const { told, judged } = await dismissing(crew, async () => ({
    told: await tellScript(study, read, crew, {
      onProvisional: () => sayIfSlow(terminal, 'Working out the numbers …'),
    }),
    judged: await judgedIn(study, read, crew, terminal),
  }));
  const byHand = handNumbers(read.script, study);
  const found = scriptFound({ text, read, study, told, judged, byHand, record }, flags.cut ?? null);
  terminal.out(
    flags.json
      ? JSON.stringify(found.answer, null, 2)
      : scriptText({ answer: found.answer, record }, terminal.width),
  );
  for (const problem of read.problems) terminal.err(studyProblemText(problem, terminal.width));
  if (flags.write !== undefined) await writeFileAtomically(flags.write, resolvedMarkdown(found.resolved));
  if (flags.reading !== undefined) await writeFileAtomically(flags.reading, readingFile(found.answer));
  if (flags.record) {
    const recorded = recordOf(resolveScript(read.script, told));
    await writeNumbersRecord(folder, recorded);
    terminal.err(`Recorded ${counted(recorded.numbers.length, 'number')} in ${RECORD_FILE}.`);
  }
  if (read.problems.length > 0) return EXIT.badInput;
  // A number that has just been recorded has moved for the last time.
  const fails = found.flags.some((flag) => flag.fails && !(flags.record && flag.kind === 'moved'));
  return fails ? EXIT.incomplete : EXIT.answered;
}

/** Only where a line says something that is checked. */
async function judgedIn(
  study: Study,
  { script }: ScriptRead,
  crew: Awaited<ReturnType<typeof threadCrew>>,
  terminal: Terminal,
): Promise<readonly Judged[]> {
  const said = new Set(script.scenes.flatMap(({ lines }) => lines.flatMap(({ says }) => says ?? [])));
  const sentences = study.sentences.filter(({ id }) => said.has(id));
  const analogies = study.analogies.filter(({ id }) => said.has(id));
  return [
    ...(sentences.length === 0
      ? []
      : await checkedSentences({ ...study, sentences }, crew, terminal, { flips: false })),
    ...checkFacts(study),
    ...(analogies.length === 0 ? [] : await checkAnalogies({ ...study, analogies }, crew)),
  ];
}

function checkCut(name: string | undefined, { script: { cuts } }: ScriptRead): void {
  if (name === undefined || cuts.some((cut) => cut.name === name)) return;
  throw new BadInput([
    {
      code: 'cut-unknown',
      what: `--cut ${quote(name)}: the script asks for no such cut.`,
      mend:
        cuts.length === 0
          ? 'Ask for it at the head of script.md: cuts: { short: { length: 40 s } }.'
          : `It asks for ${listNames(cuts.map((cut) => cut.name))}.`,
    },
  ]);
}

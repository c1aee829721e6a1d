import { CAUTION } from '../../../answer/caution.ts';
import { findNeed, type Need, needRequestOf, needWords } from '../../../answer/needs/index.ts';
import type { NeedInput, Study } from '../../../study/model.ts';
import { dismissing, threadCrew } from '../../crew/threadCrew.ts';
import { openDataShelf } from '../../disk/data.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { openStudy } from '../openStudy.ts';
import { bad, namedOf, sweptFrom } from '../sweepFlags.ts';
import { sayIfSlow, type Terminal } from '../terminal.ts';
import { heldText } from '../text/sweepText.ts';
import { wrapped } from '../text/wrap.ts';

export interface NeedFlags {
  readonly id?: string;
  readonly so?: string;
  readonly over?: string;
  readonly from?: string;
  readonly to?: string;
  readonly engine?: readonly string[];
  readonly json?: true;
}

const PROGRESS_STEP = 8;
const names = { over: '--over', from: '--from', to: '--to', steps: '--steps' };

/** Exit status: answered; incomplete where some need has no answer in its range. */
export async function needCommand(given: string, flags: NeedFlags, terminal: Terminal): Promise<ExitStatus> {
  const { study } = await openStudy(given, openDataShelf(), terminal);
  const wanted = wantedNeeds(study, flags, terminal);
  const crew = await threadCrew(study);
  const found = await dismissing(crew, async () => {
    const needs: Need[] = [];
    for (const input of wanted) {
      const onProgress = (done: number, most: number): void => {
        if (done % PROGRESS_STEP === 0) sayIfSlow(terminal, `${input.id}: ${done} of about ${most} points …`);
      };
      needs.push(await findNeed(study, crew, needRequestOf(study, input), { onProgress }));
    }
    return needs;
  });
  terminal.out(
    flags.json
      ? JSON.stringify({ format: 'plumeline needs 1', caution: CAUTION, needs: found }, null, 2)
      : [...found.map((need) => needText(need, terminal.width)), wrapped(CAUTION, terminal.width)].join(
          '\n\n',
        ),
  );
  return found.some(({ nearest }) => nearest !== null) ? EXIT.incomplete : EXIT.answered;
}

/** The one that the options ask for, else those of the study. */
function wantedNeeds(
  study: Study,
  { id, so, over, from, to, engine }: NeedFlags,
  terminal: Terminal,
): readonly NeedInput[] {
  if (so === undefined && over === undefined) return namedOf(study.needs, id, 'need');
  if (so === undefined) {
    throw bad(
      'need-so-missing',
      '--so is missing.',
      'Say what is to hold: --so "bell.specificImpulse(vacuum) >= plug.specificImpulse(vacuum)".',
    );
  }
  const range = sweptFrom({ over, from, to, steps: undefined }, names, (line) => terminal.err(line));
  return [{ id: id ?? 'need', title: null, so, range, engines: engine ?? null, path: '--so' }];
}

function needText(need: Need, width: number): string {
  const [answer = '', ...rest] = needWords(need);
  const { title } = need.request;
  return [
    ...(title === null ? [] : [wrapped(title, width)]),
    [wrapped(answer, width), ...rest.map((line) => wrapped(line, width, '  ', ''))].join('\n'),
    heldText(need.held, width),
  ].join('\n\n');
}

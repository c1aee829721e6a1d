import { CAUTION } from '../../../answer/caution.ts';
import type { Problem } from '../../../numerics/problem.ts';
import { attempt } from '../../../numerics/problem.ts';
import type { Script } from '../../../study/script/model.ts';
import { parseQuantity } from '../../../study/units.ts';
import { cutMarkdown } from '../../../telling/cut/cutMarkdown.ts';
import type { CutWish } from '../../../telling/cut/model.ts';
import { proposeCut } from '../../../telling/cut/proposeCut.ts';
import { pacesOf, timeScript } from '../../../telling/time/timeScript.ts';
import { writeFileAtomically } from '../../disk/atomicWrite.ts';
import { BadInput } from '../badInput.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import type { Terminal } from '../terminal.ts';
import { cutText } from '../text/cutText.ts';
import { noCut, toldScript } from '../toldScript.ts';

export interface CutFlags {
  readonly to: string;
  readonly keep?: string;
  readonly leave?: string;
  readonly json?: true;
  readonly write?: string;
}

export async function cutCommand(given: string, flags: CutFlags, terminal: Terminal): Promise<ExitStatus> {
  const told = await toldScript(given, terminal);
  const { script, numbers, text, missing } = told;
  const made = attempt(() => proposeCut(script, numbers, wishOf(flags, script)));
  if (!made.ok) throw new BadInput([withFlags(made.problem)]);
  const cut = made.value;
  const timed = timeScript(cut.script, numbers, pacesOf(script));
  const { script: kept, ...rest } = cut;
  const answer = {
    format: 'plumeline cut 1',
    caution: CAUTION,
    title: script.title,
    ...rest,
    scenes: timed.scenes,
  };
  terminal.out(
    flags.json ? JSON.stringify(answer, null, 2) : cutText(cut, timed, script, CAUTION, terminal.width),
  );
  for (const expression of missing) terminal.err(`No value for ${expression}: its line is timed without it.`);
  if (flags.write !== undefined) await writeFileAtomically(flags.write, cutMarkdown(kept, text, CAUTION));
  return missing.length > 0 || cut.verdictNeeds.length > 0 ? EXIT.incomplete : EXIT.answered;
}

/** A length, or one of the script's own cuts with its wishes; what is named here is added to them. */
function wishOf({ to, keep, leave }: CutFlags, script: Script): CutWish {
  const own = script.cuts.find(({ name }) => name === to.trim());
  const length = own?.length ?? lengthOf(to, script);
  return {
    length,
    keep: [...(own?.keep ?? []), ...ids(keep)],
    leave: [...(own?.leave ?? []), ...ids(leave)],
  };
}

const ids = (list = ''): readonly string[] => list.split(/[\s,]+/).filter((id) => id !== '');

function lengthOf(to: string, script: Script): number {
  const parsed = parseQuantity(to, 'time');
  const value =
    parsed.ok && parsed.value.plusMinus === null && parsed.value.spread === null ? parsed.value.value : 0;
  if (value > 0) return value;
  throw noCut(to, script);
}

const withFlags = (problem: Problem): Problem =>
  problem.code === 'line-unknown'
    ? { ...problem, mend: `${problem.mend} plumeline script tells them with --json.` }
    : problem;

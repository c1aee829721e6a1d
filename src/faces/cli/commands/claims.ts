import { basename } from 'node:path';
import { CAUTION } from '../../../answer/caution.ts';
import { type Claim, claimsIn } from '../../../answer/claims/index.ts';
import { editStudy, knownNames } from '../../../study/index.ts';
import type { Study } from '../../../study/model.ts';
import { placeInFilm } from '../../../telling/script/index.ts';
import { writeFileAtomically } from '../../disk/atomicWrite.ts';
import { openDataShelf } from '../../disk/data.ts';
import { studyPath } from '../../disk/studyFolder.ts';
import { BadInput } from '../badInput.ts';
import { formatOf, readClaimsFile } from '../claimsFile.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { openStudy } from '../openStudy.ts';
import type { Terminal } from '../terminal.ts';
import { claimsText } from '../text/claimsText.ts';

export interface ClaimsFlags {
  readonly study?: string;
  readonly json?: true;
  readonly accept?: string;
}

export async function claimsCommand(
  file: string,
  flags: ClaimsFlags,
  terminal: Terminal,
): Promise<ExitStatus> {
  const text = await readClaimsFile(file);
  const shelf = openDataShelf();
  const opened = flags.study === undefined ? null : await openStudy(flags.study, shelf, terminal);
  const claims = claimsIn(text, formatOf(file), opened?.study ?? null);
  const accepted = flags.accept === undefined ? [] : acceptedOf(flags.accept, claims);
  if (accepted.length > 0 && flags.study !== undefined && opened !== null) {
    const place = await studyPath(flags.study);
    if (!place.ok) throw new BadInput([place.problem]);
    const edits = editsOf(accepted, opened.study, basename(file));
    const names = knownNames(await shelf.propellants());
    await writeFileAtomically(place.value.file, editStudy(opened.text, edits, names));
  } else if (flags.accept !== undefined && opened === null) {
    throw bad('accept-without-study', '--accept needs a study to write into.', 'Add --study my-question.');
  }
  terminal.out(
    flags.json
      ? JSON.stringify({ format: 'plumeline claims 1', caution: CAUTION, claims }, null, 2)
      : claimsText({ claims, accepted, caution: CAUTION, study: flags.study ?? null }, terminal.width),
  );
  return EXIT.answered;
}

function acceptedOf(text: string, claims: readonly Claim[]): readonly Claim[] {
  const numbers = text.split(',').map((part) => Number(part.trim() === '' ? Number.NaN : part));
  return [...new Set(numbers)].map((number) => {
    const claim = claims.find((one) => one.number === number);
    if (claim !== undefined) return claim;
    throw bad(
      'claim-unknown',
      `--accept ${text}: there are the claims 1 to ${claims.length}.`,
      'Give their numbers with commas: --accept 1,3',
    );
  });
}

function editsOf(accepted: readonly Claim[], study: Study, file: string) {
  const taken = new Set(study.sentences.map(({ id }) => id));
  return accepted.map((claim) => {
    const id = freeId(claim.number, taken);
    const time = claim.time === null ? '' : `, ${placeInFilm(claim.time)}`;
    return {
      list: 'sentences',
      add: { id, say: claim.say, ...(claim.test !== null && { holds: claim.test }), said: false },
      comment: `Claim found in ${file}, line ${claim.line}${time}. ${claim.test === null ? 'No test yet: write one under holds.' : 'The test is a proposal.'}`,
    };
  });
}

function freeId(number: number, taken: Set<string>): string {
  let id = `claim-${number}`;
  for (let i = 2; taken.has(id); i++) id = `claim-${number}-${i}`;
  taken.add(id);
  return id;
}

const bad = (code: string, what: string, mend: string): BadInput => new BadInput([{ code, what, mend }]);

import { access, mkdir, readFile } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { newStudyText } from '../../../study/index.ts';
import { SCRIPT_FILE } from '../../../study/script/index.ts';
import { writeFileAtomically } from '../../disk/atomicWrite.ts';
import { readScriptText } from '../../disk/scriptFile.ts';
import { STUDY_FILE } from '../../disk/studyFolder.ts';
import { BadInput } from '../badInput.ts';
import { EXIT, type ExitStatus } from '../exitStatus.ts';
import { starterFolders, starters } from '../starters.ts';
import type { Terminal } from '../terminal.ts';

export interface NewFlags {
  readonly from: string;
  readonly question?: string;
  readonly list?: boolean;
}

/** Makes a folder with a commented study; never overwrites one. */
export async function newCommand(
  given: string | undefined,
  flags: NewFlags,
  terminal: Terminal,
): Promise<ExitStatus> {
  if (flags.list) return listStarters(terminal);
  if (given === undefined) {
    throw new BadInput([
      {
        code: 'folder-missing',
        what: 'No folder is named in which to make the study.',
        mend: 'Write  plumeline new my-question  or, to see what there is to start from,  plumeline new --list',
      },
    ]);
  }
  const starter = await starterFolder(flags.from);
  const text = newStudyText(await readFile(join(starter, STUDY_FILE), 'utf8'), flags.question ?? null);
  const script = await readScriptText(starter);
  const folder = resolve(given);
  const file = join(folder, STUDY_FILE);
  if (await exists(file)) {
    throw new BadInput([
      {
        code: 'study-exists',
        what: `${file} is there already.`,
        why: 'It is left as it is: somebody may have worked on it.',
        mend: 'Name another folder, or delete that file first.',
      },
    ]);
  }
  await makeFolder(folder);
  await writeFileAtomically(file, text);
  const scriptFile = join(folder, SCRIPT_FILE);
  const hasScript = script !== null && !(await exists(scriptFile));
  if (hasScript) await writeFileAtomically(scriptFile, script);
  const shown = relative(process.cwd(), folder) || '.';
  terminal.out(`Made ${join(shown, STUDY_FILE)}, a commented study to change.`);
  terminal.out(`Next:  plumeline solve ${quoted(shown)}     numbers and the short answer`);
  terminal.out(`       plumeline check ${quoted(shown)}     which of its sentences are safe to say`);
  if (hasScript) {
    terminal.out(`       plumeline script ${quoted(shown)}    its script, with live numbers`);
  }
  terminal.out(`       plumeline open ${quoted(shown)}      the workbench in a browser`);
  return EXIT.answered;
}

async function listStarters(terminal: Terminal): Promise<ExitStatus> {
  const all = await starters();
  const width = Math.max(...all.map(({ name }) => name.length));
  for (const { name, question } of all) terminal.out(`${name.padEnd(width)}  ${question}`);
  return EXIT.answered;
}

async function starterFolder(name: string): Promise<string> {
  const known = await starterFolders();
  const folder = known.get(name);
  if (folder === undefined) {
    throw new BadInput([
      {
        code: 'starter-unknown',
        what: `There is no starter “${name}”.`,
        mend: `Starters: ${[...known.keys()].join(', ')}. With their questions: plumeline new --list`,
      },
    ]);
  }
  return folder;
}

async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder, { recursive: true });
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code !== 'EEXIST' && code !== 'ENOTDIR' && code !== 'EACCES' && code !== 'EROFS' && code !== 'EPERM')
      throw error;
    throw new BadInput([
      {
        code: 'folder-not-possible',
        what: `The folder ${folder} cannot be made (${code}).`,
        mend: 'Name a folder in a place where you may write and where no file has that name.',
      },
    ]);
  }
}

async function exists(path: string): Promise<boolean> {
  try {
    await access(path);
    return true;
  } catch {
    return false;
  }
}

function quoted(path: string): string {
  return /\s/.test(path) ? `"${path}"` : path;
}

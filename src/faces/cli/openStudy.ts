/** The study a command was given, read; its problems end the command, its warnings are said. */

import type { DataShelf } from '../../answer/shelf.ts';
import type { Study } from '../../study/model.ts';
import { knownNames } from '../../study/names.ts';
import { readStudyFolder } from '../disk/studyFolder.ts';
import { BadInput } from './badInput.ts';
import type { Terminal } from './terminal.ts';
import { studyProblemText } from './text/problemText.ts';

export interface OpenedStudy {
  readonly study: Study;
  /** As its owner wrote it. */ readonly text: string;
  /** Absolute. */ readonly folder: string;
}

/** @throws BadInput with every problem of the file; ProblemError when there is no study to read */
export async function openStudy(given: string, shelf: DataShelf, terminal: Terminal): Promise<OpenedStudy> {
  const { folder, text, outcome } = await readStudyFolder(given, knownNames(await shelf.propellants()));
  if (!outcome.ok) throw new BadInput(outcome.problems);
  for (const warning of outcome.warnings) terminal.err(studyProblemText(warning, terminal.width));
  return { study: outcome.study, folder, text: text ?? '' };
}

/** Changes of the study made on the page and written into its file, on whatever stands there by then. */

import { signal } from '@preact/signals';
import type { Problem } from '../../../numerics/problem.ts';
import { changeBetween, conflicts } from '../../../study/textChange.ts';
import type { Edit } from '../workshop/messages.ts';
import { editText } from '../workshop/workshop.ts';
import { editWords, gestureOf } from './editWords.ts';
import { changeBegun, changeRefused, type Made } from './estimates.ts';
import { inTurn } from './inTurn.ts';
import { takeUp } from './studyFile.ts';
import { record } from './studyHistory.ts';
import { writeStudyText } from './studyLink.ts';
import { showText } from './studyShown.ts';
import { saveState, solved, studyText, tried } from './studyStore.ts';

/** An edit that says something else than an edit made elsewhere at the same time and place. */
export interface Conflict {
  /** The edit made here, in words. */ readonly words: string;
  /** What kept it from being written on what stands there now; empty when nothing did. */
  readonly refused: readonly Problem[];
  readonly keepMine: () => Promise<void>;
  readonly keepTheirs: () => void;
}
export const conflict = signal<Conflict | null>(null);

/**
 * Writes one value into the study file and shows the result.
 * Resolves with the faults that kept it from being written; with none when it was.
 */
export function commitValue(path: string, value: string): Promise<readonly Problem[]> {
  return commitEdits([{ path, value }]);
}

/** The same of several changes at once: they are undone together. */
export function commitEdits(edits: readonly Edit[]): Promise<readonly Problem[]> {
  return makeChange(edits, false);
}

/** What it changes is estimated at once; @param overTheirs also where the same place was changed elsewhere meanwhile */
function makeChange(edits: readonly Edit[], overTheirs: boolean): Promise<readonly Problem[]> {
  const begun = performance.now();
  const change = changeBegun({ edits });
  return inTurn(async () => {
    const isOnItsWay = await makeEdits(edits, overTheirs, begun, change).catch((error: unknown) => {
      changeRefused(change);
      if (saveState.value === 'saving') saveState.value = 'failed';
      throw error;
    });
    if (isOnItsWay === true) return [];
    changeRefused(change);
    return isOnItsWay;
  });
}

/** True where a text with them is being worked out; else what kept them from being written. */
async function makeEdits(
  edits: readonly Edit[],
  overTheirs: boolean,
  begun: number,
  change: Made,
): Promise<readonly Problem[] | true> {
  const base = studyText.value;
  if (base === null) return [];
  const edited = await editText(base.text, edits);
  if (!edited.ok) return edited.problems;
  if (edited.text === base.text) {
    if (tried.value !== null) void showText(base);
    return [];
  }
  const words = editWords(edits, solved.value?.study);
  saveState.value = 'saving';
  const outcome = await writeStudyText(edited.text, base.hash);
  if (outcome.kind === 'refused') {
    saveState.value = 'failed';
    return [outcome.problem];
  }
  if (outcome.kind === 'written') {
    record(outcome.study.text, words, gestureOf(edits), 'here', begun);
    saveState.value = 'saved';
    void showText(outcome.study, true, change);
    return true;
  }
  // The file is not what it was: what came to it is taken up first, then the edit is made on it.
  const theirs = changeBetween(base.text, outcome.study.text);
  void takeUp(outcome.study, change);
  if (!overTheirs && conflicts(changeBetween(base.text, edited.text), theirs)) {
    saveState.value = 'reloaded';
    ask(words, edits, []);
    return [];
  }
  return makeEdits(edits, overTheirs, begun, change);
}

function ask(words: string, edits: readonly Edit[], refused: readonly Problem[]): void {
  conflict.value = {
    words,
    refused,
    async keepMine() {
      conflict.value = null;
      const problems = await makeChange(edits, true);
      if (problems.length > 0) ask(words, edits, problems);
    },
    keepTheirs() {
      conflict.value = null;
    },
  };
}

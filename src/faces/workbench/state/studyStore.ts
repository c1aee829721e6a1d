/** The study on screen and in its file: loading, editing, undoing, and changes made elsewhere. */

import { batch, computed, signal } from '@preact/signals';
import type { Problem } from '../../../numerics/problem.ts';
import {
  emptyHistory,
  type History,
  recorded,
  type Stepped,
  steppedBack,
  steppedForth,
} from '../../../study/history.ts';
import type { StudyProblem } from '../../../study/model.ts';
import { changeBetween, conflicts } from '../../../study/textChange.ts';
import type { SolvedStudy } from '../../solved/solvedStudy.ts';
import type { Edit, OpenOutcome } from '../workshop/messages.ts';
import { editText, openText } from '../workshop/workshop.ts';
import { editWords, gestureOf } from './editWords.ts';
import { changeBegun, changeRefused, changeWritten, type Made, settleEstimates } from './estimates.ts';
import {
  onStudyChanged,
  readFirstAnswer,
  readStudyText,
  type StudyText,
  writeStudyText,
} from './studyLink.ts';

/** The text as the file has it. */
const file = signal<StudyText | null>(null);
export const studyName = computed(() => file.value?.name ?? '');

/** The last study that could be solved; stays on screen, greyed, while the text is broken. */
export const solved = signal<SolvedStudy | null>(null);

/** Faults of the text now in the file; empty when it is fine. */
export const faults = signal<readonly StudyProblem[]>([]);
/** Why nothing could be computed or the file cannot be reached; null when all is well. */
export const trouble = signal<Problem | null>(null);
/** The picture shows an earlier text than the file has. */
export const outdated = computed(() => faults.value.length > 0 || trouble.value !== null);

/** A newer text than the picture's is being worked out. */
export const solving = signal(false);

export type SaveState = 'saved' | 'saving' | 'reloaded' | 'failed';
export const saveState = signal<SaveState>('saved');

const history = signal<History>(emptyHistory);
/** What would be taken back, and what would be done again, in words; null where there is nothing. */
export const undoWords = computed(() => history.value.done.at(-1)?.words ?? null);
export const redoWords = computed(() => history.value.undone.at(-1)?.words ?? null);
/** What was taken back or done again just now, in words; null after anything else. */
export const steppedWords = signal<string | null>(null);

/** An edit that says something else than an edit made elsewhere at the same time and place. */
export interface Conflict {
  /** The edit made here, in words. */ readonly words: string;
  /** What kept it from being written on what stands there now; empty when nothing did. */
  readonly refused: readonly Problem[];
  readonly keepMine: () => Promise<void>;
  readonly keepTheirs: () => void;
}
export const conflict = signal<Conflict | null>(null);

let serial = 0;

/**
 * Solves a text and shows it, unless a later one has overtaken it; until then a first estimate of what it changes.
 *
 * @param isFile false: it is tried out, no file has it
 * @param change what brought it about, where an estimate of that is on screen already
 */
async function showText(
  text: StudyText,
  isFile = true,
  change: Made = changeBegun({ text: text.text }),
): Promise<void> {
  const mine = ++serial;
  changeWritten(change, mine);
  batch(() => {
    if (isFile) {
      file.value = text;
      tried.value = null;
    }
    solving.value = true;
  });
  const outcome = await openText(text.text).catch(asFailure);
  if (mine !== serial || outcome === null) return;
  batch(() => settle(mine, text.text, outcome));
}

function settle(mine: number, text: string, outcome: OpenOutcome): void {
  solving.value = false;
  if (outcome.ok) {
    solved.value = outcome.solved;
    faults.value = [];
    trouble.value = null;
  } else if (outcome.problems !== null) {
    faults.value = outcome.problems;
    trouble.value = null;
  } else {
    trouble.value = outcome.problem;
  }
  settleEstimates(mine, text, outcome.ok ? outcome.solved : null);
}

/** A fault of the program itself: reported, and said on the page, where the last picture stays. */
function asFailure(error: unknown): OpenOutcome {
  reportError(error);
  return {
    ok: false,
    problems: null,
    problem: {
      code: 'program-fault',
      what: 'The program failed while working out this study; the fault is its own.',
      mend: 'Take back the last change. The browser’s console says more.',
    },
  };
}

/** Loads the study and follows its file from then on. */
export async function openStudy(): Promise<void> {
  await inTurn(reload);
  onStudyChanged(() => void inTurn(reload));
}

async function reload(): Promise<void> {
  const outcome = await readStudyText();
  if (!outcome.ok) {
    trouble.value = outcome.problem;
    return;
  }
  const before = file.value;
  if (before?.hash === outcome.value.hash) {
    if (trouble.value !== null) await showText(outcome.value);
    return;
  }
  if (before === null) await showFirstAnswer(outcome.value);
  else saveState.value = 'reloaded';
  await takeUp(outcome.value);
}

/** What the server has worked out already stands on screen while the page's own worker opens the study. */
async function showFirstAnswer({ hash, text }: StudyText): Promise<void> {
  const first = await readFirstAnswer(hash);
  if (first === null) return;
  batch(() => {
    solving.value = true;
    solved.value = first;
    settleEstimates(serial, text, first);
  });
}

/** Shows a text that was written elsewhere; to come there is a step like any other. */
function takeUp(fresh: StudyText): Promise<void> {
  record(fresh.text, 'a change made elsewhere', null, 'elsewhere');
  return showText(fresh);
}

function record(
  after: string,
  words: string,
  gesture: string | null,
  by: 'here' | 'elsewhere',
  begun = performance.now(),
): void {
  const before = file.value?.text;
  if (before === undefined) return;
  steppedWords.value = null;
  const time = performance.now();
  history.value = recorded(history.value, { before, after, words, gesture, by, begun, time });
}

/** Edits follow one another: each is made on the text the one before left. */
let queue: Promise<unknown> = Promise.resolve();
function inTurn<Result>(task: () => Promise<Result>): Promise<Result> {
  const turn = queue.then(task);
  queue = turn.catch(() => undefined);
  return turn;
}

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
  const base = file.value;
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
  void takeUp(outcome.study);
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

/** What is tried out on the page and stands in no file; null: nothing. */
export const tried = signal<string | null>(null);

/** Shows the study with one value changed, and writes nothing. */
export function tryValue(path: string, value: string): Promise<readonly Problem[]> {
  return tryEdits([{ path, value }]);
}

/** The same of several values at once. */
export function tryEdits(edits: readonly Edit[]): Promise<readonly Problem[]> {
  const change = changeBegun({ edits });
  return inTurn(async () => {
    const base = file.value;
    const edited =
      base === null
        ? null
        : await editText(base.text, edits).catch((error: unknown) => {
            changeRefused(change);
            throw error;
          });
    if (base === null || edited === null || !edited.ok) {
      changeRefused(change);
      return edited === null || edited.ok ? [] : edited.problems;
    }
    tried.value = editWords(edits, solved.value?.study);
    await showText({ ...base, text: edited.text }, false, change);
    return [];
  });
}

/** Shows the study as it stands in its file again. */
export function endTrial(): Promise<void> {
  return inTurn(async () => {
    if (tried.value === null || file.value === null) return;
    tried.value = null;
    await showText(file.value);
  });
}

export function undo(): Promise<void> {
  return inTurn(() => step(steppedBack, 'Taken back'));
}
export function redo(): Promise<void> {
  return inTurn(() => step(steppedForth, 'Done again'));
}

async function step(take: (from: History, text: string) => Stepped | null, told: string): Promise<void> {
  const base = file.value;
  const next = base === null ? null : take(history.value, base.text);
  if (base === null || next === null) return;
  saveState.value = 'saving';
  const outcome = await writeStudyText(next.text, base.hash);
  if (outcome.kind === 'refused') {
    saveState.value = 'failed';
  } else if (outcome.kind === 'stale') {
    // What came meanwhile is the last step now, and would be the one to take back.
    saveState.value = 'reloaded';
    void takeUp(outcome.study);
  } else {
    history.value = next.history;
    steppedWords.value = `${told}: ${next.step.words}`;
    saveState.value = 'saved';
    void showText(outcome.study);
  }
}

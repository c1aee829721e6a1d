/** The study on screen and in its file: loading, editing, undoing, and changes made elsewhere. */

import { computed, signal } from '@preact/signals';
import type { Problem } from '../../../numerics/problem.ts';
import type { StudyProblem } from '../../../study/model.ts';
import type { Edit, OpenOutcome, SolvedStudy } from '../workshop/messages.ts';
import { editText, openText } from '../workshop/workshop.ts';
import { onStudyChanged, readStudyText, type StudyText, writeStudyText } from './studyLink.ts';

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

const earlier = signal<readonly string[]>([]);
const later = signal<readonly string[]>([]);
export const canUndo = computed(() => earlier.value.length > 0);
export const canRedo = computed(() => later.value.length > 0);
const longestHistory = 200;

let serial = 0;

/** Solves a text and shows it, unless a later one has overtaken it. */
async function showText(text: StudyText): Promise<void> {
  file.value = text;
  solving.value = true;
  const mine = ++serial;
  const outcome = await openText(text.text).catch(asFailure);
  if (mine !== serial) return;
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
  if (before !== null) {
    // Undoing across somebody else's edit would silently take it back.
    earlier.value = [];
    later.value = [];
    saveState.value = 'reloaded';
  }
  await showText(outcome.value);
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
  return inTurn(async () => {
    const base = file.value;
    if (base === null) return [];
    const edited = await editText(base.text, edits);
    if (!edited.ok) return edited.problems;
    if (edited.text === base.text) return [];
    const refused = await save(edited.text, base, async (fresh) => {
      const again = await editText(fresh.text, edits);
      return again.ok ? again.text : null;
    });
    if (refused !== null) return [refused];
    earlier.value = [...earlier.value, base.text].slice(-longestHistory);
    later.value = [];
    return [];
  });
}

export function undo(): Promise<void> {
  return step(earlier, later);
}
export function redo(): Promise<void> {
  return step(later, earlier);
}

function step(from: typeof earlier, to: typeof earlier): Promise<void> {
  return inTurn(async () => {
    const text = from.value.at(-1);
    const base = file.value;
    if (text === undefined || base === null) return;
    const refused = await save(text, base, async () => null);
    if (refused !== null) return;
    from.value = from.value.slice(0, -1);
    to.value = [...to.value, base.text];
  });
}

/**
 * Puts a text into the file and shows it. When the file was changed meanwhile, `remake` makes the text anew
 * on what is there now, or gives up with null.
 */
async function save(
  text: string,
  base: StudyText,
  remake: (fresh: StudyText) => Promise<string | null>,
): Promise<Problem | null> {
  saveState.value = 'saving';
  let outcome = await writeStudyText(text, base.hash);
  if (outcome.kind === 'stale') {
    const fresh = outcome.study;
    const again = await remake(fresh);
    if (again !== null) outcome = await writeStudyText(again, fresh.hash);
    else void showText(fresh);
  }
  if (outcome.kind === 'written') {
    void showText(outcome.study);
    saveState.value = 'saved';
    return null;
  }
  saveState.value = 'failed';
  return outcome.kind === 'refused'
    ? outcome.problem
    : {
        code: 'study-changed-meanwhile',
        what: 'The study file was changed by another program meanwhile.',
        mend: 'Its new content is shown now; make the change again.',
      };
}

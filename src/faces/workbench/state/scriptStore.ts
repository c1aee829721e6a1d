/** The script on screen and in its file: loading, writing, rendering with the study's numbers, changes made elsewhere. */

import { computed, effect, signal } from '@preact/signals';
import type { Problem } from '../../../numerics/problem.ts';
import { askDesk, QuestionEnded } from '../workshop/desk.ts';
import type { ScriptShown } from '../workshop/deskMessages.ts';
import {
  onStudyChanged,
  readScriptText,
  type ScriptText,
  type ScriptWrite,
  writeScriptNumbers,
  writeScriptText,
} from './studyLink.ts';
import { solved, solving } from './studyStore.ts';
import { checkedById, judgedById } from './verdicts.ts';
import { panel } from './view.ts';

/** As the file has it; null: not read yet. */
const file = signal<ScriptText | null>(null);
/** What is written in the page and not in the file yet; null: nothing. */
const draft = signal<string | null>(null);
/** Null where there is no script, or it is not read yet. */
export const scriptText = computed(() => draft.value ?? file.value?.text ?? null);
export const scriptIsRead = computed(() => file.value !== null);
/** The file holds something else than the page was written on; the two are asked about. */
export const scriptConflict = signal<ScriptText | null>(null);
export const scriptTrouble = signal<Problem | null>(null);
/** All that is written is in the file. */
export const scriptIsSaved = computed(() => draft.value === null || draft.value === file.value?.text);
/** Name of the cut shown; null: the whole. */
export const scriptCut = signal<string | null>(null);

/** The last that was rendered; of the text or study before while the newer one is worked out. */
export const scriptShown = signal<ScriptShown | null>(null);
export const scriptWorking = signal(false);

const [RENDER_AFTER, SAVE_AFTER] = [200, 900];
let saving: ReturnType<typeof setTimeout> | undefined;
let rendering: ReturnType<typeof setTimeout> | undefined;
let question: AbortController | null = null;

async function load(): Promise<void> {
  const outcome = await readScriptText();
  if (!outcome.ok) {
    scriptTrouble.value = outcome.problem;
    return;
  }
  const before = file.value;
  if (draft.value === outcome.value.text) draft.value = null;
  if (draft.value !== null && before !== null && before.hash !== outcome.value.hash) {
    scriptConflict.value = outcome.value;
    return;
  }
  scriptTrouble.value = null;
  if (before?.hash !== outcome.value.hash || before.record !== outcome.value.record)
    file.value = outcome.value;
}

export function writeScript(text: string): void {
  draft.value = text;
  clearTimeout(saving);
  saving = setTimeout(() => void saveScript(), SAVE_AFTER);
}

let isOnItsWay: Promise<void> | null = null;

/** Writes what is not in the file yet; one write at a time, for each is made on what the one before left. */
export function saveScript(): Promise<void> {
  isOnItsWay ??= writeDraft().finally(() => {
    isOnItsWay = null;
  });
  return isOnItsWay;
}

async function writeDraft(): Promise<void> {
  clearTimeout(saving);
  const text = draft.value;
  const base = file.value;
  if (text === null || base === null || scriptConflict.value !== null) return;
  take(text, await writeScriptText(text, base.hash));
}

function take(text: string, outcome: ScriptWrite): void {
  if (outcome.kind === 'refused') scriptTrouble.value = outcome.problem;
  else if (outcome.kind === 'stale' && outcome.script.text !== text) scriptConflict.value = outcome.script;
  else {
    scriptTrouble.value = null;
    file.value = outcome.script;
    // What was typed meanwhile is written next.
    if (draft.value === text) draft.value = null;
    else if (draft.value !== null) saving = setTimeout(() => void saveScript(), SAVE_AFTER);
  }
}

/** Ends the conflict: the page's own words over those of the file, or the file's instead. */
export async function settleScript(mine: boolean): Promise<void> {
  const theirs = scriptConflict.value;
  if (theirs === null) return;
  scriptConflict.value = null;
  file.value = theirs;
  if (mine) await saveScript();
  else draft.value = null;
}

/** Writes the numbers as they are now, so that later ones are held against them. */
export async function recordNumbers(): Promise<void> {
  const record = scriptShown.value?.record;
  if (record === undefined) return;
  const outcome = await writeScriptNumbers(record);
  if (outcome.kind === 'refused') scriptTrouble.value = outcome.problem;
  else if (file.value !== null) file.value = { ...file.value, record: outcome.script.record };
}

async function render(): Promise<void> {
  const text = scriptText.value;
  if (text === null) {
    scriptShown.value = null;
    return;
  }
  question?.abort();
  const mine = new AbortController();
  question = mine;
  scriptWorking.value = true;
  const judged = [...checkedById.value.values(), ...judgedById.value.values()];
  const asked = { text, judged, record: file.value?.record ?? null, cut: scriptCut.value };
  try {
    const outcome = await askDesk('script', asked, mine.signal);
    if (question !== mine) return;
    if (outcome.ok) {
      scriptShown.value = outcome.value;
      scriptTrouble.value = null;
    } else scriptTrouble.value = outcome.problem;
  } catch (error) {
    if (!(error instanceof QuestionEnded)) reportError(error);
  } finally {
    if (question === mine) scriptWorking.value = false;
  }
}

/** Follows the file, and renders while the script is looked at. */
export function followScript(): void {
  let isFollowed = false;
  effect(() => {
    if (panel.value !== 'script' || isFollowed) return;
    isFollowed = true;
    void load();
    onStudyChanged(() => void load());
  });
  effect(() => {
    const there = panel.value === 'script' && solved.value !== null && !solving.value;
    // Each of these asks for a new rendering.
    void [scriptText.value, file.value?.record, scriptCut.value, checkedById.value, judgedById.value];
    clearTimeout(rendering);
    if (there) rendering = setTimeout(() => void render(), RENDER_AFTER);
  });
  addEventListener('pagehide', () => void saveScript());
}

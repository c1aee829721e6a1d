/** What is found about the sentences: checked anew after each edit, with what the edit changed. */

import { computed, effect, signal } from '@preact/signals';
import type { CheckedAnalogy } from '../../../answer/analogies/model.ts';
import { type ChangedVerdict, changedVerdicts } from '../../../answer/sentences/changedVerdicts.ts';
import type { CheckedSentence } from '../../../answer/sentences/model.ts';
import type { Outcome, Problem } from '../../../numerics/problem.ts';
import { beginCheck, type CheckReport, endCheck } from '../workshop/desk.ts';
import type { CheckStage } from '../workshop/deskMessages.ts';
import { catchingUp } from './estimates.ts';
import { besideInputs, type JudgedAnalogy, stillJudged } from './judgedAnalogies.ts';
import { showsVerdicts } from './liveRoute.ts';
import { outdated, solved, solving } from './studyStore.ts';

/** The last that was found; of the study before while the one on screen is looked at. */
const found = signal<readonly CheckedSentence[]>([]);
/** How far the check of the study on screen has come; null: nothing is known of it yet. */
export const checkStage = signal<CheckStage | null>(null);
/** Why it came to no end. */
export const checkProblem = signal<Problem | null>(null);
/** Points done of the check. */
export const checkProgress = signal<{ readonly done: number; readonly of: number } | null>(null);
/** Changed by the last edit that changed any, by id; forgotten after a while. */
export const verdictChanges = signal<ReadonlyMap<string, ChangedVerdict>>(new Map());

/** How long a change stays told [ms]. */
const toldFor = 60_000;

/** The last complete check, to tell changes from. */
let before: readonly CheckedSentence[] | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;

/** What is known of each sentence whose words and test are still these, by id. */
export const checkedById = computed<ReadonlyMap<string, CheckedSentence>>(() => {
  const now = new Map(solved.value?.study.sentences.map((sentence) => [sentence.id, sentence]));
  const fitting = found.value.filter(({ id, say, holds }) => {
    const sentence = now.get(id);
    return sentence !== undefined && sentence.say === say && sentence.holds === holds;
  });
  return new Map(fitting.map((sentence) => [sentence.id, sentence]));
});

/** The last that was found about the analogies, each beside the analogy it was found about. */
const foundAnalogies = signal<readonly JudgedAnalogy[]>([]);
/** The analogies of the study on screen have been judged. */
export const analogiesJudged = signal(false);
/** Why they came to no verdict. */
export const analogiesProblem = signal<Problem | null>(null);

/** What is known of each analogy that is still as it was judged, by id. */
export const judgedById = computed<ReadonlyMap<string, CheckedAnalogy>>(() =>
  stillJudged(foundAnalogies.value, solved.value?.study.analogies ?? []),
);

function hearAnalogies(told: Outcome<readonly CheckedAnalogy[]>): void {
  analogiesJudged.value = true;
  if (told.ok) foundAnalogies.value = besideInputs(told.value, solved.value?.study.analogies ?? []);
  else analogiesProblem.value = told.problem;
}

/** Verdicts on screen are not the last word. */
export const checking = computed(
  () =>
    solving.value ||
    catchingUp.value ||
    (!outdated.value &&
      checkProblem.value === null &&
      checkStage.value !== 'final' &&
      checkStage.value !== 'decided'),
);

function hear(report: CheckReport): void {
  if (report.kind === 'progress') {
    checkProgress.value = { done: report.done, of: report.of };
  } else if (report.kind === 'problem') {
    checkProblem.value = report.problem;
  } else if (report.kind === 'analogies') {
    hearAnalogies(report.told);
  } else {
    found.value = report.sentences;
    checkStage.value = report.stage;
    if (report.stage !== 'first look') settle(report.sentences);
  }
}

/** Tells what has changed since the last complete check. */
function settle(sentences: readonly CheckedSentence[]): void {
  const changes = before === null ? [] : changedVerdicts(before, sentences);
  before = sentences;
  if (changes.length === 0) return;
  verdictChanges.value = new Map(changes.map((change) => [change.id, change]));
  clearTimeout(timer);
  timer = setTimeout(() => {
    verdictChanges.value = new Map();
  }, toldFor);
}

/** Follows the study on screen; a newer text ends the check of the older at once. */
export function followVerdicts(): void {
  effect(() => {
    if (solving.value || catchingUp.value) endCheck();
  });
  effect(() => {
    const study = solved.value?.study;
    // A study that is about to be another is not looked at.
    if (study === undefined || catchingUp.value || solved.value?.isWhole === false) return;
    checkStage.value = null;
    checkProblem.value = null;
    checkProgress.value = null;
    analogiesJudged.value = false;
    analogiesProblem.value = null;
    // While one number fills the screen nobody sees the verdicts, and its span is wanted soon.
    beginCheck(study, showsVerdicts.value, hear);
  });
}

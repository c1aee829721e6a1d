/** The study on screen and how it stands to its file. Others change it: texts come by studyShown, from the file by studyFile, from the hand by studyEdits. */

import { computed, signal } from '@preact/signals';
import type { Problem } from '../../../numerics/problem.ts';
import type { StudyProblem } from '../../../study/model.ts';
import type { SolvedStudy } from '../../solved/solvedStudy.ts';
import type { StudyText } from './studyLink.ts';

/** The text as the file has it. */
export const studyText = signal<StudyText | null>(null);
export const studyName = computed(() => studyText.value?.name ?? '');

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

/** What is tried out on the page and stands in no file, in words; null: nothing. */
export const tried = signal<string | null>(null);

/** What is being written into one input and is not in the study yet. */

import { useEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from '../../../numerics/problem.ts';
import { endDraft, estimateDraft } from '../state/estimates.ts';
import { type InputRow, steppedText } from '../state/inputRows.ts';
import { endSlide, letGo, slide } from '../state/slide.ts';
import { commitEdits } from '../state/studyEdits.ts';
import { solved, tried } from '../state/studyStore.ts';
import type { ValueEdit } from '../workshop/messages.ts';

/** Arrow keys gather this long before the file is written [ms]. */
const STEP_PAUSE = 350;

export interface FieldDraft {
  readonly shown: string;
  readonly isChanged: boolean;
  write(text: string): void;
  /** Writes what is shown into the study. */ commit(text?: string): void;
  takeBack(): void;
  /** One step of the last digit. */ step(direction: 1 | -1, isLarge: boolean): void;
  /** A slider under a hand: shown, and not written before it lets go. */ slideTo(text: string): void;
  /** One of several values that follow each other: estimated at once, and written when no more of them come. */
  stepTo(text: string): void;
}

/**
 * @param editsOf what writing a text means: one edit, or several where inputs are locked together
 * @param onRefusal told what kept the value from being written; null when nothing did
 */
export function useFieldDraft(
  row: InputRow,
  editsOf: (text: string) => readonly ValueEdit[],
  onRefusal: (words: string | null) => void,
): FieldDraft {
  const [draft, setDraft] = useState<string | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const isSliding = useRef(false);
  const isRefused = useRef(false);
  const shown = draft ?? row.text;

  // A new text in the study takes the place of the draft it was made of; another draft stays, and is told of it.
  const sent = useRef<readonly string[]>([]);
  const known = useRef(row.text);
  const now = useRef(row.text);
  now.current = row.text;
  useEffect(() => {
    const isNews = known.current !== row.text;
    known.current = row.text;
    const mine = sent.current.indexOf(row.text.trim());
    sent.current = sent.current.slice(mine + 1);
    // What is shown of a move that goes on is no news, nor is what comes back after a refusal.
    if (isSliding.current || isRefused.current || tried.peek() !== null) return;
    if (isNews && draft !== null && draft.trim() !== row.text.trim()) {
      // An own edit has come through, and the next is on its way; or somebody else’s crosses one that is being made.
      if (mine < 0 && sent.current.length === 0)
        onRefusal(`This became ${row.text} meanwhile. Enter writes what stands here, Escape takes it back.`);
      return;
    }
    setDraft(null);
    if (draft !== null) endDraft();
    onRefusal(null);
  }, [row.text, row.path]);
  // Written, and taken back or overwritten before its answer came: that answer never comes.
  const written = useRef<string | null>(null);
  const answered = solved.value;
  useEffect(() => {
    const was = written.current;
    written.current = null;
    if (was === null || now.current.trim() === was) return;
    sent.current = sent.current.filter((one) => one !== was);
    setDraft((one) => (one?.trim() === was ? null : one));
  }, [answered]);
  const isDrafting = useRef(false);
  isDrafting.current = draft !== null;
  useEffect(
    () => () => {
      clearPause();
      if (isDrafting.current) endDraft();
    },
    [],
  );

  function clearPause(): void {
    if (timer.current !== null) clearTimeout(timer.current);
    timer.current = null;
  }
  function takeBack(): void {
    clearPause();
    isRefused.current = false;
    setDraft(null);
    onRefusal(null);
    if (isSliding.current) endSlide().catch(reportError);
    else endDraft();
    isSliding.current = false;
  }
  function commit(text = shown): void {
    clearPause();
    const trimmed = text.trim();
    const isTried = isSliding.current || tried.peek() !== null;
    if (!isTried && trimmed === row.text.trim() && sent.current.length === 0) {
      takeBack();
      return;
    }
    // Enter, and then leaving the field.
    if (sent.current.at(-1) === trimmed) {
      endDraft();
      return;
    }
    isSliding.current = false;
    isRefused.current = false;
    letGo();
    sent.current = [...sent.current, trimmed];
    commitEdits(editsOf(trimmed)).then((problems) => settle(trimmed, problems), reportError);
  }
  function settle(text: string, problems: readonly Problem[]): void {
    onRefusal(problems.length === 0 ? null : problems.map(wordsOf).join(' '));
    isRefused.current = problems.length > 0;
    // A slider has shown it before it was written: nothing new comes to take the draft's place.
    if (problems.length === 0 && now.current.trim() !== text) {
      written.current = text;
      return;
    }
    sent.current = sent.current.filter((one) => one !== text);
    if (problems.length > 0) endSlide().catch(reportError);
    else setDraft((one) => (one?.trim() === text ? null : one));
  }
  function stepTo(text: string): void {
    clearPause();
    setDraft(text);
    estimateDraft(editsOf(text));
    timer.current = setTimeout(() => commit(text), STEP_PAUSE);
  }
  return {
    shown,
    isChanged: draft !== null,
    write(text) {
      clearPause();
      isRefused.current = false;
      setDraft(text);
      estimateDraft(editsOf(text));
    },
    commit,
    takeBack,
    step(direction, isLarge) {
      const next = steppedText(shown, direction, isLarge);
      if (next !== null) stepTo(next);
    },
    slideTo(text) {
      clearPause();
      isSliding.current = true;
      setDraft(text);
      slide(editsOf(text));
    },
    stepTo,
  };
}

const wordsOf = ({ what, mend }: Problem): string => `${what} ${mend}`;

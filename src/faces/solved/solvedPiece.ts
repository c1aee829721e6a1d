/** A solved study on its way to the page, piece by piece, and what it is so far. */

import { CAUTION } from '../../answer/caution.ts';
import type { EngineAnswer, EnginesAnswer } from '../../answer/model.ts';
import type { Problem } from '../../numerics/problem.ts';
import type { Study, StudyProblem } from '../../study/model.ts';
import type { Ladder } from './ladder.ts';
import type { Flights, SolvedStudy } from './solvedStudy.ts';

/** What is said of all engines together. */
export type AnswerHead = Omit<EnginesAnswer, 'engines' | 'failed'>;

export type SolvedPiece =
  /** The first one. */
  | { readonly kind: 'study'; readonly study: Study; readonly warnings: readonly StudyProblem[] }
  /** An engine; it may come twice: first without most of its rows and jets. */
  | {
      readonly kind: 'engine';
      readonly id: string;
      readonly answer: EngineAnswer;
      readonly ladder: Ladder;
    }
  | { readonly kind: 'failed'; readonly id: string; readonly problem: Problem }
  | ({ readonly kind: 'compared' } & Pick<EnginesAnswer, 'comparison' | 'shortAnswer'>)
  /** The last one; flights may still follow. */
  | { readonly kind: 'whole'; readonly head: AnswerHead; readonly vehicles: Flights | null };

/** Nothing of it is worked out; what was on screen before stays until then. */
export function begunStudy(
  study: Study,
  warnings: readonly StudyProblem[],
  before: SolvedStudy | null,
): SolvedStudy {
  const ids = study.engines.map(({ id }) => id);
  const { engines, failed, ...head } = before?.answer ?? NOTHING_YET;
  return {
    study,
    warnings,
    answer: {
      ...head,
      question: study.question,
      engines: only(ids, engines),
      failed: only(ids, failed),
    },
    vehicles: null,
    ladders: only(ids, before?.ladders ?? {}),
    awaited: ids,
    isWhole: false,
  };
}

const NOTHING_YET: EnginesAnswer = {
  format: 'plumeline answer 1',
  program: { name: 'plumeline', version: 'unknown' },
  caution: CAUTION,
  question: '',
  engines: {},
  failed: {},
  shortAnswer: { verdict: '', text: '' },
  comparison: null,
  notModelled: [],
  hazards: [],
};

/** With one piece more; engines stand in the order of the study. */
export function withPiece(now: SolvedStudy, piece: Exclude<SolvedPiece, { kind: 'study' }>): SolvedStudy {
  const { answer, study } = now;
  const ids = study.engines.map(({ id }) => id);
  switch (piece.kind) {
    case 'engine': {
      const { id } = piece;
      return {
        ...now,
        answer: {
          ...answer,
          engines: only(ids, { ...answer.engines, [id]: piece.answer }),
          failed: without(answer.failed, id),
        },
        ladders: only(ids, { ...now.ladders, [id]: piece.ladder }),
        awaited: now.awaited.filter((each) => each !== id),
      };
    }
    case 'failed': {
      const { id, problem } = piece;
      return {
        ...now,
        answer: {
          ...answer,
          engines: without(answer.engines, id),
          failed: { ...answer.failed, [id]: problem },
        },
        ladders: without(now.ladders, id),
        awaited: now.awaited.filter((each) => each !== id),
      };
    }
    case 'compared': {
      const { comparison, shortAnswer } = piece;
      return { ...now, answer: { ...answer, comparison, shortAnswer } };
    }
    case 'whole':
      return { ...now, answer: { ...answer, ...piece.head }, vehicles: piece.vehicles, isWhole: true };
  }
}

/** A study of pieces that have all come; null where they are none, or not all. */
export function studyOfPieces(pieces: readonly SolvedPiece[]): SolvedStudy | null {
  let solved: SolvedStudy | null = null;
  for (const piece of pieces) {
    if (piece.kind === 'study') solved = begunStudy(piece.study, piece.warnings, null);
    else if (solved !== null) solved = withPiece(solved, piece);
  }
  return solved?.isWhole === true ? solved : null;
}

function only<Value>(ids: readonly string[], from: Readonly<Record<string, Value>>): Record<string, Value> {
  return Object.fromEntries(
    ids.flatMap((id) => {
      const value = from[id];
      return value === undefined ? [] : [[id, value] as const];
    }),
  );
}

function without<Value>(from: Readonly<Record<string, Value>>, id: string): Record<string, Value> {
  const { [id]: _, ...rest } = from;
  return rest;
}

/** A text of the study on its way to the screen: worked out, unless a later one overtakes it. */

import { batch } from '@preact/signals';
import { begunStudy, type SolvedPiece, withPiece } from '../../solved/solvedPiece.ts';
import type { Flights, SolvedStudy } from '../../solved/solvedStudy.ts';
import { firstPieces, readFirstFlights } from '../firstAnswer.ts';
import type { OpenOutcome } from '../workshop/messages.ts';
import { nextTask } from '../workshop/nextTask.ts';
import { adoptAnswer, type Opened, openText } from '../workshop/workshop.ts';
import {
  changeBegun,
  changeWritten,
  lastAnswered,
  type Made,
  pieceShown,
  settleEstimates,
} from './estimates.ts';
import { flightsCome } from './flights.ts';
import { shownEngines } from './pair.ts';
import type { StudyText } from './studyLink.ts';
import { faults, solved, solving, studyText, tried, trouble } from './studyStore.ts';

let serial = 0;

/**
 * Solves a text and shows it, unless a later one has overtaken it; until then a first estimate of what it changes.
 *
 * @param isFile false: it is tried out, no file has it
 * @param change what brought it about, where an estimate of that is on screen already
 */
export async function showText(
  text: StudyText,
  isFile = true,
  change: Made = changeBegun({ text: text.text }),
): Promise<void> {
  const mine = ++serial;
  changeWritten(change, mine);
  batch(() => {
    if (isFile) {
      studyText.value = text;
      tried.value = null;
    }
    solving.value = true;
  });
  const pieces = piecesShown(mine, lastAnswered());
  const opened = await openText(text.text, pieces.take).catch(asFailure);
  await pieces.shown();
  await nextTask();
  if (mine !== serial || opened === null) return;
  const { outcome, flights } = opened;
  batch(() => {
    if (outcome.ok) solved.value = pieces.soFar();
    settle(mine, text.text, outcome);
  });
  const now = solved.value;
  if (outcome.ok && now !== null && now.vehicles === null) awaitFlights(mine, now, flights);
}

/**
 * Pieces on their way to the screen, each laid over what was answered before. One that begins a study is shown with the next; to take
 * a piece in and to draw it are two pieces of work, so that neither holds the page for long.
 */
function piecesShown(
  mine: number,
  before: SolvedStudy | null,
): {
  readonly take: (piece: SolvedPiece) => void;
  readonly shown: () => Promise<void>;
  readonly soFar: () => SolvedStudy | null;
} {
  let study: SolvedStudy | null = null;
  let turn: Promise<void> = Promise.resolve();
  return {
    take(piece) {
      if (piece.kind === 'study') study = begunStudy(piece.study, piece.warnings, before);
      else if (study !== null) study = withPiece(study, piece);
      if (study === null || comesWithNext(piece, before)) return;
      const now = study;
      turn = turn.then(async () => {
        await nextTask();
        if (mine !== serial) return;
        pieceShown(mine);
        solved.value = now;
      });
    },
    shown: () => turn,
    soFar: () => study,
  };
}

/** What is not in sight, and the last piece; over a picture that is there also the study alone, and the comparison, which is told again with the last piece. */
function comesWithNext(piece: SolvedPiece, before: SolvedStudy | null): boolean {
  // The last one is shown by who settles what hangs on it.
  if (piece.kind === 'whole') return true;
  if (piece.kind === 'engine') return !shownEngines.value.some(({ id }) => id === piece.id);
  return before !== null && (piece.kind === 'study' || piece.kind === 'compared');
}

/** They come when they come; nothing else waits for them. */
function awaitFlights(mine: number, of: SolvedStudy, coming: Promise<Flights | null>): void {
  coming.then(
    (told) => {
      if (told !== null) flightsCome(of, told);
    },
    (error: unknown) => {
      const failure = asFailure(error);
      if (mine === serial) settle(mine, '', failure.outcome);
    },
  );
}

function settle(mine: number, text: string, outcome: OpenOutcome): void {
  solving.value = false;
  // Half a study is no picture to go on with.
  if (!outcome.ok && solved.value?.isWhole === false) solved.value = lastAnswered();
  if (outcome.ok) {
    faults.value = [];
    trouble.value = null;
  } else if (outcome.problems !== null) {
    faults.value = outcome.problems;
    trouble.value = null;
  } else {
    trouble.value = outcome.problem;
  }
  settleEstimates(mine, text, outcome.ok ? solved.value : null);
}

/** A fault of the program itself: reported, and said on the page, where the last picture stays. */
function asFailure(error: unknown): Opened {
  reportError(error);
  const problem = {
    code: 'program-fault',
    what: 'The program failed while working out this study; the fault is its own.',
    mend: 'Take back the last change. The browser’s console says more.',
  };
  return { outcome: { ok: false, problems: null, problem }, flights: Promise.resolve(null) };
}

/**
 * Shows what the server has worked out of the text; the page's own worker is told of it and works it out when it has to.
 *
 * @returns whether there is such an answer
 */
export async function showFirstAnswer(text: StudyText, signal: AbortSignal): Promise<boolean> {
  const mine = ++serial;
  const { hash } = text;
  const pieces = piecesShown(mine, null);
  try {
    for await (const piece of firstPieces(hash, signal)) {
      if (mine !== serial) return false;
      batch(() => {
        studyText.value = text;
        solving.value = true;
        pieces.take(piece);
      });
      await pieces.shown();
      // The stream itself stays open until the server is at the end of its work.
      if (piece.kind === 'whole') break;
    }
  } catch (error) {
    // A stream that breaks off is no fault of the page: it works the rest out by itself.
    if (!signal.aborted && !(error instanceof TypeError)) reportError(error);
  }
  await nextTask();
  const first = pieces.soFar();
  if (mine !== serial || first?.isWhole !== true) return false;
  adoptAnswer({ text: text.text, hash, vehicles: first.vehicles }, first);
  batch(() => {
    solved.value = first;
    settle(mine, text.text, { ok: true });
  });
  if (first.vehicles !== null) return true;
  const told = readFirstFlights(hash).then((vehicles) => {
    if (vehicles !== null) adoptAnswer({ text: text.text, hash, vehicles }, first);
    // Where the server has none after all, the page flies them, unless there is a later text by now.
    return vehicles ?? (mine === serial ? flownHere(text.text) : null);
  });
  awaitFlights(mine, first, told);
  return true;
}

async function flownHere(text: string): Promise<Flights | null> {
  let come: Flights | null = null;
  const opened = await openText(text, (piece) => {
    if (piece.kind === 'whole') come = piece.vehicles;
  });
  if (opened === null || !opened.outcome.ok) return null;
  return come ?? opened.flights;
}

/** A text of the study on its way to the screen: worked out, unless a later one overtakes it. */

import { batch } from '@preact/signals';
import type { Flights, SolvedStudy } from '../../solved/solvedStudy.ts';
import { readFirstAnswer, readFirstFlights } from '../firstAnswer.ts';
import type { OpenOutcome } from '../workshop/messages.ts';
import { adoptAnswer, type Opened, openText } from '../workshop/workshop.ts';
import { changeBegun, changeWritten, type Made, settleEstimates } from './estimates.ts';
import { flightsCome } from './flights.ts';
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
  const opened = await openText(text.text).catch(asFailure);
  if (mine !== serial || opened === null) return;
  const { outcome, flights } = opened;
  batch(() => settle(mine, text.text, outcome));
  if (outcome.ok && outcome.solved.vehicles === null) awaitFlights(mine, outcome.solved, flights);
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
  const first = await readFirstAnswer(hash, signal);
  if (mine !== serial || first === null) return false;
  adoptAnswer({ text: text.text, hash, vehicles: first.vehicles });
  batch(() => {
    studyText.value = text;
    settle(mine, text.text, { ok: true, solved: first });
  });
  if (first.vehicles !== null) return true;
  const told = readFirstFlights(hash).then((vehicles) => {
    if (vehicles !== null) adoptAnswer({ text: text.text, hash, vehicles });
    // Where the server has none after all, the page flies them, unless there is a later text by now.
    return vehicles ?? (mine === serial ? flownHere(text.text) : null);
  });
  awaitFlights(mine, first, told);
  return true;
}

async function flownHere(text: string): Promise<Flights | null> {
  const opened = await openText(text);
  if (opened === null || !opened.outcome.ok) return null;
  return opened.outcome.solved.vehicles ?? opened.flights;
}

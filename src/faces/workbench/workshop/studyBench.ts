/** The study that the worker has in hand: opened by itself, or taken over from the server and solved when its engines are needed. */

import type { EngineAnswer } from '../../../answer/model.ts';
import type { SolvedBefore } from '../../../answer/reuse.ts';
import type { DataShelf } from '../../../answer/shelf.ts';
import type { EngineSolution } from '../../../answer/solution.ts';
import { type SolvedEngines, solveStudyLive, wantedOf } from '../../../answer/solve.ts';
import { type ReadOptions, readStudy } from '../../../study/read.ts';
import type { Ladder } from '../../solved/ladder.ts';
import { ladderMaker } from '../../solved/ladderMaker.ts';
import type { Flights } from '../../solved/solvedStudy.ts';
import { readFirstAnswer } from '../firstAnswer.ts';
import type { Adopted, OpenOutcome, OpenPiece } from './messages.ts';
import { nextTask } from './nextTask.ts';

/** A study that a later one has overtaken. */
export class GivenUp extends Error {}

type Flown = SolvedBefore & { readonly vehicles: Flights };

export interface OpenTold {
  piece(piece: OpenPiece): void;
  /** After the last piece, or where there is none. */
  outcome(outcome: OpenOutcome, isMoreToCome: boolean): void;
}

export interface StudyBench {
  /** The study on screen is the server's answer. */ adopt(from: Adopted): void;
  /**
   * Reads and solves a study text: tells its engines first, one by one.
   *
   * @returns its flights, where they did not come with the engines @throws GivenUp
   */
  open(number: number, text: string, tell: OpenTold): Promise<Flights | null>;
  /** The study in hand with its engines; null where there is none. */ solved(): Promise<SolvedBefore | null>;
  /** The same with what they lift. */ flown(): Promise<Flown | null>;
}

export function studyBench(shelf: DataShelf, readOptions: () => Promise<ReadOptions>): StudyBench {
  /** The study opened last, with its engines as solved. */
  let opened: SolvedBefore | null = null;
  /** Instead of one: the study on screen as the server has answered it, without engines that could be asked. */
  let adopted: Adopted | null = null;
  let adoptedAnswer: Promise<SolvedBefore | null> | null = null;
  /** Number of the study asked for last: an older one is given up. */
  let wanted = 0;
  /** Ends when the flights of the study opened last are flown, or given up. */
  let flying: Promise<unknown> = Promise.resolve();
  let reviving: Promise<SolvedBefore | null> | null = null;
  /** Ends when the engines of the study asked for last are told, or it has come to nothing. */
  let opening: Promise<void> = Promise.resolve();
  /** What the page has of each engine: what it was told last. */
  const told = new Map<string, EngineAnswer>();

  /** Lets the messages in that came meanwhile. @throws where a later study is wanted */
  async function pause(number: number): Promise<void> {
    await nextTask();
    if (number !== wanted) throw new GivenUp();
  }

  async function answerOf({ hash, vehicles }: Adopted): Promise<SolvedBefore | null> {
    const first = await readFirstAnswer(hash);
    if (first === null) return null;
    const { study, answer, ladders } = first;
    for (const [id, ladder] of Object.entries(ladders)) {
      const engine = answer.engines[id];
      if (engine === undefined) continue;
      knownLadders.set(engine, ladder);
      // The page has them from the server.
      if (!told.has(id)) told.set(id, engine);
    }
    return {
      study,
      answer,
      wanted: wantedOf(study),
      solutions: new Map(),
      vehicles: vehicles ?? first.vehicles,
    };
  }

  async function fromBefore(): Promise<SolvedBefore | null> {
    if (opened !== null || adopted === null) return opened;
    adoptedAnswer ??= answerOf(adopted).catch((error: unknown) => {
      adoptedAnswer = null;
      throw error;
    });
    return adoptedAnswer;
  }

  async function openNow(number: number, text: string, tell: OpenTold): Promise<Flights | null> {
    wanted = number;
    const outcome = readStudy(text, await readOptions());
    if (!outcome.ok) {
      tell.outcome({ ok: false, problems: outcome.problems }, false);
      return null;
    }
    const before = await fromBefore();
    const { study, warnings } = outcome;
    tell.piece({ kind: 'study', study, warnings });
    const tellWhole = (
      { answer, solutions, wanted: asked }: SolvedEngines,
      vehicles: Flights | null,
    ): void => {
      const { engines: _, failed: __, ...head } = answer;
      opened = { study, answer, solutions, wanted: asked, vehicles };
      tell.piece({ kind: 'whole', head, vehicles });
      tell.outcome({ ok: true }, vehicles === null);
    };
    let areTold = false;
    const { answer, ...live } = await solveStudyLive(study, shelf, {
      pause: () => pause(number),
      ...(before && { before }),
      async onPiece(piece) {
        if (piece.kind !== 'engine') return tell.piece(piece);
        const { id, answer: engine, solution } = piece;
        const ladder = await ladderOf(engine, solution, () => pause(number));
        if (told.get(id) === engine) return tell.piece({ kind: 'same', id });
        told.set(id, engine);
        tell.piece({ kind: 'engine', id, answer: engine, ladder });
      },
      onEngines(engines) {
        areTold = true;
        tellWhole(engines, null);
      },
    });
    const { vehicles, ...engines } = answer;
    if (!areTold) tellWhole({ answer: engines, ...live }, vehicles);
    else if (number === wanted) opened = { study, answer: engines, ...live, vehicles };
    return areTold ? vehicles : null;
  }

  /**
   * What is asked meanwhile, above all an edit on its way into the file, does not wait for the whole of a study that is revived.
   *
   * @throws GivenUp where another has been opened
   */
  async function givingWay(): Promise<void> {
    await nextTask();
    for (let last: unknown = null; last !== opening; ) {
      last = opening;
      await last;
    }
    if (opened !== null) throw new GivenUp();
  }

  /** Solves the engines of the study that was taken over; all that is told of them is known already. */
  async function revived(): Promise<SolvedBefore | null> {
    if (adopted === null) return null;
    const before = await fromBefore();
    const read = readStudy(adopted.text, await readOptions());
    if (!read.ok) return null;
    const { answer, ...live } = await solveStudyLive(read.study, shelf, {
      pause: givingWay,
      ...(before && { before }),
    });
    const { vehicles, ...engines } = answer;
    // One that was opened meanwhile is the newer.
    opened ??= { study: read.study, answer: engines, ...live, vehicles };
    return opened;
  }

  async function solved(): Promise<SolvedBefore | null> {
    if (opened !== null) return opened;
    // Once it is solved it is the opened one; what came to nothing is tried again.
    reviving ??= revived()
      .catch((error: unknown) => {
        if (error instanceof GivenUp) return opened;
        throw error;
      })
      .finally(() => {
        reviving = null;
      });
    return reviving;
  }

  async function flown(): Promise<Flown | null> {
    await solved();
    for (let last: unknown = null; last !== flying; ) {
      last = flying;
      await last;
    }
    return opened === null || opened.vehicles === null ? null : { ...opened, vehicles: opened.vehicles };
  }

  return {
    adopt(from) {
      adopted = from;
      adoptedAnswer = null;
    },
    open(number, text, tell) {
      let come: () => void = () => undefined;
      opening = new Promise((resolve) => {
        come = resolve;
      });
      const work = openNow(number, text, {
        piece: (piece) => tell.piece(piece),
        outcome(...outcome) {
          tell.outcome(...outcome);
          come();
        },
      }).finally(come);
      flying = work.catch(() => undefined);
      return work;
    },
    solved,
    flown,
  };
}

/** An answer does not change: the rows of its engine are kept. */
const knownLadders = new WeakMap<EngineAnswer, Ladder>();

async function ladderOf(
  engine: EngineAnswer,
  solution: EngineSolution,
  rest: () => Promise<void>,
): Promise<Ladder> {
  const known = knownLadders.get(engine);
  if (known !== undefined) return known;
  const ladder = await ladderMaker(solution, rest).whole();
  knownLadders.set(engine, ladder);
  return ladder;
}

/** A study text solved for the page that opens it: engines first, for they are what is looked at, then what they lift. */

import type { DataShelf } from '../../answer/shelf.ts';
import { type SolvedEngines, solveStudyLive } from '../../answer/solve.ts';
import { knownNames } from '../../study/names.ts';
import { readStudy } from '../../study/read.ts';
import { type LadderMaker, ladderMaker } from './ladderMaker.ts';
import { writtenPiece } from './solvedBlock.ts';
import type { SolvedPiece } from './solvedPiece.ts';
import type { Flights } from './solvedStudy.ts';

type Block = Uint8Array<ArrayBuffer>;

/** What comes one after the other: the study and its engines as blocks of bytes, then its vehicles where they were not known by then. */
export interface FirstPieces {
  piece(block: Block): void;
  flights(flights: Flights): void;
}

/**
 * @param pause waited for between pieces of the work
 * @returns all of it as one block, to be kept; null where the text is no study, which the page itself then says
 */
export async function solveFirst(
  text: string,
  shelf: DataShelf,
  tell: FirstPieces,
  pause?: () => Promise<void>,
): Promise<(() => Block) | null> {
  const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
  if (!outcome.ok) return null;
  const { study, warnings } = outcome;
  const tellPiece = (piece: SolvedPiece): Block => {
    const block = writtenPiece(piece);
    // Handed on it is no more in hand.
    tell.piece(block.slice());
    return block;
  };
  const kept: Block[] = [tellPiece({ kind: 'study', study, warnings })];
  const makers = new Map<string, LadderMaker>();
  const tellWhole = (
    { answer: { engines: _, failed: __, ...head } }: SolvedEngines,
    vehicles: Flights | null,
  ) => tellPiece({ kind: 'whole', head, vehicles });
  let last: Block | null = null;
  const { answer, ...live } = await solveStudyLive(study, shelf, {
    jetsLater: true,
    ...(pause && { pause }),
    async onPiece(piece) {
      if (piece.kind !== 'engine') {
        const block = tellPiece(piece);
        if (piece.kind === 'failed') kept.push(block);
        return;
      }
      const { id, answer: engine, solution, isWhole } = piece;
      const maker = makers.get(id) ?? ladderMaker(solution, pause);
      makers.set(id, maker);
      const ladder = isWhole ? await maker.whole() : await maker.coarse();
      const block = tellPiece({ kind: 'engine', id, answer: engine, ladder });
      if (isWhole) kept.push(block);
    },
    onEngines(engines) {
      last = tellWhole(engines, null);
    },
  });
  const { vehicles, ...engines } = answer;
  if (last === null) kept.push(tellWhole({ answer: engines, ...live }, vehicles));
  else {
    tell.flights(vehicles);
    const { engines: _, failed: __, ...head } = engines;
    kept.push(writtenPiece({ kind: 'whole', head, vehicles }));
  }
  return () => joined(kept);
}

function joined(blocks: readonly Block[]): Block {
  const whole = new Uint8Array(blocks.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const block of blocks) {
    whole.set(block, at);
    at += block.length;
  }
  return whole;
}

/** The first answer of the page: what the server writes, and the page reads again. */

import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { altitudeCurve } from '../../../src/answer/conditions.ts';
import { solveStudyLive } from '../../../src/answer/solve.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { openedRow } from '../../../src/faces/solved/packedRows.ts';
import { piecesFrom } from '../../../src/faces/solved/solvedBlock.ts';
import {
  begunStudy,
  type SolvedPiece,
  studyOfPieces,
  withPiece,
} from '../../../src/faces/solved/solvedPiece.ts';
import { solveFirst } from '../../../src/faces/solved/solveFirst.ts';
import { knownNames } from '../../../src/study/names.ts';
import { readStudy } from '../../../src/study/read.ts';
import { expectAlike } from './alike.ts';

const shelf = openDataShelf();
const example = new URL('../../../examples/alder-booster/study.yaml', import.meta.url);

async function readPieces(chunks: readonly Uint8Array[]): Promise<readonly SolvedPiece[]> {
  async function* bytes() {
    yield* chunks;
  }
  const pieces: SolvedPiece[] = [];
  for await (const piece of piecesFrom(bytes())) pieces.push(piece);
  return pieces;
}

describe('the first answer', async () => {
  const text = await readFile(example, 'utf8');
  const blocks: Uint8Array[] = [];
  let flights: unknown = null;
  let flownAfter = 0;
  const whole = await solveFirst(text, shelf, {
    piece: (block) => blocks.push(block),
    flights(told) {
      flights = told;
      flownAfter = blocks.length;
    },
  });

  it('tells the two engines compared first, with few rows and jets, and all of each in the end', async () => {
    const pieces = await readPieces(blocks);
    const told = pieces.map((piece) =>
      piece.kind === 'engine' ? `${piece.id} at every ${piece.ladder.every}` : piece.kind,
    );
    expect(told).toEqual([
      'study',
      'bell at every 5',
      'plug at every 5',
      'compared',
      'adapting at every 5',
      'bell at every 1',
      'plug at every 1',
      'adapting at every 1',
      'whole',
    ]);
    // The engines are what is looked at: they do not wait for the flights.
    expect(flownAfter).toBe(blocks.length);
    const engines = pieces.filter((piece) => piece.kind === 'engine');
    for (const { id, answer, ladder } of engines.slice(0, 3)) {
      const final = engines.findLast((piece) => piece.id === id);
      if (final === undefined) throw new Error(`no whole answer of ${id}`);
      const [{ plume: few, ...told }, { plume: all, ...as }] = [answer, final.answer];
      expectAlike({ ...told, reasons: null }, { ...as, reasons: null });
      expectAlike(few.seaLevel, all.seaLevel);
      expect(few.altitudes).toEqual([]);
      expect(ladder.rows).toEqual(final.ladder.rows.filter((_, i) => i % 5 === 0));
    }
  });

  it('is so far what has come, with what was on screen before in place of the rest', async () => {
    const [study, bell, plug] = await readPieces(blocks);
    if (study?.kind !== 'study' || bell?.kind !== 'engine' || plug?.kind !== 'engine')
      throw new Error('order');
    const begun = begunStudy(study.study, [], null);
    expect(begun.awaited).toEqual(['bell', 'plug', 'adapting']);
    const half = withPiece(begun, bell);
    expect(half.awaited).toEqual(['plug', 'adapting']);
    expect(Object.keys(half.answer.engines)).toEqual(['bell']);
    const before = studyOfPieces(await readPieces(blocks));
    if (before === null) throw new Error('it is whole');
    const again = withPiece(begunStudy(study.study, [], before), plug);
    expect(again.answer.engines.bell).toBe(before.answer.engines.bell);
    expect(again.answer.engines.plug).toBe(plug.answer);
    expect([again.isWhole, again.awaited]).toEqual([false, ['bell', 'adapting']]);
    const problem = { code: 'of-a-test', what: 'It fails.', mend: 'Mend it.' };
    const failed = withPiece(again, { kind: 'failed', id: 'bell', problem });
    expect(failed.answer.failed).toEqual({ bell: problem });
    expect(failed.answer.engines.bell).toBeUndefined();
    expect(failed.ladders.bell).toBeUndefined();
  });

  it('is read however it is cut on its way, and refused where its end is missing', async () => {
    const bytes = whole?.() ?? new Uint8Array(0);
    const cut = 7777;
    const chunks = Array.from({ length: Math.ceil(bytes.length / cut) }, (_, i) =>
      bytes.slice(i * cut, (i + 1) * cut),
    );
    expect(await readPieces(chunks)).toEqual(await readPieces([bytes]));
    await expect(readPieces([bytes.slice(0, -3)])).rejects.toThrow('cut off');
    expect(studyOfPieces((await readPieces([bytes])).slice(0, -1))).toBeNull();
  });

  it('is the study as solved, with the rows of every altitude', async () => {
    const read = studyOfPieces(await readPieces(blocks));
    if (read === null) throw new Error('there is no answer');
    const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
    if (!outcome.ok) throw new Error('the example is a study');
    const { answer, solutions } = await solveStudyLive(outcome.study, shelf);
    expect(read.study).toEqual(outcome.study);
    expect(read.vehicles).toBeNull();
    const { vehicles, ...engines } = answer;
    expectAlike(read.answer, engines);
    expectAlike(flights, vehicles);
    expect(studyOfPieces(await readPieces([whole?.() ?? new Uint8Array(0)]))).toEqual({ ...read, vehicles });
    expect(Object.keys(read.ladders)).toEqual([...solutions.keys()]);
    for (const [id, solution] of solutions) {
      const ladder = read.ladders[id];
      const rows = altitudeCurve(solution, 401);
      if (ladder === undefined) throw new Error(`no rows of ${id}`);
      expectAlike(ladder.vacuum, rows.at(-1));
      for (const i of [0, 57, 400]) {
        const { field: one, ...row } = openedRow(ladder, i) ?? ladder.vacuum;
        const { field: other, ...as } = rows[i] ?? ladder.vacuum;
        expectAlike(row, as);
        expect(one?.length).toBe(other?.length);
        // The page keeps fields in single precision, 24 bits.
        const point = other?.at(-1)?.at(-1);
        if (point !== undefined) {
          expect(one?.at(-1)?.at(-1)?.pressure).toBeCloseTo(
            point.pressure,
            -Math.log10(point.pressure * 1e-6),
          );
        }
      }
    }
  });

  it('is none where the text is no study: the page says why', async () => {
    const nothing = () => expect.fail('there is nothing to tell');
    expect(await solveFirst('format: nothing', shelf, { piece: nothing, flights: nothing })).toBeNull();
  });
});

/** The study that the page's worker has in hand: engines before flights, and no solve where the server's answer serves. */

import { readFile } from 'node:fs/promises';
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import * as engineSolver from '../../../src/answer/solveEngine.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { piecesFrom } from '../../../src/faces/solved/solvedBlock.ts';
import { type SolvedPiece, studyOfPieces } from '../../../src/faces/solved/solvedPiece.ts';
import type { Flights, SolvedStudy } from '../../../src/faces/solved/solvedStudy.ts';
import { solveFirst } from '../../../src/faces/solved/solveFirst.ts';
import type { OpenOutcome, OpenPiece } from '../../../src/faces/workbench/workshop/messages.ts';
import { GivenUp, studyBench } from '../../../src/faces/workbench/workshop/studyBench.ts';
import { knownNames } from '../../../src/study/names.ts';
import { expectAlike } from '../solved/alike.ts';

const shelf = openDataShelf();
const bench = () =>
  studyBench(shelf, async () => ({ file: 'study.yaml', ...knownNames(await shelf.propellants()) }));
const example = new URL('../../../examples/alder-booster/study.yaml', import.meta.url);

let text: string;
const blocks: Uint8Array<ArrayBuffer>[] = [];
let flights: Flights;
beforeAll(async () => {
  text = (await readFile(example, 'utf8')).replace(/^sentences:$[\s\S]*?(?=^# What a bell would need)/m, '');
  await solveFirst(text, shelf, {
    piece: (block) => blocks.push(block),
    flights(told) {
      flights = told;
    },
  });
});
afterEach(() => {
  vi.unstubAllGlobals();
});

/** Stands for the server: what it is asked for, and the answer it has. */
function serverWithAnswer(): string[] {
  const asked: string[] = [];
  vi.stubGlobal('fetch', async (address: string) => {
    asked.push(address);
    return new Response(new Blob(blocks));
  });
  return asked;
}

/** Listens as the page does: an engine that is the same is the one told last. */
function listener() {
  const pieces: OpenPiece[] = [];
  const outcomes: OpenOutcome[] = [];
  return {
    pieces,
    outcomes,
    piece: (piece: OpenPiece) => pieces.push(piece),
    outcome: (outcome: OpenOutcome) => outcomes.push(outcome),
    kinds: () => pieces.map((piece) => ('id' in piece ? `${piece.kind} ${piece.id}` : piece.kind)),
  };
}

function solvedOf(pieces: readonly OpenPiece[]): SolvedStudy {
  const solved = studyOfPieces(pieces.filter((piece): piece is SolvedPiece => piece.kind !== 'same'));
  if (solved === null) throw new Error('the study is not whole');
  return solved;
}

async function served(): Promise<SolvedStudy> {
  async function* bytes() {
    yield* blocks;
  }
  const pieces: SolvedPiece[] = [];
  for await (const piece of piecesFrom(bytes())) pieces.push(piece);
  return solvedOf(pieces);
}

describe('a study opened by the worker', () => {
  it('has its engines told before its flights; a later one takes its place', async () => {
    const worker = bench();
    const [given, told] = [listener(), listener()];
    const first = worker.open(1, text, given);
    const second = worker.open(2, text, told);
    await expect(first).rejects.toBeInstanceOf(GivenUp);
    expectAlike(await second, flights);
    expect(given.outcomes).toEqual([]);
    expect(told.outcomes).toEqual([{ ok: true }]);
    expect(told.kinds()).toEqual([
      'study',
      'engine bell',
      'engine plug',
      'compared',
      'engine adapting',
      'whole',
    ]);
    const { vehicles, answer, ladders } = solvedOf(told.pieces);
    expect(vehicles).toBeNull();
    const there = await served();
    expectAlike(answer, there.answer);
    for (const [id, ladder] of Object.entries(ladders)) expectAlike(ladder.rows, there.ladders[id]?.rows, id);
    expectAlike((await worker.flown())?.vehicles, flights);
  });
});

describe('a study taken over from the server', () => {
  it('asks for nothing until it is needed; then its engines are solved, and not answered again', async () => {
    const asked = serverWithAnswer();
    const worker = bench();
    worker.adopt({ text, hash: 'abc', vehicles: flights });
    expect(asked).toEqual([]);
    const solved = await worker.solved();
    expect(asked).toEqual(['/api/answer?hash=abc']);
    expect([...(solved?.solutions.keys() ?? [])]).toEqual(['bell', 'plug', 'adapting']);
    expect(solved?.vehicles).toBe(flights);
  });

  it('tries again where there was none yet, or where its answer could not be read', async () => {
    const worker = bench();
    expect(await worker.solved()).toBeNull();
    worker.adopt({ text, hash: 'abc', vehicles: flights });
    vi.stubGlobal('fetch', async () => new Response('no answer'));
    await expect(worker.solved()).rejects.toThrow();
    serverWithAnswer();
    expect((await worker.solved())?.solutions.size).toBe(3);
  });

  it('gives what an edit leaves as it was: a new question has the same engines and flights', async () => {
    serverWithAnswer();
    const worker = bench();
    worker.adopt({ text, hash: 'abc', vehicles: flights });
    const told = listener();
    const asked = text.replace(/^question:.*$/m, 'question: Which of the two?');
    expect(await worker.open(1, asked, told)).toBeNull();
    // The page has the engines already: they are not sent again.
    expect(told.kinds()).toEqual(['study', 'same bell', 'same plug', 'compared', 'same adapting', 'whole']);
    const whole = told.pieces.find((piece) => piece.kind === 'whole');
    expect(whole?.head.question).toBe('Which of the two?');
    expect(whole?.vehicles).toBe(flights);
  });

  it('sends again only what an edit has moved', async () => {
    serverWithAnswer();
    const worker = bench();
    worker.adopt({ text, hash: 'abc', vehicles: flights });
    const told = listener();
    await worker.open(1, text.replace('areaRatio: 60, kept: 30 %', 'areaRatio: 60, kept: 35 %'), told);
    expect(told.kinds()).toEqual(['study', 'same bell', 'engine plug', 'compared', 'same adapting', 'whole']);
  });

  it('gives way to an edit: its engines are not solved beside those of the edit, which stand for them', async () => {
    const asked = text.replace(/^question:.*$/m, 'question: Which of the two?');
    const solves = vi.spyOn(engineSolver, 'solveEngine');
    try {
      serverWithAnswer();
      const alone = bench();
      alone.adopt({ text, hash: 'abc', vehicles: flights });
      await alone.open(1, asked, listener());
      const those = solves.mock.calls.length;
      expect(those).toBeGreaterThan(0);
      solves.mockClear();
      const worker = bench();
      worker.adopt({ text, hash: 'abc', vehicles: flights });
      const revived = worker.solved();
      await worker.open(1, asked, listener());
      const solved = await revived;
      expect(solved?.study.question).toBe('Which of the two?');
      expect(solved).toBe(await worker.solved());
      expect(solves.mock.calls.length).toBe(those);
    } finally {
      solves.mockRestore();
    }
  });

  it('goes on where an edit came to nothing', async () => {
    serverWithAnswer();
    const worker = bench();
    worker.adopt({ text, hash: 'abc', vehicles: flights });
    const revived = worker.solved();
    const told = listener();
    await worker.open(1, text.replace('areaRatio: 25', 'areaRatio: lots'), told);
    expect(told.outcomes).toMatchObject([{ ok: false }]);
    expect((await revived)?.solutions.size).toBe(3);
  });
});

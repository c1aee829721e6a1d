/** The study that the page's worker has in hand: engines before flights, and no solve where the server's answer serves. */

import { readFile } from 'node:fs/promises';
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { readSolved } from '../../../src/faces/solved/solvedBlock.ts';
import type { Flights, SolvedStudy } from '../../../src/faces/solved/solvedStudy.ts';
import { solveFirst } from '../../../src/faces/solved/solveFirst.ts';
import type { OpenOutcome } from '../../../src/faces/workbench/workshop/messages.ts';
import { GivenUp, studyBench } from '../../../src/faces/workbench/workshop/studyBench.ts';
import { knownNames } from '../../../src/study/names.ts';

const shelf = openDataShelf();
const bench = () =>
  studyBench(shelf, async () => ({ file: 'study.yaml', ...knownNames(await shelf.propellants()) }));
const example = new URL('../../../examples/alder-booster/study.yaml', import.meta.url);

let text: string;
let block: Uint8Array<ArrayBuffer>;
let flights: Flights;
beforeAll(async () => {
  text = (await readFile(example, 'utf8')).replace(/^sentences:$[\s\S]*?(?=^# What a bell would need)/m, '');
  await solveFirst(text, shelf, {
    engines(written) {
      block = written;
    },
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
    return new Response(block.slice());
  });
  return asked;
}

const solvedOf = (outcome: OpenOutcome | undefined): SolvedStudy => {
  if (outcome?.ok !== true) throw new Error(JSON.stringify(outcome));
  return outcome.solved;
};

describe('a study opened by the worker', () => {
  it('has its engines told before its flights; a later one takes its place', async () => {
    const worker = bench();
    const told: OpenOutcome[] = [];
    const first = worker.open(1, text, (outcome) => told.push(outcome));
    const second = worker.open(2, text, (outcome) => told.push(outcome));
    await expect(first).rejects.toBeInstanceOf(GivenUp);
    expect(await second).toEqual(flights);
    expect(told.length).toBe(1);
    const { vehicles, answer, ladders } = solvedOf(told[0]);
    const served = readSolved(block.slice().buffer);
    expect(vehicles).toBeNull();
    expect(answer).toEqual(served.answer);
    expect(ladders).toEqual(served.ladders);
    expect((await worker.flown())?.vehicles).toEqual(flights);
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
    const told: OpenOutcome[] = [];
    const asked = text.replace(/^question:.*$/m, 'question: Which of the two?');
    expect(await worker.open(1, asked, (outcome) => told.push(outcome))).toBeNull();
    const { vehicles, answer } = solvedOf(told[0]);
    expect(answer.question).toBe('Which of the two?');
    expect(vehicles).toBe(flights);
  });
});

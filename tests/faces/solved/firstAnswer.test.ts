/** The first answer of the page: what the server writes, and the page reads again. */

import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { altitudeCurve } from '../../../src/answer/conditions.ts';
import { solveStudyLive } from '../../../src/answer/solve.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { openedRow } from '../../../src/faces/solved/packedRows.ts';
import { readSolved } from '../../../src/faces/solved/solvedBlock.ts';
import { solveFirst } from '../../../src/faces/solved/solveFirst.ts';
import { knownNames } from '../../../src/study/names.ts';
import { readStudy } from '../../../src/study/read.ts';

const shelf = openDataShelf();
const example = new URL('../../../examples/alder-booster/study.yaml', import.meta.url);

describe('the first answer', () => {
  it('is the study as solved, with the rows of every altitude', async () => {
    const text = await readFile(example, 'utf8');
    const order: string[] = [];
    let block: ArrayBuffer | null = null;
    let flights: unknown = null;
    const whole = await solveFirst(text, shelf, {
      engines(written) {
        order.push('engines');
        block = written.buffer;
      },
      flights(told) {
        order.push('flights');
        flights = told;
      },
    });
    // The engines are what is looked at: they do not wait for the flights.
    expect(order).toEqual(['engines', 'flights']);
    if (block === null) throw new Error('there is no answer');
    const read = readSolved(block);
    const outcome = readStudy(text, { file: 'study.yaml', ...knownNames(await shelf.propellants()) });
    if (!outcome.ok) throw new Error('the example is a study');
    const { answer, solutions } = await solveStudyLive(outcome.study, shelf);
    expect(read.study).toEqual(outcome.study);
    expect(read.vehicles).toBeNull();
    const { vehicles, ...engines } = answer;
    expect(read.answer).toEqual(engines);
    expect(flights).toEqual(vehicles);
    expect(readSolved(whole?.().buffer ?? new ArrayBuffer(0))).toEqual({ ...read, vehicles });
    expect(Object.keys(read.ladders)).toEqual([...solutions.keys()]);
    for (const [id, solution] of solutions) {
      const ladder = read.ladders[id];
      const rows = altitudeCurve(solution, 401);
      if (ladder === undefined) throw new Error(`no rows of ${id}`);
      expect(ladder.vacuum).toEqual(rows.at(-1));
      for (const i of [0, 57, 400]) {
        const { field: one, ...row } = openedRow(ladder, i) ?? ladder.vacuum;
        const { field: other, ...as } = rows[i] ?? ladder.vacuum;
        expect(row).toEqual(as);
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
    expect(await solveFirst('format: nothing', shelf, { engines: nothing, flights: nothing })).toBeNull();
  });
});

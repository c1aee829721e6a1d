/** Orders to the desk of whole flows: none overtakes another, and what is told is of the text of now. */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, expect, test, vi } from 'vitest';
import type { ComputeOptions } from '../../../src/faces/flows/computeFlows.ts';
import { flowDesk } from '../../../src/faces/server/flowDesk.ts';
import type { StudyFile } from '../../../src/faces/server/studyFile.ts';

/** Work that goes on until it is stopped. */
const begun = vi.hoisted(() => [] as { text: string; options: ComputeOptions; isOver: boolean }[]);
vi.mock('../../../src/faces/flows/computeFlows.ts', () => ({
  async computeFlows(text: string, _wanted: unknown, options: ComputeOptions) {
    const work = { text, options, isOver: false };
    begun.push(work);
    while (!options.isStopped()) await new Promise((resolve) => setTimeout(resolve, 1));
    // Its end takes longer than the file.
    await new Promise((resolve) => setTimeout(resolve, 30));
    work.isOver = true;
  },
}));

const cache = mkdtempSync(join(tmpdir(), 'plumeline-desk-'));
vi.stubEnv('XDG_CACHE_HOME', cache);
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(cache, { recursive: true, force: true });
});

const studyAt = (pressure: number): string =>
  `plumeline: 1\nquestion: And so?\nengines:\n  cold: { propellants: { gamma: 1.4, molarMass: 28 g/mol, temperature: 600 K }, chamber: { pressure: ${pressure} bar }, size: { throat: 100 mm }, nozzle: { kind: cone, areaRatio: 4, halfAngle: 15 deg } }\n`;
const wanted = { engines: ['cold'], altitude: 0 };

let text = studyAt(20);
/** A slow one. */
const file = {
  async read() {
    const read = { text, hash: text, name: 'study' };
    await new Promise((resolve) => setTimeout(resolve, 5));
    return read;
  },
} as Partial<StudyFile> as StudyFile;

beforeEach(() => {
  begun.length = 0;
  text = studyAt(20);
});

test('two windows that ask at once have one work between them', async () => {
  const desk = flowDesk(file);
  await desk.begin(wanted);
  text = studyAt(21);
  await Promise.all([desk.begin(wanted), desk.begin(wanted)]);
  expect(begun.map((work) => work.text)).toEqual([studyAt(20), studyAt(21)]);
  await desk.close();
  expect(begun.map(({ isOver }) => isOver)).toEqual([true, true]);
});

test('a stop is not overtaken by what was asked for before it', async () => {
  const desk = flowDesk(file);
  await Promise.all([desk.begin(wanted), desk.stop()]);
  expect(begun.map(({ isOver }) => isOver)).toEqual([true]);
  expect((await desk.list()).work).toEqual({ is: 'none' });
});

test('an order that fails holds up none after it', async () => {
  let isThere = false;
  const desk = flowDesk({
    ...file,
    read: () => (isThere ? file.read() : Promise.reject(new Error('no file'))),
  });
  await expect(desk.begin(wanted)).rejects.toThrow('no file');
  isThere = true;
  await desk.begin(wanted);
  expect(begun.length).toBe(1);
  await desk.close();
});

test('what went wrong with a text is not told of the next one', async () => {
  const desk = flowDesk(file);
  await desk.begin(wanted);
  const problem = { code: 'flow-failed', what: 'It failed.', mend: 'Try again.' };
  begun[0]?.options.report({ is: 'ended', work: { is: 'failed', problem } });
  expect((await desk.list()).work).toEqual({ is: 'failed', problem });
  text = studyAt(21);
  const { work, mark } = await desk.list();
  expect(mark).not.toBe('');
  expect(work).toEqual({ is: 'none' });
  await desk.close();
});

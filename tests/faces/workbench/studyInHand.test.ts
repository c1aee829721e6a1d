/** Questions asked while there is no study in hand are put to the next one. */

import { afterAll, beforeEach, expect, it, vi } from 'vitest';
import type { Ask } from '../../../src/answer/asked/model.ts';
import type { SolvedStudy } from '../../../src/faces/solved/solvedStudy.ts';
import type { DeskOrder, DeskReport } from '../../../src/faces/workbench/workshop/deskMessages.ts';
import type { Order } from '../../../src/faces/workbench/workshop/messages.ts';
import { studyInHand } from '../../../src/faces/workbench/workshop/studyInHand.ts';
import type { Study } from '../../../src/study/model.ts';

/** Stands for the workers: what the desk and the workshop are told, and a way to let the desk answer. */
const orders: DeskOrder[] = [];
const errands: Order['errand'][] = [];
let report: (told: DeskReport) => void = () => undefined;
vi.stubGlobal(
  'Worker',
  class {
    addEventListener(kind: string, hear: (event: { data: DeskReport }) => void) {
      if (kind === 'message') report = (data) => hear({ data });
    }
    postMessage(order: DeskOrder | Order) {
      if ('errand' in order) errands.push(order.errand);
      else orders.push(order);
    }
  },
);
vi.stubGlobal('reportError', (error: unknown) => {
  throw error;
});
afterAll(() => {
  vi.unstubAllGlobals();
});
const { askDesk, beginCheck, endCheck, QuestionEnded } = await import(
  '../../../src/faces/workbench/workshop/desk.ts'
);
const { adoptAnswer, tellNumbers } = await import('../../../src/faces/workbench/workshop/workshop.ts');
const study = {} as Study;
const begin = () => beginCheck(study, true, () => undefined);
const kinds = () => orders.map(({ kind }) => kind);
/** Until all that is waiting for nothing but its turn has had it. */
const turn = () => new Promise((resolve) => setTimeout(resolve));

beforeEach(() => {
  endCheck();
  orders.length = 0;
});

it('comes to all who wait, and to those who come later at once, until it is dropped', async () => {
  const hand = studyInHand();
  const came: string[] = [];
  const wait = (name: string) => void hand.come().then(() => came.push(name));
  wait('first');
  hand.drop();
  wait('second');
  await turn();
  expect(came).toEqual([]);
  hand.take();
  await turn();
  expect(came).toEqual(['first', 'second']);
  wait('third');
  await turn();
  expect(came).toEqual(['first', 'second', 'third']);
  hand.drop();
  wait('fourth');
  await turn();
  expect(came).not.toContain('fourth');
  hand.take();
  await turn();
  expect(came).toContain('fourth');
});

it('has a question put behind the study that it is about, and answered', async () => {
  const told = askDesk('test', { text: 'bell.thrust > 1 kN' });
  await turn();
  expect(orders).toEqual([]);
  begin();
  await turn();
  expect(kinds()).toEqual(['study', 'question']);
  const [, question] = orders;
  if (question?.kind !== 'question') throw new Error('no question was put');
  report({ kind: 'told', number: question.number, told: null });
  expect(await told).toBeNull();
});

it('has a question wait again where the study is about to change', async () => {
  begin();
  endCheck();
  const told = askDesk('test', { text: 'bell.thrust > 1 kN' });
  told.catch(() => undefined);
  await turn();
  expect(kinds()).toEqual(['study', 'stop']);
  begin();
  await turn();
  expect(kinds()).toEqual(['study', 'stop', 'study', 'question']);
});

it('puts no question that was given up while it waited, and has one forgotten that was put', async () => {
  const [early, late] = [new AbortController(), new AbortController()];
  const first = askDesk('test', { text: 'a' }, early.signal);
  early.abort();
  await expect(first).rejects.toBeInstanceOf(QuestionEnded);
  begin();
  await turn();
  expect(kinds()).toEqual(['study']);
  const second = askDesk('test', { text: 'b' }, late.signal);
  await turn();
  late.abort();
  await expect(second).rejects.toBeInstanceOf(QuestionEnded);
  expect(kinds()).toEqual(['study', 'question', 'forget']);
});

it('has numbers of engines told once there is a study; those of the air at once', async () => {
  const ask = { quantity: 'thrust', place: null } as unknown as Ask;
  void tellNumbers([{ ...ask, engine: null }]);
  void tellNumbers([{ ...ask, engine: 'bell' }]);
  await turn();
  expect(errands).toMatchObject([{ kind: 'tell', asks: [{ engine: null }] }]);
  adoptAnswer({ text: '', hash: 'abc', vehicles: null }, {
    answer: { engines: {} },
    ladders: {},
  } as unknown as SolvedStudy);
  await turn();
  expect(errands.slice(1)).toMatchObject([{ kind: 'adopt' }, { kind: 'tell', asks: [{ engine: 'bell' }] }]);
});

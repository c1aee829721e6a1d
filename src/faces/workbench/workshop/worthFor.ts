/** Gain and price of the pair, and one need of the study, as the page asks for them. */

import type { Crew } from '../../../answer/asked/crew.ts';
import { findNeed, needRequestOf, needWords } from '../../../answer/needs/index.ts';
import type { WorthTable } from '../../../answer/worth/model.ts';
import { worthTable } from '../../../answer/worth/worthTable.ts';
import { type Outcome, ProblemError } from '../../../numerics/problem.ts';
import type { Study } from '../../../study/model.ts';
import type { NeedTold, SweepSoFar } from './deskMessages.ts';

type Tell = (soFar: SweepSoFar) => void;

export function worthFor(
  study: Study,
  crew: Crew,
  signal: AbortSignal,
  tell: Tell,
): Promise<Outcome<WorthTable>> {
  return outcomeOf(worthTable(study, crew, optionsOf(signal, tell)));
}

export function needFor(
  study: Study,
  crew: Crew,
  id: string,
  signal: AbortSignal,
  tell: Tell,
): Promise<Outcome<NeedTold>> {
  const input = study.needs.find((need) => need.id === id);
  if (input === undefined) throw new RangeError(`the study has no need ${id}`);
  const work = async (): Promise<NeedTold> => {
    const need = await findNeed(study, crew, needRequestOf(study, input), optionsOf(signal, tell));
    return { id, title: input.title, words: needWords(need), sweep: need.sweep };
  };
  return outcomeOf(work());
}

function optionsOf(signal: AbortSignal, tell: Tell) {
  return { signal, onProgress: (done: number, most: number) => tell({ found: null, done, most }) };
}

async function outcomeOf<Value>(work: Promise<Value>): Promise<Outcome<Value>> {
  try {
    return { ok: true, value: await work };
  } catch (error) {
    if (error instanceof ProblemError) return { ok: false, problem: error.problem };
    throw error;
  }
}

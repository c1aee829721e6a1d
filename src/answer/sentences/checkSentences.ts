/** Every sentence of a study checked over all that is not known; the engines are asked once for all of them. */

import type { Study } from '../../study/model.ts';
import type { Crew } from '../asked/crew.ts';
import { type Drawn, type DrawOptions, drawAsks } from '../spread/index.ts';
import { decideTogether } from './decideTogether.ts';
import { drawnAsks } from './drawnAsks.ts';
import { flipPoints } from './flips.ts';
import type { CheckedSentence } from './model.ts';
import { decide, prepare, withoutTest } from './prepared.ts';

export interface CheckOptions extends Pick<DrawOptions, 'count' | 'signal' | 'mostSolved' | 'onProgress'> {
  /** Told all sentences after a first, coarse look; the promise brings the final ones. */
  readonly onProvisional?: (sentences: readonly CheckedSentence[]) => void;
  /** False: no flip points, which need engines solved far from the study's values. */
  readonly flips?: boolean;
  /** Told the sentences complete but for their flip points. */
  readonly onDecided?: (sentences: readonly CheckedSentence[]) => void;
}

/** @throws ProblemError of the draws; what the crew throws, an abort among it */
export async function checkSentences(
  study: Study,
  crew: Crew,
  { onProvisional, onDecided, flips = true, ...draw }: CheckOptions = {},
): Promise<readonly CheckedSentence[]> {
  const ready = prepare(study);
  const { prepared, asks } = ready;
  if (asks.length === 0) return prepared.map((one) => withoutTest(one, study));
  const drawn = await drawAsks(study, asks, crew, {
    ...draw,
    ...(onProvisional && {
      onProvisional: (early: Drawn) => onProvisional(decide(study, ready, early)),
    }),
  });
  const decided = await decideTogether(study, ready, drawn, crew, draw.signal);
  onDecided?.(decided);
  if (!flips) return decided;
  const tests = prepared.flatMap(({ placed }) => placed ?? []);
  const found = await flipPoints(study, tests, asks, drawnAsks(drawn, study), crew, draw.signal);
  let next = 0;
  return decided.map((sentence, i) =>
    prepared[i]?.placed === null ? sentence : { ...sentence, flips: found[next++] ?? [] },
  );
}

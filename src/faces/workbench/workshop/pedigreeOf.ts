/** Where one number comes from, as far as it takes computing: its span, what the span is made of, what it moves with. */

import type { Crew } from '../../../answer/asked/crew.ts';
import type { Ask } from '../../../answer/asked/model.ts';
import { compileExpression, scopeOf } from '../../../answer/expression/index.ts';
import { type EngineInputEntry, settableInputs } from '../../../answer/inputs/index.ts';
import { drawnAsks } from '../../../answer/sentences/drawnAsks.ts';
import { drawAsks, mattersMost, spanOf } from '../../../answer/spread/index.ts';
import type { Outcome, Problem } from '../../../numerics/problem.ts';
import type { Study } from '../../../study/model.ts';
import { ownersOf } from '../../../study/owners.ts';
import type { HangsOn, Pedigree } from './deskMessages.ts';

/** Inputs are moved by this share to see what a number moves with. */
const STEP = 0.01;
/** A number that moves by less for one per cent of an input does not hang on it. */
const LEAST_EFFECT = 1e-5;
/** Shares of the spread below this are not told. */
const LEAST_SHARE = 0.02;

export async function pedigreeOf(
  study: Study,
  crew: Crew,
  expression: string,
  signal: AbortSignal,
): Promise<Outcome<Pedigree>> {
  const compiled = compileExpression(expression, scopeOf(study));
  if (!compiled.ok) return { ok: false, problem: compiled.problem };
  const [ask] = compiled.value.asks;
  if (ask === undefined || compiled.value.ask === null) return { ok: false, problem: ofSeveral(expression) };
  const drawn = await drawAsks(study, [ask], crew, { signal });
  const middle = drawn.asks[0]?.middle;
  if (middle === undefined) throw new RangeError('nothing was told');
  if (!middle.ok) return middle;
  const { value } = middle;
  const [low = value, high = value] = spanOf(drawn, drawn.asks, ([one]) => one ?? null) ?? [];
  const { sources } = drawnAsks(drawn, study);
  const shares = mattersMost(drawn, [0], ([one]) => one ?? null).flatMap(({ unknown, share }) => {
    const name = unknown.kind === 'input' ? unknown.path : unknown.name;
    if (share < LEAST_SHARE) return [];
    return [{ label: sources.find((one) => one.name === name)?.label ?? name, share: Math.min(1, share) }];
  });
  return {
    ok: true,
    value: {
      value,
      low: Math.min(low, value),
      high: Math.max(high, value),
      shares,
      alternatives: middle.alternatives.map(({ by, value: other }) => ({ by, value: other })),
      hangsOn: await whatMoves(study, crew, ask, value, signal),
    },
  };
}

function ofSeveral(expression: string): Problem {
  return {
    code: 'number-of-several',
    what: `${expression} is made of several numbers.`,
    mend: 'Look at each of them by itself.',
  };
}

/** Every input of the engine moved by itself. */
async function whatMoves(
  study: Study,
  crew: Crew,
  ask: Ask,
  value: number,
  signal: AbortSignal,
): Promise<readonly HangsOn[]> {
  const engine = ownersOf(study).find(({ id }) => id === ask.engine);
  if (engine === undefined || value === 0) return [];
  const moved = settableInputs(engine).flatMap((input) => {
    const to = movedValue(input);
    return to === null ? [] : [{ input, ...to }];
  });
  const asks = moved.map(
    ({ input, next }): Ask => ({ ...ask, inputs: [...ask.inputs, { input: input.name, value: next }] }),
  );
  const [told = []] = await crew.tell(asks, [{}], { signal });
  return moved
    .flatMap(({ input, now, next }, i): readonly HangsOn[] => {
      const answer = told[i];
      if (answer?.ok !== true) return [];
      const effect = ((answer.value - value) / Math.abs(value)) * (STEP / (next / now - 1));
      if (Math.abs(effect) < LEAST_EFFECT) return [];
      return [{ label: input.label, quantity: input.quantity, value: now, effect }];
    })
    .sort((a, b) => Math.abs(b.effect) - Math.abs(a.effect));
}

/** One per cent more, or less where more is not allowed; null for whole numbers, nothing, and what the program finds itself. */
function movedValue(input: EngineInputEntry): { readonly now: number; readonly next: number } | null {
  const { current: now, highest, openAbove, whole } = input;
  if (now === null || now === 0 || whole) return null;
  const more = now + STEP * Math.abs(now);
  const fits = highest === null || more < highest || (more === highest && !openAbove);
  return { now, next: fits ? more : now - STEP * Math.abs(now) };
}

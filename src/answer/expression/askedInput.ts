/** Inputs and throttle that the brackets set for one number. */

import { nearestName } from '../../study/nearest.ts';
import { listNames, quote } from '../../study/report.ts';
import { type Draft, type Inside, numberOf, once, stationAt } from './askedDraft.ts';
import { inWords, isNumber, sameDimension } from './dimensions.ts';
import type { SettableInput } from './model.ts';
import type { Argument } from './tree.ts';
import { refuse } from './trouble.ts';

/** A throttle beyond this is no throttle. */
const MOST_THROTTLE = 2;

type SetArgument = Extract<Argument, { is: 'set' }>;

export function setOne(
  draft: Draft,
  arg: SetArgument,
  inputs: readonly SettableInput[],
  inside: Inside,
): void {
  if (arg.input === 'throttle') setThrottle(draft, arg, inside);
  else if (arg.input === 'areaRatio') stationAt(draft, arg.value, arg, inside);
  else setInput(draft, arg, inputs, inside);
}

function setInput(draft: Draft, arg: SetArgument, inputs: readonly SettableInput[], inside: Inside): void {
  const input = inputs.find(({ name }) => name === arg.input) ?? unknownInput(arg, inputs);
  const { name, dimension } = input;
  const value = numberOf(arg.value, inside, inWords(dimension), (d) => sameDimension(d, dimension));
  if (!allows(input, value)) {
    refuse(
      arg.value,
      'input-out-of-range',
      `This is outside what ${quote(name)} may be: ${input.range}.`,
      `Give ${input.range}.`,
      { facts: { value } },
    );
  }
  if (draft.inputs.some((other) => other.input === name)) {
    refuse(arg, 'input-twice', `${quote(name)} is set twice.`, 'Keep one of the two.');
  }
  draft.inputs.push({ input: name, value });
}

function allows({ lowest, highest, openBelow, openAbove, whole }: SettableInput, value: number): boolean {
  if (whole && !Number.isInteger(value)) return false;
  if (lowest !== null && (openBelow ? value <= lowest : value < lowest)) return false;
  return highest === null || (openAbove ? value < highest : value <= highest);
}

function unknownInput(arg: SetArgument, inputs: readonly SettableInput[]): never {
  const names = inputs.map(({ name }) => name);
  const near = names.find((name) => name.endsWith(`.${arg.input}`)) ?? nearestName(arg.input, names);
  return refuse(
    arg,
    'input-unknown',
    `${quote(arg.input)} is not an input that can be changed here.`,
    names.length === 0
      ? 'The air has no inputs; leave it out.'
      : `${near === null ? '' : `Did you mean ${near}? `}Inputs that can be changed: throttle, ${listNames(names)}.`,
  );
}

function setThrottle(draft: Draft, arg: Extract<Argument, { is: 'set' }>, inside: Inside): void {
  const share = numberOf(arg.value, inside, 'a share', isNumber);
  if (!(share > 0 && share <= MOST_THROTTLE)) {
    refuse(
      arg.value,
      'throttle-out-of-range',
      'A throttle is a share of the chamber pressure: more than 0 % and up to 200 %.',
      'Write it like throttle = 60 %.',
      { facts: { throttle: share } },
    );
  }
  once(draft, 'throttle', share, arg);
}

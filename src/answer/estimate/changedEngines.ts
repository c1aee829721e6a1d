/** Engines with another text in one of their inputs, without reading the whole study anew. */

import type { EngineInput, Quantity } from '../../study/model.ts';
import { parseQuantity } from '../../study/units.ts';
import { isAllowed } from '../inputs/settableInputs.ts';
import type { InputSlot } from '../inputs/slot.ts';
import { slotsOf } from '../inputs/slots.ts';
import { areAlike } from './unseen.ts';

/**
 * The engines as reading the study would give them, had it this text at this path; those that do not have the input stay.
 *
 * @returns null where it takes a reading of the study: the input is no number, is stated by no engine, or is not allowed
 */
export function withTextAt(
  engines: readonly EngineInput[],
  path: string,
  text: string,
): readonly EngineInput[] | null {
  let isFound = false;
  const changed: EngineInput[] = [];
  for (const engine of engines) {
    const slot = slotsOf(engine).find((each) => each.now?.path === path);
    if (slot === undefined) changed.push(engine);
    else {
      const value = quantityIn(slot, text);
      if (value === null) return null;
      isFound = true;
      changed.push(slot.put(value));
    }
  }
  return isFound ? changed : null;
}

/** What a reading of the study would make of the text; null where it would object, or warn. */
function quantityIn({ now, field, quantity }: InputSlot, text: string): Quantity | null {
  // A share that moves takes the others along in a sweep, but not in the file.
  if (now === null || now.byDefault || quantity === 'propellants.share') return null;
  const parsed = parseQuantity(text, ...field.kinds);
  if (!parsed.ok) return null;
  const { value, plusMinus, spread } = parsed.value;
  const ends = [
    ...(spread === null ? [] : [spread.low, spread.high]),
    value - (plusMinus ?? 0),
    value + (plusMinus ?? 0),
  ];
  if (![value, ...ends].every((end) => isAllowed(end, field.range))) return null;
  return { value, plusMinus, ...(spread && { spread }), text: text.trim(), path: now.path, byDefault: false };
}

/** Engines that are not as they were, or take their size from one that is not: in an order in which each finds that one before it. */
export function touchedEngines(
  before: readonly EngineInput[],
  now: readonly EngineInput[],
): readonly { readonly before: EngineInput; readonly now: EngineInput }[] {
  const touched = new Map<string, { readonly before: EngineInput; readonly now: EngineInput }>();
  const pairs = now.flatMap((engine) => {
    const was = before.find(({ id }) => id === engine.id);
    return was === undefined ? [] : [{ before: was, now: engine }];
  });
  const sizedBy = ({ size }: EngineInput): string | null => (size.by === 'same' ? size.as : null);
  let waiting = pairs.filter((pair) => !areAlike(pair.before, pair.now));
  let others = pairs.filter((pair) => !waiting.includes(pair));
  while (waiting.length > 0) {
    const ready = waiting.filter((pair) => !waiting.some((other) => other.now.id === sizedBy(pair.now)));
    if (ready.length === 0) break;
    for (const pair of ready) touched.set(pair.now.id, pair);
    const isFollowing = (pair: (typeof pairs)[number]): boolean =>
      ready.some(({ now: { id } }) => id === sizedBy(pair.now));
    waiting = [...waiting.filter((pair) => !ready.includes(pair)), ...others.filter(isFollowing)];
    others = others.filter((pair) => !isFollowing(pair));
  }
  return [...touched.values()];
}

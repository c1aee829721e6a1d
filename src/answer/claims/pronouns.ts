/** What “it” and “they” stand for, where the sentences before leave no choice. English. */

import type { ProposedQuantity } from './model.ts';

/** Named in the sentences before. */
export interface NamedBefore {
  /** Ids, of the last sentence that named any. */ readonly engines: readonly string[];
  readonly quantity: ProposedQuantity | null;
  /** Sentences since the engines were named; since the quantity was. */
  readonly ago: number;
  readonly quantityAgo: number;
}

export const NOTHING_BEFORE: NamedBefore = { engines: [], quantity: null, ago: 0, quantityAgo: 0 };

export interface Meant {
  readonly engines: readonly string[];
  readonly quantities: readonly ProposedQuantity[];
  /** What stands for what, for people. */ readonly assumed: readonly string[];
}

/** Further back than so many sentences, nobody is sure what a pronoun means. Our choice. */
const REACH = 2;

const IT = /\b(?:it|its|this (?:one|engine|nozzle)|that (?:one|engine|nozzle))\b/i;
const THEY = /\b(?:they|their|them|both)\b/i;
/** “It is higher than that of the bell”, “it is twice that in vacuum”: a number is meant, not an engine. */
const ITS_NUMBER =
  /^\W*(?:(?:and|but|so|there|here)\s+)?(?:it|that|this)\s+(?:is|was|gets|becomes|stays)\b.*\b(?:that|those) (?:of|at|in|on)\b/i;
/** Behind it stands what “it” is held against. */
const BEHIND_THAN = /\b(?:than|(?:that|those) of)\b/i;

export function pronounsResolved(
  say: string,
  engines: readonly string[],
  quantities: readonly ProposedQuantity[],
  before: NamedBefore,
): Meant {
  const assumed: string[] = [];
  const meantEngines = enginesMeant(say, engines, before);
  if (meantEngines !== engines) {
    const word = (engines.length === 0 && meantEngines.length > 1 ? THEY : IT).exec(say)![0].toLowerCase();
    const added = meantEngines.filter((id) => !engines.includes(id));
    assumed.push(`“${word}” is taken for ${added.join(' and ')}, named before`);
  }
  const { quantity, quantityAgo } = before;
  const isNumber = quantities.length === 0 && quantityAgo <= REACH && ITS_NUMBER.test(say);
  if (quantity === null || !isNumber) return { engines: meantEngines, quantities, assumed };
  const because = `“${/\b(?:it|that|this)\b/i.exec(say)![0].toLowerCase()}”, ${quantity.label} before`;
  assumed.push(`meant is ${quantity.label}, named before`);
  return { engines: meantEngines, quantities: [{ ...quantity, because }], assumed };
}

function enginesMeant(
  say: string,
  engines: readonly string[],
  { engines: named, ago }: NamedBefore,
): readonly string[] {
  if (ago > REACH || named.length === 0) return engines;
  const [one] = named;
  if (engines.length === 0) {
    if (named.length === 1 && IT.test(say)) return named;
    return named.length === 2 && THEY.test(say) && !IT.test(say) ? named : engines;
  }
  // “It gets more than the bell”: it is the other one, named before.
  const than = say.search(BEHIND_THAN);
  const it = say.search(IT);
  const isIt = named.length === 1 && engines.length === 1 && engines[0] !== one && it >= 0 && it < than;
  return isIt ? [one!, ...engines] : engines;
}

/** What the next sentence may point back to. */
export function namedAfter(
  engines: readonly string[],
  quantity: ProposedQuantity | null,
  before: NamedBefore,
): NamedBefore {
  return {
    engines: engines.length > 0 ? engines : before.engines,
    quantity: quantity ?? before.quantity,
    ago: engines.length > 0 ? 1 : before.ago + 1,
    quantityAgo: quantity !== null ? 1 : before.quantityAgo + 1,
  };
}

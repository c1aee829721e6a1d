/** Reasons given in the words of a sentence, and whether the test looks at them. English. */

import { quantitiesMeant } from '../claims/quantitiesMeant.ts';
import type { CompiledTest } from '../expression/model.ts';
import type { SaidReason } from './model.ts';

/** Who does something, behind a `for` or `since` that gives a reason: “for the pad” and “since 1960” give none. */
const DOES =
  'is|are|has|have|does|do|can|cannot|must|will|adapts?|expands?|flows?|burns?|falls?|rises?|grows?|presses|press|push(?:es)?|pulls?|leaves?|lets?|gets?|needs?|takes?|gives?|loses?|gains?|stays?|works?|runs?|weighs?';
const SOMEBODY = String.raw`(?:(?:it|they|there|nothing)\s+[a-z]+|(?:its|their|the|a|an|no|every|all)\s+(?:[\w-]+\s+){1,3}?(?:${DOES})\b)`;
const CUE = new RegExp(
  String.raw`\bbecause\b|\b(?:owing|thanks)\s+to\b|\bdue\s+to\b|\bsince\s+(?=${SOMEBODY})|[,;:–-]\s*for\s+(?=${SOMEBODY})`,
  'i',
);
/** “That is because …” gives the reason for what was said before: the reason is the sentence itself. */
const BARE_MAIN = /^\W*(?:(?:it|this|that)(?:['’]s| is| was)(?:\s+\w+)?)?\W*$/i;

interface ReasonParts {
  readonly reason: string;
  readonly main: string;
}

/** The reason and what it is given for; null where no reason is given, or the sentence is nothing else. */
export function reasonIn(say: string): ReasonParts | null {
  const found = CUE.exec(say);
  if (found === null) return null;
  const from = found.index + /^[,;:–-]?\s*/.exec(found[0])![0].length;
  const rest = say.slice(from);
  const end = from === 0 ? rest.search(/,\s/) : rest.search(/;|[.!?]["”’')\]]*(?:\s|$)/);
  const reason = end < 0 ? rest : rest.slice(0, end);
  const main = `${say.slice(0, found.index)}${end < 0 ? '' : rest.slice(end)}`;
  return BARE_MAIN.test(main) ? null : { reason: reason.trim(), main };
}

/**
 * The reason of a sentence, held against its test. It is tested where a quantity that it alone names is asked for; where it
 * names none that is known, where the test has a part of its own for it beside the first.
 */
export function saidReasonsOf(say: string, test: CompiledTest): readonly SaidReason[] {
  const parts = reasonIn(say);
  if (parts === null) return [];
  const text = parts.reason;
  const tested = isTested(parts, test);
  const words = tested
    ? `“${text}”: the test looks at it.`
    : `The reason is not tested: “${text}”. Add a part to the test that would fail if it were wrong, or leave it out.`;
  return [{ text, tested, words }];
}

function isTested({ reason, main }: ReasonParts, test: CompiledTest): boolean {
  const ofMain = new Set(quantitiesMeant(main, []).map(({ quantity }) => quantity));
  const own = quantitiesMeant(reason, []).filter(({ quantity }) => !ofMain.has(quantity));
  if (own.length > 0) return own.some(({ quantity }) => test.asks.some((ask) => ask.quantity === quantity));
  return partsOf(test) > 1;
}

/** Joined by `and`; that of `between … and …` joins none. */
function partsOf({ text }: CompiledTest): number {
  const count = (word: RegExp): number => text.match(word)?.length ?? 0;
  return 1 + count(/\band\b/gi) - count(/\bbetween\b/gi);
}

/** Chemical formulas of ingredients that a study describes itself. */
import type { Outcome } from '../numerics/problem.ts';

/**
 * Standard atomic masses [g/mol] of the elements that the species data cover.
 * Source: the element table that belongs to those data (data/species/index.json, `atomicMasses`).
 */
export const atomicMasses: Readonly<Record<string, number>> = {
  H: 1.00794,
  He: 4.002602,
  C: 12.0107,
  N: 14.0067,
  O: 15.9994,
  F: 18.9984032,
  Al: 26.981538,
  Cl: 35.453,
  Ar: 39.948,
};

const MOST_ATOMS = 1e6;
const TOKEN = /([A-Z][a-z]?)|(\()|(\))|(\d+(?:\.\d+)?|\.\d+)/y;

const refuse = (what: string, mend: string): Outcome<never> => ({
  ok: false,
  problem: { code: 'formula-unreadable', what, mend },
});

/** Atoms in one unit of `formula`, e.g. `CH1.95` or `(NH4)ClO4`. */
export function parseFormula(formula: string): Outcome<Readonly<Record<string, number>>> {
  const text = formula.replace(/[₀-₉]/g, (c) => String(c.charCodeAt(0) - 0x2080)).trim();
  const mend =
    'Write symbols with their counts, e.g. C10H18, CH1.95 or (NH4)ClO4; upper and lower case count.';
  if (text === '' || text.length > 200) return refuse('The formula is empty or longer than 200 signs.', mend);
  // One frame for each open bracket; the last is being filled.
  const frames: Map<string, number>[] = [new Map()];
  let last: Map<string, number> | null = null;
  let at = 0;
  const addLast = (times: number): void => {
    if (last === null) return;
    const frame = frames.at(-1)!;
    for (const [element, count] of last) frame.set(element, (frame.get(element) ?? 0) + count * times);
    last = null;
  };
  while (at < text.length) {
    TOKEN.lastIndex = at;
    const match = TOKEN.exec(text);
    if (match === null)
      return refuse(`“${text[at]!}” in the formula “${formula}” is not a symbol or a number.`, mend);
    at = TOKEN.lastIndex;
    const [, symbol, open, close, count] = match;
    if (count !== undefined) {
      if (last === null)
        return refuse(`In the formula “${formula}” the number ${count} follows no symbol.`, mend);
      addLast(Number(count));
      continue;
    }
    addLast(1);
    if (open !== undefined) frames.push(new Map());
    else if (close !== undefined) {
      const inner = frames.pop()!;
      if (frames.length === 0)
        return refuse(`A bracket closes in the formula “${formula}” that never opened.`, mend);
      last = inner;
    } else if (symbol !== undefined) {
      if (!Object.hasOwn(atomicMasses, symbol)) {
        return {
          ok: false,
          problem: {
            code: 'element-unknown',
            what: `“${symbol}” in the formula “${formula}” is not an element of the species data.`,
            why: 'Its combustion products would be missing.',
            mend: `The data cover ${Object.keys(atomicMasses).join(', ')}.`,
          },
        };
      }
      last = new Map([[symbol, 1]]);
    }
  }
  addLast(1);
  if (frames.length > 1) return refuse(`A bracket in the formula “${formula}” is not closed.`, mend);
  const atoms = [...frames[0]!].filter(([, count]) => count > 0);
  if (atoms.length === 0) return refuse(`The formula “${formula}” holds no atoms.`, mend);
  if (atoms.some(([, count]) => count > MOST_ATOMS))
    return refuse(`The formula “${formula}” counts more than a million atoms.`, mend);
  return { ok: true, value: Object.fromEntries(atoms) };
}

/** [kg/mol] of a formula's atoms. */
export function molarMassOf(elements: Readonly<Record<string, number>>): number {
  let sum = 0;
  for (const [element, count] of Object.entries(elements)) sum += count * atomicMasses[element]!;
  return sum / 1000;
}

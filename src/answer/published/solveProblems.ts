/** Why published rows settle nothing: each a problem with its numbers and a way on. */

import type { Problem } from '../../numerics/problem.ts';
import { show } from '../display.ts';
import type { PublishedBand } from './model.ts';

interface Named {
  readonly quantity: string;
  readonly words: string;
  readonly from: number;
  readonly to: number;
}

interface Asked {
  readonly words: string;
  readonly bands: readonly PublishedBand[];
}

const shown = (quantity: string, value: number): string => show(quantity, value).text;

export function bandWords(quantity: string, bands: readonly PublishedBand[]): string {
  return bands
    .map(({ low, high }) => {
      const [from, to] = [shown(quantity, low), shown(quantity, high)];
      return from === to ? from : `${from} to ${to}`;
    })
    .join(' or ');
}

export function nothingComputed(words: string, failure: Problem | null): Problem {
  return {
    code: 'published-nothing-computed',
    what: `No ${words} lets this engine be computed at all.${failure === null ? '' : ` ${failure.what}`}`,
    mend: failure?.mend ?? 'Mend the other inputs of the engine first.',
  };
}

export function noEffect(words: string): Problem {
  return {
    code: 'published-rows-without-effect',
    what: `None of the published rows depends on the ${words}.`,
    why: 'What they state comes out the same whatever it is.',
    mend: 'Add a row that does, such as a thrust or a specific impulse at a stated place, or solve for another input.',
  };
}

export function outOfReach({ words }: Named, row: string, reached: readonly number[]): Problem {
  const facts = { least: Math.min(...reached), greatest: Math.max(...reached) };
  return {
    code: 'published-out-of-reach',
    what: `No ${words} gives the published ${row}.`,
    why: 'Over the whole range the models stay on one side of it, or have no value there.',
    mend: 'Check that row against its source, or the inputs that are held: propellants, efficiency, size.',
    facts,
  };
}

export function disagreement({ quantity, words }: Named, rows: readonly Asked[]): Problem {
  const asks = rows.map((row) => `${row.words} asks for ${bandWords(quantity, row.bands)}`).join('; ');
  return {
    code: 'published-rows-disagree',
    what: `The published rows do not agree on one ${words}: ${asks}.`,
    why: 'With the other inputs as they are, no value meets them all within their ± and digits.',
    mend: 'Keep the rows you trust, widen their ±, or change another input.',
  };
}

export function severalValues({ quantity, words }: Named, bands: readonly PublishedBand[]): Problem {
  return {
    code: 'published-several-values',
    what: `More than one ${words} meets the published rows: ${bandWords(quantity, bands)}.`,
    mend: 'Add a row that tells them apart, such as the same quantity in vacuum.',
  };
}

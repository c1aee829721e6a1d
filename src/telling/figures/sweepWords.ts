/** Words that figures of sweeps and of maps share. */

import { quantity } from '../../answer/catalogue.ts';
import { showStated, unitFor } from '../../answer/display.ts';
import type { ToldOf, ToldRange } from '../../answer/sweeps/model.ts';
import { unitOf } from '../../answer/sweeps/shown.ts';

/** Numbers joined to the units that stand in a sweep, so that no line breaks between the two. */
export function joined(text: string, followed: readonly ToldOf[], ranges: readonly ToldRange[]): string {
  const symbols = [
    ...followed.map((told) => unitOf(told, [1e12]).symbol),
    ...ranges.map(({ quantity: name, to }) => unitFor(quantity(name), [to]).symbol),
  ];
  const parts = text.split(' ');
  const known = new Set(symbols.filter((symbol) => symbol !== ''));
  return parts.reduce((said, part, i) => {
    const isUnit = /\d$/u.test(parts[i - 1] ?? '') && known.has(part.replace(/[.,;:]$/u, ''));
    return i === 0 ? part : `${said}${isUnit ? '\u00a0' : ' '}${part}`;
  }, '');
}

/** What the study itself has of the inputs that move, where that is one value each. */
export function nowWords(ranges: readonly ToldRange[]): readonly string[] {
  const parts = ranges.flatMap(({ label, quantity: name, now }) => {
    const values = new Set(
      now.flatMap(({ value }) => (value === null ? [] : [showStated(name, value).text])),
    );
    return values.size === 1 ? [`${label} ${[...values].join()}`] : [];
  });
  return parts.length === 0 ? [] : [`In the study: ${parts.join(', ')}.`];
}

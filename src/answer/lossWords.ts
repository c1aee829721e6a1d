/** The loss budget in words and rounded numbers, as every face prints it. */

import { show } from './display.ts';
import type { LossBudget } from './model.ts';

export interface LossLine {
  readonly name: string;
  /** e.g. `−5.6 s` for a loss, `+3.4 s` for a gain */ readonly impulse: string;
  /** e.g. `−1.2 %` */ readonly share: string;
  /** e.g. `−1.4 to −0.96 %`; empty where no scatter is known */ readonly band: string;
  readonly source: string;
}

/** Line by line from ideal to delivered; the sign is that of the change. */
export function lossLines({ items }: LossBudget): readonly LossLine[] {
  return items.map(({ name, specificImpulse, share, low, high, source }) => ({
    name,
    impulse: signed(show('losses.items.specificImpulse', changeOf(specificImpulse), 2).text),
    share: signed(show('losses.items.share', changeOf(share)).text),
    band:
      low === high
        ? ''
        : `${show('losses.items.low', changeOf(high)).number} to ${show('losses.items.low', changeOf(low)).text}`,
    source,
  }));
}

export function idealText({ ideal }: LossBudget): string {
  return show('losses.ideal', ideal).text;
}

export function deliveredText({ delivered }: LossBudget): string {
  return show('losses.delivered', delivered).text;
}

/** What is lost counts positive in the budget; −0 is told as 0. */
function changeOf(lost: number): number {
  return lost === 0 ? 0 : -lost;
}

function signed(text: string): string {
  return /^[1-9]|^0\.0*[1-9]/.test(text) ? `+${text}` : text;
}

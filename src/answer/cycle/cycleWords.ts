import type { CycleKind } from '../../study/cycleForm.ts';

const WORDS: Readonly<Record<CycleKind, string>> = {
  pressureFed: 'pressed from the tanks',
  gasGenerator: 'gas generator',
  tapOff: 'tap-off',
  bleedExpander: 'bleed expander',
  stagedCombustion: 'staged combustion',
  closedExpander: 'closed expander',
  electricPump: 'electric pumps',
};

/** What the trade calls a cycle. */
export function cycleWords(kind: CycleKind): string {
  return WORDS[kind];
}

import { makeCutCase, runCutCase } from './cutCases.ts';

export interface CutReport {
  readonly cases: number;
  /** Held against every set of their lines. */ readonly small: number;
  readonly counts: Readonly<Record<string, number>>;
  /** Not settled to the last: a heavier cut may be there. */ readonly unsettled: number;
  readonly failures: readonly string[];
}

/** Every tenth script is too long for every set of its lines to be looked at. */
export function runCutCampaign(first: number, cases: number): CutReport {
  const counts: Record<string, number> = {};
  const failures: string[] = [];
  let [small, unsettled] = [0, 0];
  for (let seed = first; seed < first + cases; seed++) {
    const isSmall = seed % 10 !== 9;
    const one = makeCutCase(seed, isSmall ? { scenes: 4, lines: 3 } : { scenes: 12, lines: 8 });
    const { outcome, detail, short } = runCutCase(one, isSmall);
    counts[outcome] = (counts[outcome] ?? 0) + 1;
    if (isSmall) small += 1;
    if (short > 0) unsettled += 1;
    if (outcome === 'wrong') failures.push(`seed ${seed}: ${detail}`);
  }
  return { cases, small, counts, unsettled, failures };
}

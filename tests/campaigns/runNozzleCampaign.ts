import { makeNozzleCase, type NozzleGas, PHYSICAL_REASONS, runNozzleCase } from './nozzleCases.ts';

export interface NozzleReport {
  readonly cases: number;
  /** By family, then outcome. */ readonly counts: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** Cases that nature or the data allow. */ readonly inside: number;
  readonly solved: number;
  /** Seeds and words of everything that was neither solved nor has a physical reason. */
  readonly failures: readonly string[];
}

/**
 * Run `cases` seeds from `first` on. Any error that is not a typed one passes through and fails the run.
 * @param watch called after each case, e.g. to time it
 */
export function runNozzleCampaign(
  first: number,
  cases: number,
  gases: readonly NozzleGas[],
  watch: (seed: number) => void = () => {},
): NozzleReport {
  const counts: Record<string, Record<string, number>> = {};
  const failures: string[] = [];
  let solved = 0;
  let outside = 0;
  for (let seed = first; seed < first + cases; seed++) {
    const { family, outcome, detail } = runNozzleCase(makeNozzleCase(seed, gases));
    watch(seed);
    counts[family] ??= {};
    counts[family][outcome] = (counts[family][outcome] ?? 0) + 1;
    if (outcome === 'solved') solved++;
    else if (outcome in PHYSICAL_REASONS) outside++;
    else failures.push(`seed ${seed}: ${family}: ${outcome}: ${detail.slice(0, 260)}`);
  }
  return { cases, counts, inside: cases - outside, solved, failures };
}

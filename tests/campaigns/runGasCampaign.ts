import { type GasRows, makeGasCase, PHYSICAL_REASONS, runGasCase } from './gasCases.ts';

export interface CampaignReport {
  readonly cases: number;
  readonly stations: number;
  readonly counts: Readonly<Record<string, number>>;
  /** Cases that nature or the data allow. */ readonly inside: number;
  readonly solved: number;
  /** Seeds and words of everything that was neither solved nor has a physical reason. */
  readonly failures: readonly string[];
}

/** Run `cases` seeds from `first` on. Any error that is not a typed one passes through and fails the run. */
export function runGasCampaign(first: number, cases: number, rows: GasRows): CampaignReport {
  const counts: Record<string, number> = {};
  const failures: string[] = [];
  let stations = 0;
  for (let seed = first; seed < first + cases; seed++) {
    const verdict = runGasCase(makeGasCase(seed, rows), rows);
    counts[verdict.outcome] = (counts[verdict.outcome] ?? 0) + 1;
    stations += verdict.stations;
    if (verdict.outcome !== 'solved' && !(verdict.outcome in PHYSICAL_REASONS)) {
      failures.push(`seed ${seed}: ${verdict.outcome}: ${verdict.detail.slice(0, 160)}`);
    }
  }
  const outside = Object.keys(PHYSICAL_REASONS).reduce((sum, code) => sum + (counts[code] ?? 0), 0);
  return { cases, stations, counts, inside: cases - outside, solved: counts.solved ?? 0, failures };
}

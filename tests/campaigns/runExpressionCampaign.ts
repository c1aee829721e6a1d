import type { TestScope } from '../../src/answer/expression/index.ts';
import {
  EXPRESSION_FAMILIES,
  type ExpressionFamily,
  makeExpressionCase,
  runExpressionCase,
} from './expressionCases.ts';

export interface ExpressionReport {
  readonly cases: number;
  /** Outcomes by family: `decided` or the code of the typed problem. */
  readonly counts: Readonly<Record<ExpressionFamily, Readonly<Record<string, number>>>>;
  readonly decided: number;
  readonly refused: number;
  /** Seeds and words of everything that broke a law. */ readonly failures: readonly string[];
}

/** Run `cases` seeds from `first` on. */
export function runExpressionCampaign(
  first: number,
  cases: number,
  scope: TestScope,
  onCase: (seed: number) => void = () => undefined,
): ExpressionReport {
  const counts = Object.fromEntries(
    EXPRESSION_FAMILIES.map((family) => [family, {} as Record<string, number>]),
  ) as Record<ExpressionFamily, Record<string, number>>;
  const failures: string[] = [];
  for (let seed = first; seed < first + cases; seed++) {
    const { family, outcome, detail } = runExpressionCase(makeExpressionCase(seed, scope), scope);
    counts[family][outcome] = (counts[family][outcome] ?? 0) + 1;
    if (outcome.startsWith('wrong')) failures.push(`seed ${seed}: ${outcome}: ${detail.slice(0, 400)}`);
    onCase(seed);
  }
  const decided = EXPRESSION_FAMILIES.reduce((sum, family) => sum + (counts[family].decided ?? 0), 0);
  return { cases, counts, decided, refused: cases - decided - failures.length, failures };
}

/** How far computed values lie from a reference: one definition of error for every table. */

export type ErrorMeasure = 'relative' | 'absolute';

interface Record {
  count: number;
  sum: number;
  worst: number;
  worstCase: string;
}

/** Collects differences by quantity; tells count, mean, largest and the case of the largest. */
export class Accuracy {
  readonly #records = new Map<string, Record>();

  /** Not a number counts as infinitely wrong: a case without a value must not pass as agreement. */
  add(
    quantity: string,
    actual: number | null | undefined,
    expected: number,
    measure: ErrorMeasure,
    where: string,
  ) {
    const value = actual ?? Number.NaN;
    const difference = Math.abs(measure === 'relative' ? value / expected - 1 : value - expected);
    const error = Number.isNaN(difference) ? Number.POSITIVE_INFINITY : difference;
    const record = this.#records.get(quantity) ?? { count: 0, sum: 0, worst: -1, worstCase: '' };
    record.count += 1;
    record.sum += error;
    if (error > record.worst) {
      record.worst = error;
      record.worstCase = `${where}: ${value} against ${expected}`;
    }
    this.#records.set(quantity, record);
  }

  count(quantity: string): number {
    return this.#records.get(quantity)?.count ?? 0;
  }

  worst(quantity: string): number {
    return this.#records.get(quantity)?.worst ?? Number.POSITIVE_INFINITY;
  }

  worstCase(quantity: string): string {
    return this.#records.get(quantity)?.worstCase ?? 'no comparison was made';
  }

  /** A few lines for the console. */
  summary(title: string): string {
    const lines = [...this.#records].map(
      ([quantity, { count, sum, worst, worstCase }]) =>
        `  ${quantity.padEnd(34)} ${String(count).padStart(6)} compared   mean ${(sum / count).toExponential(1)}   largest ${worst.toExponential(1)}  (${worstCase})`,
    );
    return [title, ...lines].join('\n');
  }
}

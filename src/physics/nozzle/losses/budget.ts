/**
 * From ideal to delivered specific impulse in vacuum, item by item:
 *
 *   I_delivered = η (I_ideal − Σ I_nozzle items),   the last item being (1 − η)(I_ideal − Σ I_nozzle items)
 *
 * so that ideal − Σ items = delivered holds exactly. The efficiency η stands last because it acts on c*, hence on all of it.
 */

/** One line of the loss budget. */
export interface LossItem {
  /** In plain words, e.g. `friction on the wall`. */ readonly name: string;
  /** Of the ideal specific impulse [–]; what is lost counts positive. */ readonly share: number;
  /** Band of that share by the published scatter; equal to it where none is known. */ readonly low: number;
  readonly high: number;
  /** [s] of specific impulse in vacuum */ readonly specificImpulse: number;
  readonly source: string;
  /** Name of the model's error that its band stands for, the same for all engines; absent: it has none of its own. */
  readonly error?: string;
}

export interface LossSum {
  readonly share: number;
  readonly low: number;
  readonly high: number;
  /** [s] */ readonly specificImpulse: number;
}

/** A loss inside the nozzle, before the efficiency of the chamber. */
export interface NozzleLossItem {
  readonly name: string;
  /** [s] */ readonly specificImpulse: number;
  /** Ends of the band, as multiples of the value or as shares of the ideal. */
  readonly band: { readonly low: number; readonly high: number };
  readonly source: string;
  /** As of {@link LossItem}. */ readonly error?: string;
}

export interface Efficiency {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

export interface Budget {
  /** [s] */ readonly ideal: number;
  readonly items: readonly LossItem[];
  readonly sum: LossSum;
  /** [s] */ readonly delivered: number;
}

export function lossBudget(
  ideal: number,
  inNozzle: readonly NozzleLossItem[],
  efficiency: Efficiency,
): Budget {
  const items = inNozzle.map(
    ({ name, specificImpulse, band, source, error }): LossItem => ({
      name,
      share: specificImpulse / ideal,
      ...band,
      specificImpulse,
      source,
      ...(error !== undefined && { error }),
    }),
  );
  const left = ideal - items.reduce((total, item) => total + item.specificImpulse, 0);
  const unburnt = (value: number): number => ((1 - value) * left) / ideal;
  items.push({
    name: 'incomplete combustion',
    share: unburnt(efficiency.value),
    low: unburnt(efficiency.high),
    high: unburnt(efficiency.low),
    specificImpulse: (1 - efficiency.value) * left,
    source: efficiency.source,
  });
  const total = (pick: (item: LossItem) => number): number =>
    items.reduce((sum, item) => sum + pick(item), 0);
  const lost = total((item) => item.specificImpulse);
  return {
    ideal,
    items,
    sum: {
      share: total(({ share }) => share),
      low: total(({ low }) => low),
      high: total(({ high }) => high),
      specificImpulse: lost,
    },
    delivered: ideal - lost,
  };
}

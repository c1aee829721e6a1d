import { basePressureRatioKorst, type FlowAtCut } from './wakeTheory.ts';

export type Wake = 'open' | 'closed';

/** Base pressure of a cut plug by one published model. */
export interface BaseEstimate {
  readonly model: string;
  /** [Pa] */ readonly pressure: number;
}

export interface BasePressure {
  readonly wake: Wake;
  /** [Pa] value taken for the thrust */ readonly pressure: number;
  /** [Pa] band over the models */ readonly low: number;
  readonly high: number;
  readonly estimates: readonly BaseEstimate[];
}

/** Closed-wake base pressure by every model; none above the wall's own at the cut. */
export interface ClosedWake {
  /** [Pa] value taken: the middle one */ readonly pressure: number;
  readonly estimates: readonly BaseEstimate[];
}

/**
 * Base pressure over wall pressure at the cut [–], a fit to cold-flow tests.
 *
 *   p_b/p_w = 0.025 + 0.906 / (1 + (γ − 1)/2 · M²)
 *
 * Source: B. Fick & R. Schmucker, AIAA 95-2694, 1995 (form and numbers from memory; low confidence).
 */
export function basePressureRatioFickSchmucker(mach: number, gamma: number): number {
  return 0.025 + 0.906 / (1 + ((gamma - 1) / 2) * mach * mach);
}

/**
 * Base pressure over wall pressure at the cut [–]:  0.846 / M^1.3
 *
 * Source: a fit quoted in the literature on plugs, its author not confirmed (from memory; low confidence).
 */
export function basePressureRatioByMachAlone(mach: number): number {
  return 0.846 / mach ** 1.3;
}

/**
 * All models at one cut.
 *
 * Two bounds hold for each: no more than the wall's own pressure, and no more than `most`, with which the whole engine would
 * push like the ideal nozzle of its area ratio. The second one is reached where less than about 8 % of the plug is kept: the
 * models were not made for walls that point inward by 30° and more.
 *
 * @param wallPressure p_w at the cut [Pa]
 * @param most [Pa]
 */
export function closedWake(cut: FlowAtCut, wallPressure: number, most: number): ClosedWake {
  const estimate = (model: string, ratio: number): BaseEstimate => ({
    model,
    pressure: Math.min(wallPressure * Math.min(1, ratio), most),
  });
  const estimates = [
    estimate('Korst 1956', basePressureRatioKorst(cut)),
    estimate('Fick & Schmucker 1995', basePressureRatioFickSchmucker(cut.mach, cut.gamma)),
    estimate('fit 0.846/M^1.3', basePressureRatioByMachAlone(cut.mach)),
  ];
  const sorted = estimates.map(({ pressure }) => pressure).sort((a, b) => a - b);
  // Where little of the plug is left the models go up to their bound; the value then stays halfway down to the lowest, in ratio.
  const halfway = Math.sqrt(sorted[0]! * Math.min(wallPressure, most));
  return { pressure: Math.min(sorted[1]!, halfway), estimates };
}

/**
 * How far below ambient an open wake may lie [–]: 10 %. The sources say "close to ambient" (M. Onofri et al., AIAA 2002-0584,
 * from its summary); the figure is an own reading, no source.
 */
const OPEN_WAKE_LOW = 0.9;

/**
 * Base pressure at an ambient pressure p_a [Pa].
 *
 *   open wake    p_b = p_a                       while p_a > p_b,closed
 *   closed wake  p_b = p_b,closed                whatever p_a
 *
 * The wake closes where the ambient pressure has fallen to what the closed wake holds by itself; each model of the closed
 * wake has its own transition, so the band is that of max(p_a, p_b,closed) over the models.
 */
export function basePressure(closed: ClosedWake, ambientPressure: number): BasePressure {
  const estimates = closed.estimates.map(({ model, pressure }) => ({
    model,
    pressure: Math.max(pressure, ambientPressure),
  }));
  const wake: Wake = ambientPressure > closed.pressure ? 'open' : 'closed';
  const lows = closed.estimates.map(({ pressure }) => Math.max(pressure, OPEN_WAKE_LOW * ambientPressure));
  return {
    wake,
    pressure: Math.max(closed.pressure, ambientPressure),
    low: Math.min(...lows),
    high: Math.max(...estimates.map(({ pressure }) => pressure)),
    estimates,
  };
}

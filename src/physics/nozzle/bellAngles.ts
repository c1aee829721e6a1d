import { ProblemError } from '../../numerics/problem.ts';

/**
 * Wall angles of thrust-optimised parabolas, by area ratio and length.
 *
 * Source: G. V. R. Rao, "Approximation of Optimum Thrust Nozzle Contour", ARS Journal 30(6), 1960, p. 561; the chart
 * reprinted in D. K. Huzel, D. H. Huang, NASA SP-125, 2nd ed., 1971 (fig. 4-16) and in NASA SP-8120, 1976.
 */
export interface BellAngleRow {
  /** A_e/A_t [–] */ readonly areaRatio: number;
  /** share of the 15° cone's length [–] */ readonly length: number;
  /** θ_n behind the throat [°] */ readonly throatAngleDeg: number;
  /** θ_e at the lip [°] */ readonly lipAngleDeg: number;
  /** How the numbers were got. */ readonly mark: 'from memory of the chart, ±1.5°';
}

const MARK = 'from memory of the chart, ±1.5°';

/** By area ratio, then length; every area ratio has every length. */
export const BELL_ANGLES: readonly BellAngleRow[] = [
  { areaRatio: 5, length: 0.6, throatAngleDeg: 28, lipAngleDeg: 20, mark: MARK },
  { areaRatio: 5, length: 0.8, throatAngleDeg: 23, lipAngleDeg: 13, mark: MARK },
  { areaRatio: 5, length: 0.9, throatAngleDeg: 21, lipAngleDeg: 10.5, mark: MARK },
  { areaRatio: 10, length: 0.6, throatAngleDeg: 32, lipAngleDeg: 16, mark: MARK },
  { areaRatio: 10, length: 0.8, throatAngleDeg: 26, lipAngleDeg: 11, mark: MARK },
  { areaRatio: 10, length: 0.9, throatAngleDeg: 24, lipAngleDeg: 8.5, mark: MARK },
  { areaRatio: 20, length: 0.6, throatAngleDeg: 35, lipAngleDeg: 14.5, mark: MARK },
  { areaRatio: 20, length: 0.8, throatAngleDeg: 29, lipAngleDeg: 9, mark: MARK },
  { areaRatio: 20, length: 0.9, throatAngleDeg: 27, lipAngleDeg: 7, mark: MARK },
  { areaRatio: 30, length: 0.6, throatAngleDeg: 36, lipAngleDeg: 14, mark: MARK },
  { areaRatio: 30, length: 0.8, throatAngleDeg: 30, lipAngleDeg: 8.5, mark: MARK },
  { areaRatio: 30, length: 0.9, throatAngleDeg: 28.5, lipAngleDeg: 6.5, mark: MARK },
  { areaRatio: 50, length: 0.6, throatAngleDeg: 37.5, lipAngleDeg: 13, mark: MARK },
  { areaRatio: 50, length: 0.8, throatAngleDeg: 32, lipAngleDeg: 7.5, mark: MARK },
  { areaRatio: 50, length: 0.9, throatAngleDeg: 30, lipAngleDeg: 6, mark: MARK },
  { areaRatio: 100, length: 0.6, throatAngleDeg: 39.5, lipAngleDeg: 11.5, mark: MARK },
  { areaRatio: 100, length: 0.8, throatAngleDeg: 33.5, lipAngleDeg: 7, mark: MARK },
  { areaRatio: 100, length: 0.9, throatAngleDeg: 32, lipAngleDeg: 5.5, mark: MARK },
];

/** Ranges of the chart as used here; lengths above 0.9 continue the curve through 0.6, 0.8, 0.9. */
export const BELL_CHART = {
  lowestAreaRatio: 5,
  highestAreaRatio: 100,
  shortest: 0.6,
  longest: 1,
  drawnTo: 0.9,
};

export interface BellAngles {
  /** θ_n [rad] */ readonly throatAngle: number;
  /** θ_e [rad] */ readonly lipAngle: number;
}

/**
 * Wall angles [rad] behind the throat and at the lip, from the chart.
 *
 * Between area ratios: linear in ln ε. Between lengths: the quadratic through the chart's 60, 80 and 90 % curves, which
 * also carries on to 100 %.
 *
 * @param areaRatio ε [–], 5 … 100
 * @param length share of the 15° cone's length [–], 0.6 … 1
 * @throws ProblemError `bell-angles-not-charted` outside that range
 * Limits: ±1.5°; the chart is for one γ and used for all common propellants, on which it depends weakly.
 * Check: ε = 50, 80 % → 32°, 7.5°.
 */
export function bellAnglesFromChart(areaRatio: number, length: number): BellAngles {
  const { lowestAreaRatio, highestAreaRatio, shortest, longest } = BELL_CHART;
  if (!(areaRatio >= lowestAreaRatio && areaRatio <= highestAreaRatio)) {
    throw notCharted('area ratio', areaRatio, lowestAreaRatio, highestAreaRatio);
  }
  if (!(length >= shortest && length <= longest)) {
    throw notCharted('length', length, shortest, longest);
  }
  return {
    throatAngle: radians(charted(areaRatio, length, (row) => row.throatAngleDeg)),
    lipAngle: radians(charted(areaRatio, length, (row) => row.lipAngleDeg)),
  };
}

function charted(areaRatio: number, length: number, angle: (row: BellAngleRow) => number): number {
  const lengths = [...new Set(BELL_ANGLES.map((row) => row.length))];
  const atLengths = lengths.map((l) =>
    alongAreaRatio(
      BELL_ANGLES.filter((row) => row.length === l),
      areaRatio,
      angle,
    ),
  );
  return lengths.reduce((sum, l, i) => {
    const weight = lengths.reduce((w, other, j) => (j === i ? w : (w * (length - other)) / (l - other)), 1);
    return sum + weight * atLengths[i]!;
  }, 0);
}

function alongAreaRatio(
  rows: readonly BellAngleRow[],
  areaRatio: number,
  angle: (row: BellAngleRow) => number,
): number {
  let i = 0;
  while (i < rows.length - 2 && areaRatio > rows[i + 1]!.areaRatio) i++;
  const low = rows[i]!;
  const high = rows[i + 1]!;
  const share = Math.log(areaRatio / low.areaRatio) / Math.log(high.areaRatio / low.areaRatio);
  return angle(low) + share * (angle(high) - angle(low));
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

function notCharted(which: string, value: number, low: number, high: number): ProblemError {
  return new ProblemError({
    code: 'bell-angles-not-charted',
    what: `The chart of bell angles covers a ${which} of ${low} to ${high}, not ${value}.`,
    why: 'Beyond the published curves there is no source for the wall angles.',
    mend: 'State both wall angles, behind the throat and at the lip, or choose a value inside the chart.',
    where: which === 'length' ? 'nozzle.length' : 'nozzle.areaRatio',
    facts: { value, low, high },
  });
}

/** Published bands of the losses that this program does not compute, as shares of the ideal specific impulse. */

export interface LossBand {
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

const SPLIT =
  'loss split of large upper-stage engines, G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed. (from memory)';

/** The chemistry cannot keep up: by what burns. */
export const KINETICS_BANDS = {
  hydrogen: { low: 0.001, high: 0.01, source: `hydrogen with oxygen: ${SPLIT}` },
  carbon: {
    low: 0.005,
    high: 0.02,
    source: 'kerosene, and for want of others every fuel with carbon (from memory)',
  },
  other: {
    low: 0.001,
    high: 0.02,
    source: 'the bands of hydrogen and kerosene together, since no other was found (from memory)',
  },
} as const satisfies Record<string, LossBand>;

/**
 * Unmixed and unburnt propellant: what the chamber falls short of complete combustion.
 * A measured c* efficiency of 96 to 99 % (well-developed engines, from memory) holds the slow chemistry ahead of the throat
 * and the friction there too; here those have items of their own, so that the narrower band of energy release is taken.
 */
export const ENERGY_RELEASE_BAND: LossBand = { low: 0.005, high: 0.02, source: `energy release: ${SPLIT}` };

/** Share of the characteristic velocity reached where the study states none: the middle of that band. */
export const USUAL_EFFICIENCY = 1 - (ENERGY_RELEASE_BAND.low + ENERGY_RELEASE_BAND.high) / 2;

/** Scatter of a computed wall layer, as a share of its loss. */
export const LAYER_SCATTER: LossBand = {
  low: 0.8,
  high: 1.2,
  source:
    'momentum integral; ±20 %: friction on plates scatters by 10 % (E. J. Hopkins, M. Inouye, AIAA J. 9(6), 1971, from memory), as much again for acceleration and the supposed wall temperature (common practice, no source)',
};

/** What regenerative cooling gives back, a gain. */
export const COOLANT_GAIN: LossBand = {
  low: 0.001,
  high: 0.015,
  source:
    'at most 1.5 % (regenerative cooling raises the specific impulse by 0.1 to 1.5 %, G. P. Sutton, O. Biblarz, 7th ed., ch. 8, from memory)',
};

/** [K] of the gas side of a cooled metal wall, supposed; common practice, no source. */
export const USUAL_WALL_TEMPERATURE = 800;

/** How one model's published error moves what the figures of an engine are made of. */

/** Effect of an error at one end of its band, all else at its best value. */
export interface ErrorEffect {
  /** Added to the delivered thrust coefficient [–]. */ readonly coefficient: number;
  /** Times the chamber's efficiency [–]; 1: not moved. */ readonly efficiency: number;
}

/** One model's error, at the lower and at the upper end of its band. */
export interface ModelError {
  /** The same for all engines that use the same model. */ readonly name: string;
  readonly source: string;
  readonly low: ErrorEffect;
  readonly high: ErrorEffect;
}

/** What an error makes of the throat's area where the size hangs on a thrust: a factor at either end [–]. */
export interface SizeError {
  readonly name: string;
  readonly source: string;
  readonly low: number;
  readonly high: number;
}

export const ERROR_NAMES = {
  friction: 'friction on the wall',
  bartz: 'heat to the wall by Bartz',
  returned: 'heat that the coolant brings back',
  drops: 'alumina drops that lag',
  energyRelease: 'energy release',
  basePressure: 'base pressure of a plug',
  modules: 'loss between modules',
  slipstream: 'slipstream round a plug',
  generatorGas: 'gas of a fuel-rich burner',
  tankShape: 'shape of the tanks',
  engineMass: 'relations for the mass of engines',
  deadAir: 'pressure behind the separation',
} as const;

import type { PlugModules } from './modules.ts';

/** What a plug nozzle is asked to be. */
export interface PlugSpec {
  readonly kind: 'plug';
  readonly form: 'annular' | 'linear';
  /** Exit area up to the lip, base included, over throat area [–]. */ readonly areaRatio: number;
  /** Share of the whole plug's length behind the lip's first ray that is kept [–], 0…1. */ readonly kept: number;
  /** Mach number at the lip before its fan; 1: purely external; absent: by `usualInnerNu`. */
  readonly innerMach?: number;
  /** Width over height lip to lip [–], linear only; absent: 2. */ readonly aspectRatio?: number;
  /** A ring of small nozzles; absent: one throat all round. */ readonly modules?: PlugModules;
}

import type { NozzleSpec } from '../physics/nozzle/index.ts';

/** Ideal and adapting nozzles are bounds without a wall of their own. */
export function hasWall({ kind }: NozzleSpec): boolean {
  return kind !== 'ideal' && kind !== 'adapting';
}

import type { Expansion } from '../gas/flow.ts';
import { requireAreaRatio } from './areaRatio.ts';
import { fixedNozzle } from './fixedNozzle.ts';
import type { NozzleModel, NozzleSpec } from './model.ts';

/**
 * One-dimensional nozzle without losses: uniform, parallel exit flow at the given area ratio.
 *
 * Its thrust is given at any ambient pressure up to the choked throat's: the model ignores separation and
 * only the verdict tells of it.
 *
 * @throws ProblemError when the area ratio is outside its range or beyond what the gas model reaches
 * Source: G. P. Sutton, O. Biblarz, Rocket Propulsion Elements, 7th ed., 2001, ch. 3.
 */
export function idealNozzle(spec: NozzleSpec & { kind: 'ideal' }, expansion: Expansion): NozzleModel {
  requireAreaRatio(spec.areaRatio);
  return fixedNozzle(
    {
      spec,
      wall: null,
      divergenceWithoutField: 1,
      lossless: true,
      ignoresSeparation: true,
      omitted: [
        'Divergence of the exit flow: it leaves parallel to the axis.',
        'Flow that leaves the wall: the thrust is that of full flow even where the verdict says separated.',
      ],
      models: ['nozzle-ideal', 'nozzle-thrust', 'nozzle-separation'],
    },
    expansion,
  );
}

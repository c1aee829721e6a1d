import type { Expansion } from '../gas/flow.ts';
import { adaptingNozzle } from './adaptingNozzle.ts';
import { bellNozzle } from './bellNozzle.ts';
import { insertNozzle } from './changing/insertNozzle.ts';
import { skirtNozzle } from './changing/skirtNozzle.ts';
import { coneNozzle } from './coneNozzle.ts';
import { dualBellNozzle } from './dualBell/dualBellNozzle.ts';
import { expansionDeflectionNozzle } from './expansionDeflection/expansionDeflectionNozzle.ts';
import { idealBellNozzle } from './idealBell/idealBellNozzle.ts';
import { idealNozzle } from './idealNozzle.ts';
import type { NozzleLosses, NozzleModel, NozzleSpec } from './model.ts';
import { plugNozzle } from './plug/plugNozzle.ts';

/** The model that a spec asks for, on a given gas. */
export function nozzleModel(
  spec: NozzleSpec,
  expansion: Expansion,
  losses: NozzleLosses = 'default',
): NozzleModel {
  switch (spec.kind) {
    case 'ideal':
      return idealNozzle(spec, expansion);
    case 'cone':
      return coneNozzle(spec, expansion, losses);
    case 'bell':
      return bellNozzle(spec, expansion, losses);
    case 'idealBell':
      return idealBellNozzle(spec, expansion, losses);
    case 'adapting':
      return adaptingNozzle(spec, expansion);
    case 'plug':
      return plugNozzle(spec, expansion, losses);
    case 'extendableSkirt':
      return skirtNozzle(spec, expansion, losses);
    case 'insert':
      return insertNozzle(spec, expansion, losses);
    case 'dualBell':
      return dualBellNozzle(spec, expansion, losses);
    case 'expansionDeflection':
      return expansionDeflectionNozzle(spec, expansion, losses);
  }
}

/** The numbers of an engine that the pages of a package print, with their names in the catalogue. */

import type { EngineAnswer } from '../../answer/model.ts';

export function engineRows(engine: EngineAnswer): readonly (readonly [string, number | null])[] {
  return [
    ['vacuum.thrust', engine.vacuum.thrust],
    ['vacuum.specificImpulse', engine.vacuum.specificImpulse],
    ['seaLevel.thrust', engine.seaLevel.thrust],
    ['seaLevel.specificImpulse', engine.seaLevel.specificImpulse],
    ['massFlow', engine.massFlow],
    ['chamber.pressure', engine.chamber.pressure],
    ['chamber.temperature', engine.chamber.temperature],
    ['characteristicVelocity', engine.characteristicVelocity],
    ['areaRatio', engine.areaRatio],
    ['throat.diameter', engine.throat.diameter],
    ['exit.diameter', engine.exit.diameter],
    ['exit.pressure', engine.exit.pressure],
  ];
}

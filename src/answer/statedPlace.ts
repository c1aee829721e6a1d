import { airAtGeometricAltitude } from '../physics/air/index.ts';
import type { Ambient } from '../study/model.ts';

/** Ambient pressure [Pa] of a stated place. */
export function pressureOf(ambient: Ambient): number {
  switch (ambient.kind) {
    case 'vacuum':
      return 0;
    case 'altitude':
      return airAtGeometricAltitude(ambient.altitude.value).pressure;
    case 'pressure':
      return ambient.pressure.value;
  }
}

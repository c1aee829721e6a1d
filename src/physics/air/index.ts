export {
  type Air,
  airAtGeometricAltitude,
  airAtGeopotentialAltitude,
  geometricAltitudeAtPressure,
} from './air.ts';
export {
  type AmbientCondition,
  ambientAtGeometricAltitude,
  requireAmbientPressure,
  stillAmbient,
} from './ambient.ts';
export { geometricFromGeopotential, geopotentialFromGeometric, gravityAt } from './geopotential.ts';
export { HIGHEST_ALTITUDE, LOWEST_ALTITUDE } from './standard.ts';

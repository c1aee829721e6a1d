export { type AscentOptions, flyAscent } from './ascent.ts';
export { baseDragCoefficient, bodyDragCoefficient, slenderDrag } from './drag.ts';
export {
  circularSpeed,
  EARTH_GRAVITATIONAL_PARAMETER,
  EARTH_RADIUS,
  EARTH_ROTATION,
  perigeeSpeed,
} from './earth.ts';
export type * from './model.ts';
export { mostToOrbit, payloadAt, type ToOrbit } from './toOrbit.ts';

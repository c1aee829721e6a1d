export { type AscentOptions, flyAscent } from './ascent.ts';
export { baseDragCoefficient, bodyDragCoefficient, slenderDrag } from './drag.ts';
export { EARTH, EARTH_ROTATION, perigeeSpeed } from './earth.ts';
export type * from './model.ts';
export { mostToOrbit, payloadAt, type ToOrbit } from './toOrbit.ts';

export { type AscentOptions, flyAscent } from './ascent.ts';
export { mostToOrbit } from './bestBend.ts';
export { baseDragCoefficient, bodyDragCoefficient, slenderDrag } from './drag.ts';
export { EARTH, EARTH_ROTATION, perigeeSpeed } from './earth.ts';
export { chanceOfSuccess, type EngineCluster, thrustShareLeft } from './engineOut.ts';
export type * from './model.ts';
export { noThrust, type ThrustOrWhy, tabulatedThrust } from './thrustTable.ts';
export { payloadAt, type ToOrbit } from './toOrbit.ts';

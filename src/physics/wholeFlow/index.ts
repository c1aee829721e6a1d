/** Engines with the air round them as fields: meshes that follow the walls, gases from the study, steady states. */

export { atWall } from './atWall.ts';
export { type Averages, averagesFor, type BlockFlow } from './averages.ts';
export { type AxisShock, axisShocks, firstCell, mainShock } from './axisMarks.ts';
export type { Beginning } from './carried.ts';
export { type ChamberLevel, feedOf, inletPressureOf } from './chamberLevel.ts';
export {
  type DeflectedFlow,
  type DeflectedPushes,
  deflectedFlow,
  filledByJetOf,
  massLeavingDeflected,
  pushesOfDeflected,
  sizeOfDeflected,
  thrustOfDeflected,
} from './deflectedEngine.ts';
export { WAKE_OF_PINTLE } from './deflectedMesh.ts';
export { type DeflectedEngine, type PreparedDeflected, prepareDeflected } from './deflectedShape.ts';
export { type ExhaustGas, expansionGas } from './expansionGas.ts';
export type { FarAir, FieldGases } from './fieldGases.ts';
export { type FieldReader, type FieldValue, fieldReader, placeIn } from './fieldPlaces.ts';
export { beginningOf, middleIn, type PictureBlock, pictureOf } from './flowPicture.ts';
export { inTime } from './inTime.ts';
export {
  type PlugFlow,
  type PlugPushes,
  plugFlow,
  pushesOfPlug,
  sizeOfPlug,
  thrustOfPlug,
} from './plugEngine.ts';
export { BESIDE_COWL, RING, ROUND_PLUG, WAKE } from './plugMesh.ts';
export { type PlugEngine, type PreparedPlug, preparePlug } from './plugShape.ts';
export {
  axisPressure,
  type PreparedEngine,
  prepareRound,
  type RoundCase,
  type RoundEngine,
  type RoundFlow,
  roundFlow,
  roundSize,
  thrustOf,
} from './roundEngine.ts';
export { BEHIND, BESIDE, type JetRoom, type MeshSize, NOZZLE } from './roundMesh.ts';
export { NotSettled, type Settled, type SettleOptions, settle, settleOn } from './settle.ts';
export { type Streamline, streamlines } from './streamlines.ts';

export { frontAlong } from './front.ts';
export { lossyTable } from './lossyTable.ts';
export {
  carriedBy,
  type KeptFronts,
  marchTubes,
  type SideSamples,
  type TubeMarch,
  type TubeMarchRun,
} from './march.ts';
export { type Boundary, pressureBoundary, wallBoundary } from './step.ts';
export { nuOfSpeed, speedAtPressure, type TubeGas, type TubeState, tubeGas, tubeStateAt } from './tubeGas.ts';
export { newFront, type TubeFront } from './tubes.ts';
export { type WallLine, wallLine } from './wallLine.ts';

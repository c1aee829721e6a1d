/** Two-dimensional flow of a gas without friction, flat or round, by finite volumes, in time or to a steady state. */

export { type Flow, type FlowSetup, newFlow } from './advance.ts';
export { type ApartFlow, apartFlow } from './apart/apartFlow.ts';
export type { SharpCorner } from './corners.ts';
export { type EvenAxis, type EvenTable, evenTable } from './evenTable.ts';
export { type Field, type FlowPoint, type GasPair, middleOf, soundSpeedAt } from './field.ts';
export { type FieldGas, mixedTangent, perfectFieldGas, type Tangent, tabledFieldGas } from './fieldGas.ts';
export { type GpuFlow, gpuFlow } from './gpu/gpuFlow.ts';
export { type FlowKernel, flowKernel } from './kernel/flowKernel.ts';
export { isThreadLost } from './kernel/sharedOrders.ts';
export { type HandWork, type StepTeam, workAsHand } from './kernel/stepTeam.ts';
export { cellAt, type MeshBlock, type MeshSymmetry, meshBlock } from './mesh.ts';
export type { SideFlow } from './sideFlow.ts';
export type { SideName } from './sideGeometry.ts';
export type { SideKind, SidePart } from './sides.ts';

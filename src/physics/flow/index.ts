export { type CarriedFlow, flowAcross } from './axialFlow.ts';
export {
  nuAtMach,
  nuAtPressure,
  type SupersonicTable,
  type TableState,
  tableStateAt,
  tabulateSupersonic,
} from './gasTable.ts';
export type { CharacteristicNet } from './net.ts';
export type { Symmetry } from './points.ts';
export { nuAtSpeed, type ThroatGas, throatCharacteristic } from './startLine.ts';
export { dischargeCoefficient, throatVelocity } from './transonicThroat.ts';
export { type InternalShock, type MarchedFlow, marchAlongWall, type WallPoint } from './wallMarch.ts';

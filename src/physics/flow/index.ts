export { type CarriedFlow, flowAcross } from './axialFlow.ts';
export { marchFan } from './centredFan.ts';
export {
  nuAtMach,
  nuAtPressure,
  type SupersonicTable,
  type TableState,
  tableStateAt,
  tabulateSupersonic,
} from './gasTable.ts';
export { completeLine, type InternalShock, type March } from './lineMarch.ts';
export { CharacteristicNet } from './net.ts';
export { NODE, type Symmetry, setNodeInto } from './points.ts';
export { type ThroatGas, throatCharacteristic } from './startLine.ts';
export { nuAtSpeed } from './tableInverse.ts';
export { dischargeCoefficient, throatVelocity } from './transonicThroat.ts';
export { type ShapedWallPoint, turnToAxial } from './turnToAxial.ts';
export { type MarchedFlow, marchAlongWall, type WallPoint } from './wallMarch.ts';

export { cellLengthOverDiameter, fullyExpandedJet, NEARLY_MATCHED } from './cellLength.ts';
export { greatestTurnIntoVacuumPerfect } from './lipTurn.ts';
export { DISK_ONSET, machDiskOfNozzle, machDiskOfOrifice, ORIFICE_RANGE } from './machDisk.ts';
export type {
  FullyExpanded,
  Given,
  JetOutline,
  JetPoint,
  JetRegime,
  LipTurn,
  Plume,
  ShockMeeting,
} from './model.ts';
export { type PlumeSource, plumeSource } from './plume.ts';

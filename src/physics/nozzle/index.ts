export { adaptingNozzle } from './adaptingNozzle.ts';
export { requireAreaRatio } from './areaRatio.ts';
export {
  BELL_ANGLES,
  BELL_CHART,
  type BellAngleRow,
  type BellAngles,
  bellAnglesFromChart,
} from './bellAngles.ts';
export { bellNozzle, divergenceFactorOfBell } from './bellNozzle.ts';
export { bellAnglesOf, halfAngleOfSameLength, referenceConeLength } from './bellShape.ts';
export {
  CHARACTERISTIC_LENGTHS,
  type CharacteristicLengthRow,
  DEFAULT_CONTRACTION_RATIO,
  defaultChamberShape,
  usualContractionRatio,
} from './chamberDefaults.ts';
export { type ChamberPush, chamberPush } from './chamberFlow.ts';
export { chamberParts } from './chamberParts.ts';
export { coneNozzle, divergenceFactorOfCone } from './coneNozzle.ts';
export { chamberAndNozzleContour, contourWith } from './contour.ts';
export { NECK_SHARE } from './expansionDeflection/deflectedFlow.ts';
export { deflectionWallStates } from './expansionDeflection/deflectionWall.ts';
export { idealNozzle } from './idealNozzle.ts';
export type {
  ChamberShape,
  Contour,
  ContourBody,
  ContourPoint,
  FieldBalance,
  FlowRegime,
  FlowVerdict,
  LeavingFlow,
  ModeChange,
  NozzleMode,
  NozzleModel,
  NozzleSpec,
  ThrustAt,
  ThrustPart,
  WallStation,
} from './model.ts';
export { CHAMBER_SURFACE } from './model.ts';
export { nozzleModel } from './nozzleModel.ts';
export { type PlugChamberPush, plugChamberParts, plugChamberPush } from './plug/plugChamber.ts';
export { type FieldLines, plugFieldLines } from './plug/plugField.ts';
export { type PlugNozzle, plugOf } from './plug/plugNozzle.ts';
export { ductAreaRatios, plugWallStates } from './plug/plugWallStates.ts';
export { strongestAgainstOnset } from './plug/recompressionOnset.ts';
export { feltAmbient, machOnTheWayUp } from './plug/slipstream.ts';
export { straightRayDeparture, straightRayWall } from './plug/straightRays.ts';
export { PLATEAU, pushOfDeadAir } from './separation/behindSeparation.ts';
export {
  KALT_BADAL,
  SCHILLING_CONE,
  SCHILLING_CONTOURED,
  SEPARATION_PRESSURE_RATIO_SUMMERFIELD,
  separationPressureRatioPower,
  separationPressureRatioSchmucker,
  separationPressureRatioStark,
  separationPressureRatioZukoski,
} from './separation/formulas.ts';
export type {
  CriterionAt,
  CriterionId,
  FlowCase,
  FullThrottle,
  GainByCriterion,
  OffDesign,
  SeparationAt,
  Span,
  ThrottlePoint,
  WallPlace,
  WallSeparation,
} from './separation/model.ts';
export { separationPressureRatioShockMach } from './separation/shockMachRatio.ts';
export { type FullThrust, thrustAttached, thrustOffDesign } from './separation/thrustOffDesign.ts';
export { type SeparatingWall, wallSeparation } from './separation/wallSeparation.ts';
export { type NozzleSize, throatAreaFor } from './size.ts';
export { thrustCoefficientOf } from './thrustCoefficient.ts';
export { type WallState, wallStates } from './wallStates.ts';

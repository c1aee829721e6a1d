import type { ConditionRow, ThrustFigures } from './model.ts';

/** What a condition says of the thrust, without its field and its words. */
export function thrustFiguresOf({
  thrustCoefficient,
  specificImpulse,
  thrust,
  thrustIfFull,
}: ConditionRow): ThrustFigures {
  return { thrustCoefficient, specificImpulse, thrust, thrustIfFull };
}

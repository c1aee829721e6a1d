/** What is told of the vehicles of a study. SI. */

import type { Problem } from '../../numerics/problem.ts';
import type { ComparedQuantity } from '../comparedQuantity.ts';

/** Names in the catalogue without their `flight.`; absent: it does not apply to this vehicle. */
export type FlightNumber =
  | 'payload'
  | 'massToOrbit'
  | 'highestPoint'
  | 'bend'
  | 'enginesMass'
  | 'liftoffMass'
  | 'liftoffThrust'
  | 'liftoffThrustToWeight'
  | 'maxDynamicPressure'
  | 'maxDynamicPressureMach'
  | 'maxDynamicPressureAltitude'
  | 'maxAcceleration'
  | 'meanSpecificImpulse'
  | 'halfPropellantAltitude'
  | 'firstStageTime'
  | 'firstStageEndAltitude'
  | 'firstStageEndSpeed'
  | 'idealVelocity'
  | 'gravityLoss'
  | 'dragLoss'
  | 'steeringLoss'
  | 'backPressureLoss'
  | 'speedGained'
  | 'speedFromRotation'
  | 'budgetRest'
  | 'thrustLeftOneOut'
  | 'thrustToWeightOneOut'
  | 'unburntOneOut'
  | 'chanceOfSuccess';

export type FlightNumbers = Readonly<Partial<Record<FlightNumber, number>>>;

/** One moment of the flight. */
export interface FlightPointAnswer {
  readonly time: number;
  readonly altitude: number;
  readonly downrange: number;
  readonly speed: number;
  readonly pathAngle: number;
  readonly mass: number;
  readonly thrust: number;
  readonly throttle: number;
  readonly dynamicPressure: number;
  /** Absent where the air has no speed of sound. */ readonly mach?: number;
}

/** What may be asked at one moment; names in the catalogue without their `flight.points.`. */
export type MomentNumber = Exclude<keyof FlightPointAnswer, 'time'>;

export type FlightAnswer = FlightNumbers & {
  /** Id and name of the engine of the first stage. */ readonly engine: string;
  readonly engineName: string;
  /** The way up, thinned out. */ readonly points: readonly FlightPointAnswer[];
  /** Limits that could not be kept, and what else there is to know. */ readonly notes: readonly string[];
};

export interface VehicleComparison {
  /** Engine of the first stage: the vehicle's own, and the other. */
  readonly base: string;
  readonly other: string;
  /** What is the same on both sides, in words. */ readonly held: string;
  readonly rows: readonly ComparedQuantity[];
  readonly words: string;
}

export interface VehicleAnswer {
  readonly id: string;
  readonly name: string;
  /** One line of plain facts. */ readonly description: string;
  /** One sentence: what it carries, or how high it rises. */ readonly words: string;
  /** Null: it does not fly; `problem` says why. */ readonly own: FlightAnswer | null;
  readonly problem: Problem | null;
  /** With the other engine of the comparison in its first stage; absent: its own engine is not one of the two. */
  readonly exchanged?: FlightAnswer;
  readonly comparison?: VehicleComparison;
  /** Why it does not fly with the other engine. */ readonly exchangeProblem?: Problem;
}

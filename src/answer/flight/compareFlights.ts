/** The same vehicle with one engine and with another below its first stage. */

import type { Study, VehicleInput } from '../../study/model.ts';
import type { ComparedQuantity } from '../comparedQuantity.ts';
import { show } from '../display.ts';
import type { FlightAnswer, FlightNumber, VehicleComparison } from './model.ts';

const COMPARED: readonly FlightNumber[] = [
  'payload',
  'massToOrbit',
  'highestPoint',
  'enginesMass',
  'liftoffThrustToWeight',
  'maxDynamicPressure',
  'meanSpecificImpulse',
  'halfPropellantAltitude',
  'firstStageTime',
  'gravityLoss',
  'dragLoss',
  'steeringLoss',
  'backPressureLoss',
];
/** A payload below this share of what arrives in orbit is nearly nothing: no per cent of it are told. */
const NEARLY_NOTHING = 0.05;
/** Below this share of the value two flights carry the same: what the search of the best bend leaves open. */
const SAME = 2e-4;

const heldWords: Readonly<Record<VehicleInput['held'], string>> = {
  engines: 'the number of engines, tanks, dry masses and drag; each flies its own best way',
  liftoffThrust: 'the thrust at lift-off, tanks, dry masses and drag; each flies its own best way',
  massFlow: 'the mass flow, tanks, dry masses and drag; each flies its own best way',
};

function heldIn({ held, stages }: VehicleInput): string {
  return stages[0]!.engineMass === 'included'
    ? heldWords[held]
    : heldWords[held].replace('dry masses', 'dry masses without the engines below');
}

export function compareFlights(
  vehicle: VehicleInput,
  study: Study,
  base: FlightAnswer,
  other: FlightAnswer,
): VehicleComparison {
  const rows = COMPARED.flatMap((name) => rowOf(name, base, other));
  return {
    base: base.engine,
    other: other.engine,
    held: heldIn(vehicle),
    rows,
    words: wordsOf(vehicle, study, base, other),
  };
}

function rowOf(name: FlightNumber, base: FlightAnswer, other: FlightAnswer): readonly ComparedQuantity[] {
  const [a, b] = [base[name], other[name]];
  if (a === undefined || b === undefined) return [];
  const difference = b - a;
  const noShare = a === 0 || (name === 'payload' && isNearlyNothing(base));
  const share = noShare ? null : difference / Math.abs(a);
  const words =
    Math.abs(difference) <= SAME * Math.abs(a)
      ? 'the same'
      : `${show(`flight.${name}`, Math.abs(difference), 2).text} ${difference > 0 ? 'more' : 'less'}`;
  return [{ quantity: `flight.${name}`, altitude: null, base: a, other: b, difference, share, words }];
}

function isNearlyNothing({ payload, massToOrbit }: FlightAnswer): boolean {
  return payload !== undefined && massToOrbit !== undefined && payload < NEARLY_NOTHING * massToOrbit;
}

function wordsOf(vehicle: VehicleInput, { engines }: Study, base: FlightAnswer, other: FlightAnswer): string {
  const nameOf = (id: string): string => engines.find((engine) => engine.id === id)?.name ?? id;
  const with_ = `With ${nameOf(other.engine)} instead of ${nameOf(base.engine)}, ${vehicle.name}`;
  if (base.highestPoint !== undefined && other.highestPoint !== undefined) {
    return `${with_} rises ${moreWords('flight.highestPoint', base.highestPoint, other.highestPoint, true)}.`;
  }
  if (base.payload === undefined || other.payload === undefined) return `${with_} cannot be compared.`;
  if (isNearlyNothing(base) || isNearlyNothing(other)) {
    return `${with_} brings ${moreWords('flight.massToOrbit', base.massToOrbit!, other.massToOrbit!, false)} to orbit; the payload is too near nothing for a share of it to mean anything.`;
  }
  return `${with_} carries ${moreWords('flight.payload', base.payload, other.payload, true)}.`;
}

function moreWords(name: string, base: number, other: number, withShare: boolean): string {
  const difference = other - base;
  if (Math.abs(difference) <= SAME * Math.abs(base)) return 'as much';
  const share =
    withShare && base !== 0
      ? `, ${Number(((100 * Math.abs(difference)) / Math.abs(base)).toPrecision(2))} %`
      : '';
  return `${show(name, Math.abs(difference), 2).text} ${difference > 0 ? 'more' : 'less'}${share}`;
}

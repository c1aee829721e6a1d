import { expect, test } from 'vitest';
import { compareFlights } from '../../../src/answer/flight/compareFlights.ts';
import type { FlightAnswer, FlightNumbers } from '../../../src/answer/flight/model.ts';
import type { VehicleInput } from '../../../src/study/model.ts';
import { studyOf } from '../solveText.ts';
import { enginesWith } from '../spread/fakeCrew.ts';

const study = await studyOf(enginesWith('3.5', '100 bar', '90 bar'));
// Only these are read of a vehicle.
const vehicle = {
  name: 'The probe',
  held: 'engines',
  stages: [{ engineMass: 'included' }],
} as unknown as VehicleInput;

function flight(engine: string, numbers: FlightNumbers): FlightAnswer {
  return { ...numbers, engine, engineName: engine, points: [], notes: [] };
}

function wordsOf(base: number, other: number): string {
  const [one, two] = [flight('a', { highestPoint: base }), flight('b', { highestPoint: other })];
  return compareFlights(vehicle, study, one, two).words.replaceAll('\u00a0', ' ');
}

test('a difference is told with its share of the base', () => {
  expect(wordsOf(100e3, 120e3)).toContain('20 km more, 20 %');
  expect(wordsOf(100e3, 90e3)).toContain('10 km less, 10 %');
});

// Nothing is a share of nothing.
test('over a base of nothing it is told without a share', () => {
  expect(wordsOf(0, 20e3)).toMatch(/20 km more\.$/);
  expect(wordsOf(0, 0)).toContain('as much');
});

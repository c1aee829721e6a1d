import { expect, test } from 'vitest';
import { altitude, altitudeSteps, setAltitude } from '../../../src/faces/workbench/state/altitude.ts';

test('as long as engines have a row each half kilometre one looks at the nearest, and then where one wanted to', () => {
  altitudeSteps.value = 2;
  setAltitude(3.7);
  expect(altitude.value).toBe(3.5);
  altitudeSteps.value = 10;
  expect(altitude.value).toBe(3.7);
  setAltitude(-1);
  expect(altitude.value).toBe(0);
  setAltitude(Number.POSITIVE_INFINITY);
  expect(altitude.value).toBe(Number.POSITIVE_INFINITY);
});

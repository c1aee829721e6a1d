import { expect, test } from 'vitest';
import { askWords, ownersById } from '../../../src/answer/sentences/askWords.ts';
import { studyOf } from '../solveText.ts';
import { enginesWith } from '../spread/fakeCrew.ts';

const study = await studyOf(enginesWith('3.5', '100 bar', '100 bar'));
const owners = ownersById(study);

test.each([
  ['flow.separationPressure', 'the pressure at which the gas lets go of the wall of a'],
  ['separation.place.areaRatio', 'the area ratio where the gas leaves the wall of a'],
  ['massFlow', 'the propellant flow of a'],
])('whose %s it is stands where it is read easily', (quantity, words) => {
  const ask = {
    engine: 'a',
    quantity,
    ambient: null,
    station: null,
    throttle: null,
    inputs: [],
  };
  expect(askWords(ask, owners)).toBe(words);
});

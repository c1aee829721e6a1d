import { expect, test } from 'vitest';
import { cellToTell } from '../../../src/answer/flow/cellToTell.ts';
import { field } from '../../telling/jetField.ts';

// Its shock stands at 0.4 m.
const { mainShock } = field();
const law = { machDisk: null, cellLength: 0.5 };

test('a cell is told where its law holds: not without one, nor where one puts a Mach disk, as round a plug', () => {
  expect(cellToTell(0.45, { mainShock, byLaw: law })).toBe(0.45);
  expect(cellToTell(0.45, { mainShock, byLaw: { ...law, machDisk: 0.4 } })).toBeNull();
  expect(cellToTell(0.45, { mainShock, byLaw: { machDisk: null, cellLength: null } })).toBeNull();
});

test('a wave of the nozzle’s own ahead of the shock is no cell of the jet', () => {
  expect(cellToTell(0.21, { mainShock, byLaw: law })).toBeNull();
  expect(cellToTell(0.21, { mainShock: null, byLaw: law })).toBe(0.21);
});

import { expect, it } from 'vitest';
import { localCrew } from '../../../src/answer/asked/localCrew.ts';
import { type WorthRow, worthTable, worthWords } from '../../../src/answer/worth/index.ts';
import { openDataShelf } from '../../../src/faces/disk/data.ts';
import { studyOf } from '../solveText.ts';

// A teaching gas: thrust does not hang on its temperature, specific impulse goes with the root of it.
const engines = `
short: { propellants: { gamma: 1.25, molarMass: 20 g/mol, temperature: 3000 ± 60 K }, chamber: { pressure: 60 bar }, size: { throat: 100 mm }, nozzle: { kind: ideal, areaRatio: 10 }, losses: none }
long: { like: short, size: { same: throat, as: short }, nozzle: { areaRatio: 40 } }
limit: { like: short, size: { same: throat, as: short }, nozzle: { kind: adapting, areaRatio: 40 } }
`;
const study = await studyOf(engines.trim(), 'compare: { base: short, other: long }');
const table = await worthTable(study, await localCrew(study, openDataShelf()));
const row = (quantity: string, where: string): WorthRow =>
  table.rows.find((each) => each.quantity === quantity && each.where === where)!;

it('says on which basis the two stand beside each other', () => {
  expect(table.basis).toEqual(['same throat area']);
  expect(table.bound).toBe('limit');
});

it('what both share cancels in the difference', () => {
  const impulse = row('specificImpulse', 'in vacuum');
  // I ~ √T, T ± 2 %: each by itself and their difference ± 1 %, not ± the sum of both.
  const { value, low, high } = impulse.difference!;
  expect((high - low) / (2 * value)).toBeCloseTo(0.01, 3);
  // C_F vacuum of γ = 1.25 at area ratios 10 and 40 (Sutton and Biblarz 2001, equation 3-30; recomputed): 1.7142, 1.8346.
  expect(impulse.other.found!.value / impulse.base.found!.value).toBeCloseTo(1.8346 / 1.7142, 3);
  const thrust = row('thrust', 'in vacuum');
  expect(thrust.difference!.value / thrust.base.found!.value).toBeCloseTo(1.8346 / 1.7142 - 1, 3);
  expect(thrust.difference!.low).toBeCloseTo(thrust.difference!.high, 3);
});

it('the bound stands beside the gains, and no side beats it', () => {
  for (const { group, bound, base, other } of table.rows) {
    if (group === 'price') expect(bound).toBeNull();
    else {
      expect(bound!.found!.value).toBeGreaterThanOrEqual(base.found!.value - 1e-6);
      expect(bound!.found!.value).toBeGreaterThanOrEqual(other.found!.value - 1e-6);
    }
  }
});

it('leaves out what neither engine has, and says what it cannot decide', () => {
  expect(table.rows.some(({ quantity }) => quantity.startsWith('cooling.'))).toBe(false);
  const words = worthWords(table, (id) => id, []).join(' ');
  expect(words).toContain('On one basis: same throat area.');
  expect(words).toContain('payload');
});

it('needs two engines', async () => {
  const alone = await studyOf(engines.trim().split('\n')[0]!);
  await expect(worthTable(alone, await localCrew(alone, openDataShelf()))).rejects.toThrow(/one engine/);
});

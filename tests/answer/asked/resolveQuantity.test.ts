import { describe, expect, test } from 'vitest';
import { quantityNames, resolveQuantity } from '../../../src/answer/asked/resolveQuantity.ts';
import { catalogue } from '../../../src/answer/catalogue.ts';

const nameOf = (name: string, hasPlace: boolean): string | null => {
  const found = resolveQuantity(name, hasPlace);
  return found.ok ? found.value.name : null;
};

describe('the quantity of a name', () => {
  test.each([
    ['exitPressure', false, 'exit.pressure'],
    ['exitPressure', true, 'exitPressure'],
    ['separationPressure', true, 'flow.separationPressure'],
    ['lipPressure', true, 'flow.lipPressure'],
    ['mixtureRatio', false, 'propellants.ratio'],
    ['chamberPressure', false, 'chamber.pressure'],
    ['throatArea', false, 'throat.area'],
    ['nozzleLength', false, 'contour.nozzleLength'],
    ['thrust', false, 'thrust'],
    ['thrust', true, 'thrust'],
    ['vacuum.thrust', false, 'vacuum.thrust'],
  ])('%s, a place named: %s', (name, hasPlace, entry) => {
    expect(nameOf(name, hasPlace)).toBe(entry);
  });

  test('is its own for every entry, asked as it must be', () => {
    for (const { name, place } of catalogue) {
      expect(nameOf(name, ['altitude', 'air', 'wall'].includes(place)), name).toBe(name);
    }
  });

  test('no short name stands for two', () => {
    const aliases = catalogue.flatMap((entry) => entry.aliases ?? []);
    expect(new Set(aliases).size).toBe(aliases.length);
    expect(quantityNames.length).toBeGreaterThan(catalogue.length);
  });

  test.each([
    ['specficImpulse', /Did you mean specificImpulse/],
    ['isp', /Did you mean specificImpulse\?/],
    ['chamberPresure', /Did you mean chamberPressure/],
    ['zzzzzz', /There is no quantity “zzzzzz”\.$/],
    ['toString', /There is no quantity/],
  ])('%s is none', (name, words) => {
    const found = resolveQuantity(name, false);
    expect(found.ok ? '' : found.problem.what).toMatch(words);
  });
});

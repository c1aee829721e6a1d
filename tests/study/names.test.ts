import { describe, expect, test } from 'vitest';
import { knownNames, nameBook } from '../../src/study/names.ts';
import { editDistance, nearestName } from '../../src/study/nearest.ts';

describe('the nearest name', () => {
  test('distances of the textbook', () => {
    // Levenshtein's measure; the two word pairs are the usual worked examples (common practice, no source).
    expect(editDistance('kitten', 'sitting')).toBe(3);
    expect(editDistance('saturday', 'sunday')).toBe(3);
    expect(editDistance('', 'abc')).toBe(3);
    expect(editDistance('abc', 'abc')).toBe(0);
  });

  test('finds slips, and nothing where nothing is near', () => {
    const known = ['bell', 'cone', 'ideal', 'adapting'];
    expect(nearestName('belle', known)).toBe('bell');
    expect(nearestName('Cone', known)).toBe('cone');
    expect(nearestName('adpating', known)).toBe('adapting');
    expect(nearestName('plug', known)).toBe(null);
    expect(nearestName('x', known)).toBe(null);
    expect(nearestName('x'.repeat(100_000), known)).toBe(null);
  });
});

describe('a book of names', () => {
  const rows = [
    { id: 'A-1', name: 'First', alsoCalled: ['one', 'the first'], phase: 'liquid', elements: { H: 2 } },
    { id: 'A1', name: 'Second', alsoCalled: ['two', 'one'], phase: 'gas', elements: { H: 2 } },
    { id: 'B', name: 'Third', alsoCalled: ['75 % three'], phase: 'solid', elements: { C: 1 } },
  ];

  test('an exact id comes first, then ids in any spelling, then names; earlier rows before later ones', () => {
    const book = nameBook(rows);
    expect(book.find('A1')?.name).toBe('Second');
    expect(book.find('a 1')?.name).toBe('First');
    expect(book.find('One')?.name).toBe('First');
    expect(book.find('THE_FIRST')?.name).toBe('First');
    expect(book.find('75% Three')?.name).toBe('Third');
    expect(book.find('four')).toBe(null);
    expect(book.find('constructor')).toBe(null);
    expect(book.nearest('twoo')).toBe('two');
  });

  test('what can be heated leads to the row stored as a gas, and is never a solid', () => {
    const gases = nameBook(knownNames(rows).knownGases);
    expect(gases.find('the first')?.id).toBe('A1');
    expect(gases.find('A-1')?.id).toBe('A1');
    expect(gases.find('B')).toBe(null);
  });
});

import { describe, expect, it } from 'vitest';
import { randomStream } from '../../src/numerics/randomStream.ts';
import { sumTermsInto } from '../../src/numerics/termSums.ts';

describe('sums of terms at many places', () => {
  it.each([1, 2, 3, 4, 6, 10, 15, 21, 35])(
    'are those of a plain loop to the last bit, with %i terms',
    (count) => {
      const chance = randomStream(count);
      const places = 40;
      const terms = Float64Array.from({ length: places * count }, () => chance() - 0.5);
      const coefficients = Float64Array.from({ length: count }, () => chance() - 0.5);
      const sums = new Float64Array(places).fill(7);
      sumTermsInto(sums, terms, coefficients);
      const plain = Array.from({ length: places }, (_, place) => {
        let sum = 0;
        for (let i = 0; i < count; i++) sum += coefficients[i]! * terms[place * count + i]!;
        return sum;
      });
      expect([...sums]).toEqual(plain);
    },
  );
});

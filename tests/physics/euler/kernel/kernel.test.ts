import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { KERNEL_SOURCES } from '../../../../src/physics/euler/kernel/bytes.ts';
import { agreesWith, BOUNDS } from './kernelBounds.ts';
import { box, burst, differences } from './kernelCases.ts';

test('the kernel is the one of its sources: else run `npm ci && npm run build` in kernels/flow', () => {
  const script = fileURLToPath(new URL('../../../../kernels/flow/sourceHash.mjs', import.meta.url));
  expect(execFileSync(process.execPath, [script], { encoding: 'utf8' }).trim()).toBe(KERNEL_SOURCES);
});

describe.each([64, 32] as const)(
  'the kernel on floats of %i bits takes the steps of the reference',
  (bits) => {
    test('through time: two gases, one of a table, round crooked blocks, walls, a far side, shocks', () => {
      const reference = burst('reference', 60, false);
      const own = burst(bits, 60, false);
      // Something happened: gas came far, with strong shocks on the way.
      expect(Math.max(...reference.u)).toBeGreaterThan(800);
      agreesWith(differences(own, reference), BOUNDS[bits].time);
      expect(Math.abs(own.mass / reference.mass - 1)).toBeLessThan(BOUNDS[bits].mass);
      expect(Math.abs(own.time / reference.time - 1)).toBeLessThan(BOUNDS[bits].time);
    });

    test('towards rest, each cell by its own steps', () => {
      agreesWith(differences(burst(bits, 60, true), burst('reference', 60, true)), BOUNDS[bits].rest);
    });

    test('a blast, its strong shocks without the contact', () => {
      agreesWith(
        differences(box(bits, 'blast', 0.5, 40), box('reference', 'blast', 0.5, 40)),
        BOUNDS[bits].time,
      );
    });

    test('where a step breaks it is taken again without slopes, in the same cells', () => {
      const reference = box('reference', 'tossed', 0.6, 8);
      const own = box(bits, 'tossed', 0.6, 8);
      expect(reference.rescued).toBeGreaterThan(0);
      expect(own.rescued).toBe(reference.rescued);
      agreesWith(differences(own, reference), BOUNDS[bits].time);
    });

    test('where first order breaks too the place is told and the field stays as it was', () => {
      const reference = box('reference', 'blast', 2.5, 4);
      const own = box(bits, 'blast', 2.5, 4);
      expect(reference.problem).toContain('has no state any more at x');
      expect(own.problem).toBe(reference.problem);
      agreesWith(differences(own, reference), BOUNDS[bits].time);
    });
  },
);

import { expect, test, vi } from 'vitest';
import { plugIn } from './plugFields.ts';

// A field takes seconds; on a busy machine many.
vi.setConfig({ testTimeout: 300_000 });

// On the coarse mesh the gas of a cut plug differs by as much from its characteristics: see plugs.test.ts.
test.each(['annular', 'linear'] as const)(
  'a plug that is not cut (%s) has a mesh to its tip; its thrust is that of the characteristics, next to nothing of it by the base',
  (form) => {
    const { found } = plugIn(form, 12, 1, [[26_500, 8]]);
    const [{ whole, gas }] = found as [(typeof found)[0]];
    expect(Math.abs(whole)).toBeLessThan(6e-3);
    expect(Math.abs(whole - gas)).toBeLessThan(2e-3);
  },
);

import { expect, test, vi } from 'vitest';
import { flowFields, flowPlaceAt } from '../../../src/answer/flow/index.ts';
import { streamlines } from '../../../src/physics/wholeFlow/index.ts';
import { solveText } from '../solveText.ts';

// A field takes seconds; on a busy machine many.
vi.setConfig({ testTimeout: 300_000 });

const engines = `
plug: { propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }, chamber: { pressure: 100 bar }, size: { throat: 200 mm }, nozzle: { kind: plug, form: annular, areaRatio: 60, kept: 30 % } }
`;

/** Through time the jet of such a plug is calm, its thrust within 0.3 % of a mean; where cells went by any clocks it swung by a sixth. */
test('a plug far below its design, at the pad: its jet comes to rest, and its gas stays together', async () => {
  const { solutions } = await solveText(engines);
  const [field] = [...flowFields(solutions.get('plug')!, [flowPlaceAt(0)], 'normal', 32)];
  const { thrustCoefficient, against, lip, blocks, seen } = field!;
  expect(thrustCoefficient.swing).toBeLessThan(0.01);
  // Base and gas aside, by characteristics.
  expect(Math.abs(against!.perMass)).toBeLessThan(0.012);
  // Air at the jet's edge holds it together: no line that runs with the gas leaves for further out than the lip.
  for (const { axial, radius } of streamlines(blocks, 7, lip.axial + seen))
    for (const [k, x] of axial.entries()) if (x > lip.axial) expect(radius[k]!).toBeLessThan(lip.radius);
});

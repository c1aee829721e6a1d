import { beforeAll, expect, test, vi } from 'vitest';
import { type FlowField, flowFields, flowPlaceAt } from '../../../src/answer/flow/index.ts';
import type { EngineSolution } from '../../../src/answer/solution.ts';
import { streamlines } from '../../../src/physics/wholeFlow/index.ts';
import { solveText } from '../solveText.ts';

// A field takes seconds; on a busy machine many.
vi.setConfig({ testTimeout: 300_000 });

const engines = `
bell: { propellants: { gamma: 1.2, molarMass: 22 g/mol, temperature: 3500 K }, chamber: { pressure: 100 bar }, size: { throat: 200 mm }, nozzle: { kind: bell, areaRatio: 25, length: 80 % } }
plug: { like: bell, nozzle: { kind: plug, form: annular, areaRatio: 60, kept: 30 % } }
`;
let solutions: ReadonlyMap<string, EngineSolution>;
beforeAll(async () => {
  ({ solutions } = await solveText(engines));
});

const fieldOf = (engine: string, altitude: number): FlowField =>
  [...flowFields(solutions.get(engine)!, [flowPlaceAt(altitude)], 'normal', 32)][0]!;

/** Greatest radius over the lip's of the lines that run with the gas, as far as cells are fine. */
const widest = ({ blocks, lip, seen }: FlowField): number =>
  Math.max(
    ...streamlines(blocks, 7, lip.axial + seen).flatMap(({ axial, radius }) =>
      radius.filter((_, k) => axial[k]! > lip.axial),
    ),
  ) / lip.radius;

/** Through time the jet of such a plug is calm, its thrust within 0.3 % of a mean; where cells went by any clocks it swung by a sixth. */
test('a plug far below its design, at the pad: its jet comes to rest, and its gas stays together', () => {
  const field = fieldOf('plug', 0);
  expect(field.thrustCoefficient.swing).toBeLessThan(0.01);
  // Base and gas aside, by characteristics.
  expect(Math.abs(field.against!.perMass)).toBeLessThan(0.012);
  // Air at the jet's edge holds it together.
  expect(widest(field)).toBeLessThan(1);
});

test('a bell in thicker and in thinner air than its exit’s pressure: its jet comes to rest, and its gas stays together', () => {
  const pad = fieldOf('bell', 0);
  expect(pad.steady).toBe(true);
  expect(widest(pad)).toBeLessThan(1.1);
  const higher = fieldOf('bell', 10_000);
  expect(higher.steady).toBe(true);
  // In one dimension the gas fills 1.2 times the lip's radius at the air's pressure.
  expect(widest(higher)).toBeLessThan(1.5);
  expect(higher.mainShock!.behind).toBeGreaterThan(pad.mainShock!.behind);
});

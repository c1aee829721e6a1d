import { writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Form, passesByArcs, plugIn } from '../physics/wholeFlow/plugFields.ts';

/** `npm run campaign -- plugs.campaign`: plugs as fields on four meshes beside their characteristics; writes its report beside this file. */
const PLUGS = [
  ['annular', 30, 0.25, 5_000, 30_119],
  ['annular', 30, 0.9, 5_000, 30_119],
  ['linear', 12, 0.4, 20_000, 98_591],
  ['linear', 12, 0.9, 20_000, 98_591],
] as const satisfies readonly (readonly [Form, number, number, number, number])[];

test('plugs above and at their design pressure ratio: thrust of the gas within 0.5 %; push on the wall and pressure from place to place too, on 16 cells nearly', {
  timeout: 7_200_000,
}, () => {
  const cases = PLUGS.flatMap(([form, areaRatio, kept, thin, design]) => [
    { form, areaRatio, kept, air: thin, meshes: [8, 16, 32, 64] },
    { form, areaRatio, kept, air: design, meshes: [8, 16, 32] },
  ]);
  const record = cases.flatMap(({ form, areaRatio, kept, air, meshes }) => {
    const asked = meshes.map((across) => [air, across] as const);
    const { found, arc } = plugIn(form, areaRatio, kept, asked);
    return found.map(({ passes, gas, perMass, base, whole, wall, settled }, k) => {
      const [ambient, across] = asked[k]!;
      const { push, departs } = wall;
      const shares = { passes, passesByArcs: passesByArcs(arc), gas, perMass, base, whole, push, departs };
      const rounded = Object.entries(shares).map(([key, share]) => [key, Number(share.toFixed(5))]);
      return {
        form,
        areaRatio,
        kept,
        ambient,
        across,
        steps: settled.steps,
        ...(Object.fromEntries(rounded) as typeof shares),
      };
    });
  });
  writeFileSync(new URL('plugs-campaign.json', import.meta.url), `${JSON.stringify(record, null, 2)}\n`);
  console.table(record);
  for (const { gas, whole, kept, push, departs, across } of record) {
    if (across < 16) continue;
    expect(Math.abs(gas)).toBeLessThan(5e-3);
    if (kept === 0.9) expect(Math.abs(whole)).toBeLessThan(5e-3);
    // On 16 cells not everywhere: of a long round plug the push is a little more off, and the end of its wall has a few rows in its own radius.
    expect(Math.abs(push)).toBeLessThan(across === 16 ? 6e-3 : 5e-3);
    // The longest plug on 64 cells is 0.57 % off after 3200 steps, which do not bring its end to rest; after 7000, for which this has no time, 0.33 %.
    expect(departs).toBeLessThan(across === 16 ? 8e-3 : across === 64 ? 6e-3 : 5e-3);
  }
});

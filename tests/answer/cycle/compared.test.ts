import { expect, test } from 'vitest';
import { solveText } from '../solveText.ts';

const engine =
  'propellants: { oxidiser: oxygen, fuel: methane, ratio: 3.4 }, chamber: { pressure: 100 bar, efficiency: 98 % }, nozzle: { kind: bell, areaRatio: 20 }, size: { throat: 200 mm }';

async function compared(base: string, other: string) {
  const { answer } = await solveText(
    `one: { name: One, ${engine}${base} }\nother: { name: Other, ${engine}${other} }`,
  );
  return { ...answer.comparison!, engines: answer.engines };
}

test('two engines that differ in what they dump are not called alike', async () => {
  const { answer, differs, quantities, engines } = await compared(
    ', cycle: { kind: gasGenerator }',
    ', cycle: { kind: stagedCombustion, rich: oxidiser, turbineInletTemperature: 750 K }',
  );
  expect(answer.verdict).toBe('Alike in the chamber, not as whole engines');
  expect(answer.text).toMatch(/with what their cycles dump, Other gives .* more in vacuum\.$/);
  expect(differs.join()).toContain('gas generator');
  const row = quantities.find(({ quantity }) => quantity === 'cycle.specificImpulse')!;
  expect(row.difference).toBeCloseTo(engines.one!.cycle!.impulseLost!, 6);
});

test('nothing is said of cycles that are alike, or of which only one is stated', async () => {
  const alike = await compared(', cycle: { kind: gasGenerator }', ', cycle: { kind: gasGenerator }');
  expect(alike.answer.text).not.toContain('dump');
  expect(alike.heldEqual).toContain('cycle');
  const half = await compared(', cycle: { kind: gasGenerator }', '');
  expect(half.answer.text).not.toContain('dump');
  expect(half.heldEqual).not.toContain('cycle');
});
